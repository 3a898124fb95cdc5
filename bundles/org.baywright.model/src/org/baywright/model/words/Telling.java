package org.baywright.model.words;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.model.Code;
import org.baywright.model.Cycle;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Meaning;
import org.baywright.model.Module;
import org.baywright.model.NamedValue;
import org.baywright.model.Notice;
import org.baywright.model.Part;
import org.baywright.model.Precaution;
import org.baywright.model.Preparation;
import org.baywright.model.Repair;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Skill;
import org.baywright.model.State;
import org.baywright.model.StateSetting;
import org.baywright.model.Test;
import org.baywright.model.VerifyStep;
import org.baywright.model.Workshop;

/**
 * Tells what is known of a piece of work, in the same words wherever it is shown: the sheet, the editor, the bench.
 * Hazards are left to whoever shows them, since cautions come first.
 */
public final class Telling {

	private static final BigDecimal HOUR = BigDecimal.valueOf(60);

	private final RuleBase base;
	private final Words words;
	private List<Line> lines = new ArrayList<>();

	/**
	 * One thing that is known.
	 *
	 * @param label what it is about: "Takes"
	 * @param texts what is known; never empty
	 * @param steps whether the texts are sentences in an order, and not one list
	 */
	public record Line(String label, List<String> texts, boolean steps) {

		public Line {
			texts = List.copyOf(texts);
		}
	}

	public Telling(RuleBase base) {
		this.base = base;
		words = new Words(base);
	}

	/** Returns what is known of a test. */
	public List<Line> of(Test test) {
		List<Line> all = new ArrayList<>();
		all.add(new Line("Results", results(test.domain()), false));
		all.addAll(doing(test));
		return all;
	}

	/** Returns what it takes to do a test, or the one that it is seen with: all that is known of it but its results. */
	public List<Line> doing(Test test) {
		lines = new ArrayList<>();
		Test done = base.doneBy(test);
		vehicles(base.scopeOf(test));
		list("Seen with", test.seenWith().map(words::test).stream().toList());
		list("Works on", test.part(base).map(part -> base.part(part).map(Part::title).orElse(part)).stream().toList());
		list("Where", test.place().or(done::place).stream().toList());
		list("Needs", done.tools().stream().map(words::tool).toList());
		list("In state", done.states().stream().map(this::setting).toList());
		effort(done.takes(), done.cost(), done.skill());
		list("Fits", done.fits());
		steps("Before it", done.prepare().stream().map(Telling::preparation).toList());
		list("Disturbs", done.disturbs().stream().map(words::finding).toList());
		return lines;
	}

	/** Returns what it takes to ask a module for its codes. */
	public List<Line> asking(Module module) {
		lines = new ArrayList<>();
		Workshop.Scan scan = base.scan(module);
		list("Needs", scan.tools().stream().map(words::tool).toList());
		text("Takes", minutes(scan.takes()));
		text("Costs", scan.cost().signum() == 0 ? "" : Meaning.number(scan.cost()));
		return lines;
	}

	/** Returns what it takes to do a repair, without the faults that it puts right and the steps that verify it. */
	public List<Line> doing(Repair repair) {
		lines = new ArrayList<>();
		vehicles(repair.scope());
		list("Where", repair.place().stream().toList());
		list("Needs", repair.tools().stream().map(words::tool).toList());
		effort(repair.takes(), repair.cost(), repair.skill());
		steps("Steps", repair.steps());
		for (Notice.Whom whom : Notice.Whom.values()) {
			steps("Tell the " + whom.name().toLowerCase(Locale.ROOT), repair.notices().stream()
					.filter(notice -> notice.whom() == whom).map(Telling::notice).toList());
		}
		steps("Changed for good", repair.changesForGood());
		return lines;
	}

	private void vehicles(Scope scope) {
		list("For", scope.isEvery() ? List.of() : List.of(words.scope(scope)));
	}

	private static String notice(Notice notice) {
		return notice.text() + (notice.why().isEmpty() ? "" : " Why: " + notice.why());
	}

	/** Returns what comes first while a sign is there, in words. */
	public static String precaution(Precaution precaution) {
		String first = switch (precaution.kind()) {
		case DO_NOT_DRIVE -> "Do not drive the vehicle.";
		case DO_NOT_START -> "Do not start the vehicle.";
		case MAKE_SAFE -> "Make it safe first:";
		};
		return precaution.text().isEmpty() ? first : first + " " + precaution.text();
	}

	/** Returns what is done with the vehicle, as a sentence. */
	public static String preparation(Preparation preparation) {
		if (preparation instanceof Preparation.Do made) {
			return made.text();
		} else if (preparation instanceof Preparation.Wait wait) {
			return "Wait " + duration(wait.minutes()) + ".";
		}
		Preparation.Drive drive = (Preparation.Drive) preparation;
		return "Drive" + drive.speed().map(speed -> " at a speed " + Limits.say(speed, Preparation.SPEED)).orElse("")
				+ (drive.minutes().signum() == 0 ? "" : " for " + duration(drive.minutes())) + (drive.how().isEmpty() ? "." : ": " + drive.how());
	}

	/** Returns the values of a state with how long getting there takes, in words: "awake", "asleep (20 min)". */
	public static List<String> values(State state) {
		return state.values().stream().map(value -> value.title() + timed(state.minutesTo(value.name()))).toList();
	}

	/** Returns what cycling a state means, in words: "off, wait 30 s, on". */
	public static String cycle(Cycle cycle, Domain.Names values) {
		return cycle.steps().stream().map(step -> step.value().map(value -> values.say(values.indexOf(value)))
				.orElse("wait " + duration(step.minutes()))).collect(Collectors.joining(", "));
	}

	/** Returns what a step of a verification asks for, as a sentence. */
	public String step(VerifyStep step) {
		return step.match(
				(VerifyStep.Clear clear) -> "Clear the codes of " + words.module(clear.module()) + ", which reaches it only while it answers.",
				(VerifyStep.Cycle cycle) -> cycle(cycle.state()),
				(VerifyStep.Put put) -> "Set " + words.setting(put.setting()) + ".",
				(VerifyStep.Read read) -> "Read the codes of " + words.module(read.module()) + ".",
				(VerifyStep.Expect expect) -> "Code " + words.code(expect.code()) + (expect.present() ? " must be present." : " must be absent."),
				(VerifyStep.ExpectSign expect) -> "“" + words.sign(expect.sign()) + "” must be " + (expect.present() ? "there" : "gone")
						+ (expect.tried() > 1 ? ", tried " + expect.tried() + " times." : "."),
				(VerifyStep.Prepare prepare) -> preparation(prepare.preparation()),
				(VerifyStep.Repeat repeat) -> "Repeat: " + words.test(repeat.test()) + repeat.values()
						.flatMap(values -> base.test(repeat.test()).map(test -> "; expect " + Limits.say(values, test.domain())))
						.orElse("") + ".",
				(VerifyStep.RepeatWhatConfirmed repeat) -> "Repeat whichever test confirmed the fault; it must no longer confirm it.");
	}

	private String cycle(String name) {
		String title = base.state(name).map(State::title).orElse(name);
		Map<String, Set<String>> families = new LinkedHashMap<>();
		for (Family family : base.vehicleFamilies()) {
			families.computeIfAbsent(way(family.name(), name), key -> new LinkedHashSet<>()).add(family.title());
		}
		return cycle(title, families.size() == 1 ? families.keySet().iterator().next()
				: families.entrySet().stream().map(way -> Words.and(way.getValue()) + ": " + way.getKey()).collect(Collectors.joining("; ")));
	}

	private static String cycle(String title, String way) {
		return "Cycle " + title + ", so that modules test themselves again: " + way + ".";
	}

	private String way(String family, String state) {
		return base.cycle(family, state).flatMap(cycle -> base.state(state).map(found -> cycle(cycle, new Domain.Names(found.values()))))
				.orElse("through all its values and back");
	}

	/** As {@link #step(VerifyStep)}, for a vehicle of one family: by cycling a state each may mean something else. */
	public String step(VerifyStep step, String family) {
		return step instanceof VerifyStep.Cycle cycle ? cycle(base.state(cycle.state()).map(State::title).orElse(cycle.state()), way(family, cycle.state()))
				: step(step);
	}

	/** Returns what a code needs so that its module tests for it, in words; the empty text if nobody says. */
	public String runs(Code code) {
		List<String> parts = new ArrayList<>();
		if (!code.runsIn().isEmpty()) {
			parts.add("in " + words.anySetting(code.runsIn()));
		}
		code.runsAfter().forEach(preparation -> parts.add(preparation(preparation)));
		return String.join("; ", parts);
	}

	private String setting(StateSetting setting) {
		return words.setting(setting) + timed(base.state(setting.state()).flatMap(state -> state.minutesTo(setting.value())));
	}

	private static String timed(Optional<BigDecimal> minutes) {
		return minutes.filter(known -> known.signum() > 0).map(known -> " (" + duration(known) + ")").orElse("");
	}

	private void effort(BigDecimal takes, BigDecimal cost, Skill skill) {
		text("Takes", minutes(takes));
		text("Costs", cost.signum() == 0 ? "" : Meaning.number(cost));
		text("Who", skill(skill));
	}

	private static List<String> results(Domain domain) {
		if (domain instanceof Domain.Quantity quantity) {
			return Stream.concat(Stream.of(quantity.sayNumber(quantity.low()) + " to " + quantity.sayNumber(quantity.high()) + " in steps of "
					+ quantity.sayNumber(quantity.step())),
					Stream.concat(quantity.under().map(value -> value.title() + " below that").stream(),
							quantity.over().map(value -> value.title() + " above that").stream())).toList();
		}
		return domain.named().stream().map(NamedValue::title).toList();
	}

	private void text(String label, String text) {
		if (!text.isEmpty()) {
			lines.add(new Line(label, List.of(text), false));
		}
	}

	private void list(String label, List<String> texts) {
		if (!texts.isEmpty()) {
			lines.add(new Line(label, texts, false));
		}
	}

	private void steps(String label, List<String> texts) {
		if (!texts.isEmpty()) {
			lines.add(new Line(label, texts, true));
		}
	}

	/** Returns a duration in minutes as people say it: "8 min", "1.5 h"; the empty text for none. */
	public static String minutes(BigDecimal minutes) {
		if (minutes.signum() == 0) {
			return "";
		} else if (minutes.compareTo(HOUR) < 0) {
			return Meaning.number(minutes) + " min";
		}
		return Meaning.number(minutes.divide(HOUR, 1, RoundingMode.HALF_UP)) + " h";
	}

	/** Returns a duration in minutes, also one that is shorter than a minute: "30 s", "8 min", "1.5 h". */
	public static String duration(BigDecimal minutes) {
		return minutes.compareTo(BigDecimal.ONE) < 0
				? Meaning.number(minutes.multiply(HOUR).setScale(1, RoundingMode.HALF_UP)) + " s" : minutes(minutes);
	}

	/** Returns who may do a piece of work. */
	public static String skill(Skill skill) {
		return switch (skill) {
		case BASIC -> "anybody who knows the trade";
		case TRAINED -> "somebody trained for it";
		case LICENSED -> "somebody with the licence for it; local law may ask for more";
		};
	}
}
