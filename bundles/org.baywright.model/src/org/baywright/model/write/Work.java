package org.baywright.model.write;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.baywright.model.Acceptance;
import org.baywright.model.Case;
import org.baywright.model.Domain;
import org.baywright.model.Meaning;
import org.baywright.model.Notice;
import org.baywright.model.Preparation;
import org.baywright.model.Reading;
import org.baywright.model.Remark;
import org.baywright.model.Repair;
import org.baywright.model.Reply;
import org.baywright.model.Review;
import org.baywright.model.Reviewer;
import org.baywright.model.SignOff;
import org.baywright.model.Test;
import org.baywright.model.VerifyStep;
import org.baywright.model.Written;

/** Tests, repairs and jobs as text, with peer review and acceptances. */
final class Work {

	/** Behind a name alone these would be read as the state of a code. */
	private static final Set<String> STATES_OF_CODES = Set.of("active", "stored", "pending", "untested", "status");

	private final Values values;

	Work(Values values) {
		this.values = values;
	}

	Block test(Test test) {
		Block block = new Block("test", test.name(), test.title());
		if (test.domain() instanceof Domain.Quantity range) {
			block.line("measures " + (range.unit().isEmpty() ? "" : range.unit() + " ") + Values.number(range.low()) + " .. "
					+ Values.number(range.high()) + " step " + Values.number(range.step())
					+ range.under().map(value -> " under " + Vehicle.values(List.of(value))).orElse("")
					+ range.over().map(value -> " over " + Vehicle.values(List.of(value))).orElse(""));
		} else {
			block.line("results " + Vehicle.values(((Domain.Names) test.domain()).values()));
		}
		block.line("for", values.vehicles(test.scope()));
		test.seenWith().ifPresent(other -> block.line("seen_with", Written.name(other)));
		test.part().ifPresent(part -> block.line("at", Written.name(part)));
		test.place().ifPresent(place -> block.line("place", Written.text(place)));
		test.pictures().forEach(picture -> block.line("picture", Vehicle.picture(picture)));
		block.line("needs", Values.names(test.tools())).line("in", Values.settings(test.states()));
		test.prepare().forEach(preparation -> block.line(preparation instanceof Preparation.Do said ? "prepare " + Written.text(said.text())
				: Values.preparation(preparation)));
		return block.takes("takes", test.takes()).cost(test.cost()).skill(test.skill()).texts("fits", test.fits())
				.line("disturbs", Values.names(test.disturbs())).line("caution", Values.names(test.cautions()));
	}

	Block repair(Repair repair) {
		Block block = new Block("repair", repair.name(), repair.title()).line("fixes", Values.names(repair.fixes()))
				.line("for", values.vehicles(repair.scope()));
		repair.place().ifPresent(place -> block.line("place", Written.text(place)));
		repair.pictures().forEach(picture -> block.line("picture", Vehicle.picture(picture)));
		block.below("steps", repair.steps()).line("caution", Values.names(repair.cautions())).line("needs", Values.names(repair.tools()))
				.takes("takes", repair.takes()).cost(repair.cost()).skill(repair.skill());
		repair.notices().forEach(notice -> block.line(notice(notice)));
		block.texts("changes_for_good", repair.changesForGood());
		if (repair.verified()) {
			block.line("verify {\n" + repair.verify().stream().map(step -> "    " + step(step) + "\n").collect(Collectors.joining()) + "  }");
		}
		return block;
	}

	private static String notice(Notice notice) {
		return "tell " + notice.whom().name().toLowerCase(Locale.ROOT) + " " + Written.text(notice.text())
				+ (notice.why().isEmpty() ? "" : " because " + Written.text(notice.why()));
	}

	private String step(VerifyStep step) {
		return step.match(
				(VerifyStep.Clear clear) -> "clear " + Written.name(clear.module()),
				(VerifyStep.Cycle cycle) -> "cycle " + Written.name(cycle.state()),
				(VerifyStep.Put put) -> "set " + Values.setting(put.setting()),
				(VerifyStep.Read read) -> "read " + Written.name(read.module()),
				(VerifyStep.Expect expect) -> "expect " + Written.name(expect.code()) + (expect.present() ? " present" : " absent"),
				(VerifyStep.ExpectSign expect) -> "expect " + Written.name(expect.sign()) + (expect.present() ? " present" : " absent")
						+ (expect.tried() == 0 ? "" : " tried " + expect.tried() + " times"),
				(VerifyStep.Prepare prepare) -> Values.preparation(prepare.preparation()),
				(VerifyStep.Repeat repeat) -> "repeat " + Written.name(repeat.test())
						+ repeat.values().map(set -> " expect " + Values.expected(set, values.unit(repeat.test()))).orElse(""),
				(VerifyStep.RepeatWhatConfirmed repeat) -> "repeat what confirmed");
	}

	Block job(Case job) {
		Block block = new Block("job " + Written.text(job.name()));
		String on = "on " + Written.name(job.family());
		if (job.traits().isEmpty()) {
			block.line(on);
		}
		block.list(on + " with", readings(job.traits()));
		job.vin().ifPresent(vin -> block.line("vin", Written.text(vin)));
		block.list("found", readings(job.found())).list("was", job.causes().stream().map(Written::name).toList())
				.line("was", job.referred() ? "referred" : "");
		block.takes("took", job.record().minutes());
		if (job.record().cost().signum() != 0) {
			block.line("spent " + Values.number(job.record().cost()));
		}
		block.list("afterwards", readings(job.record().afterwards()));
		job.record().backAfter().ifPresent(days -> block.line("came_back after " + Values.number(days) + " d"));
		return block;
	}

	private List<String> readings(List<Reading> readings) {
		return readings.stream().map(this::reading).toList();
	}

	private String reading(Reading reading) {
		String name = Written.name(reading.subject());
		if (reading instanceof Reading.Named named) {
			return name + (STATES_OF_CODES.contains(named.value()) ? " is " : " ") + Written.value(named.value());
		} else if (reading instanceof Reading.Measured measured) {
			String unit = values.unit(reading.subject());
			return name + " " + Meaning.number(measured.value()) + (unit.isEmpty() ? "" : " " + unit);
		} else if (reading instanceof Reading.SignSeen seen) {
			return name + (seen.present() ? "" : " absent");
		} else if (reading instanceof Reading.CodeRead read) {
			return name + " " + read.reading().name().toLowerCase(Locale.ROOT);
		}
		return name + (((Reading.ModuleAsked) reading).answers() ? " answers" : " silent");
	}

	static Block signOff(SignOff signOff) {
		Block block = new Block("sign_off").open();
		if (signOff.agree() > 0) {
			block.line("agree " + signOff.agree());
		}
		if (signOff.withoutAuthor()) {
			block.line("not_by author");
		}
		signOff.hazards().forEach(of -> block.line("hazard " + Written.name(of.hazard()) + " by " + Written.text(of.qualification())));
		return block;
	}

	static Block reviewer(Reviewer reviewer) {
		return new Block("reviewer " + Written.text(reviewer.name()) + " qualified "
				+ reviewer.qualifications().stream().map(Written::text).collect(Collectors.joining(", ")));
	}

	static Block review(Review review) {
		return replies(new Block("review " + Written.name(review.rule()) + signed(review.reviewer(), review.date())
				+ (review.agrees() ? " agrees" : " objects") + (review.note().isEmpty() ? "" : " " + Written.text(review.note()))
				+ " meaning " + Written.text(review.meaning())), review.replies());
	}

	static Block remark(Remark remark) {
		Block block = new Block("remark on " + remark.rule().map(Written::name).orElseGet(() -> "change " + Written.text(remark.change()))
				+ signed(remark.author(), remark.date()) + " " + Written.text(remark.note())
				+ (remark.meaning().isEmpty() ? "" : " meaning " + Written.text(remark.meaning())));
		remark.line().ifPresent(line -> block.line("at", Written.text(line)));
		return replies(block, remark.replies());
	}

	private static Block replies(Block block, List<Reply> replies) {
		replies.forEach(reply -> block.line((reply.settles() ? "settled" : "reply") + signed(reply.author(), reply.date())
				+ (reply.text().isEmpty() ? "" : " " + Written.text(reply.text()))));
		return block;
	}

	private static String signed(String person, LocalDate date) {
		return " by " + Written.text(person) + " on " + date;
	}

	static Block acceptance(Acceptance acceptance) {
		String by = acceptance.author().isEmpty() || acceptance.date().isEmpty() ? ""
				: "\n  by " + Written.text(acceptance.author().get()) + " on " + acceptance.date().get();
		return new Block("accept " + Written.text(acceptance.flaw()) + " because " + Written.text(acceptance.reason()) + by);
	}
}
