package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation.Derived;
import org.baywright.analysis.Verdict;
import org.baywright.model.Condition;
import org.baywright.model.Meaning;
import org.baywright.model.Reading;
import org.baywright.model.Repair;
import org.baywright.model.RuleBase;
import org.baywright.model.Trait;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;
import org.baywright.presenter.Link;
import org.baywright.presenter.bench.Mending.Cause;
import org.baywright.presenter.bench.Mending.Offer;
import org.baywright.presenter.bench.Mending.Stage;

/** Makes what is shown after the cause is found. */
final class MendingMaker {

	private final Bench bench;
	private final Advice advice;
	private final RuleBase base;
	private final Done done;
	private final Words words;
	private final List<Cause> causes = new ArrayList<>();

	MendingMaker(Bench bench, Advice advice) {
		this.bench = bench;
		this.advice = advice;
		base = bench.base();
		done = bench.now().done();
		words = new Words(base);
	}

	Mending mending() {
		Set<Verdict> standing = advice.verdicts().stream().map(Derived::verdict).collect(Collectors.toSet());
		// what the rules both confirm and clear is repaired by nobody, unless somebody says that it is the cause
		List<Derived> confirmed = advice.verdicts().stream().filter(derived -> derived.verdict().kind() == VerdictKind.CONFIRMED)
				.filter(derived -> done.cause().equals(derived.verdict().fault()) || !standing.contains(new Verdict(derived.verdict().fault(), VerdictKind.CLEARED))).toList();
		confirmed.stream().filter(derived -> done.cause().isEmpty() || done.cause().equals(derived.verdict().fault())).forEach(derived -> causes.add(cause(derived)));
		if (causes.isEmpty() && !done.cause().isEmpty()) {
			causes.add(cause(done.cause(), false, List.of(), "The rules do not confirm it. "));
		}
		List<String> offered = causes.stream().flatMap(cause -> cause.repairs().stream()).map(Offer::repair).distinct().toList();
		Optional<Work> work = offered.contains(done.chosen()) ? Optional.of(work(done.chosen()))
				: offered.size() == 1 && !done.isInVain(offered.get(0)) ? Optional.of(work(offered.get(0))) : Optional.empty();
		List<Work> others = done.repairs().keySet().stream().filter(offered::contains).filter(name -> work.filter(one -> one.repair().equals(name)).isEmpty())
				.map(this::work).filter(Work::isBegun).toList();
		Referral referral = Referral.of(bench, advice);
		Stage stage = stage(work, others, referral);
		return new Mending(stage, headline(stage, work, referral), causes, work, others, done.inVain(), referral, Spent.of(bench));
	}

	// ---- causes ----------------------------------------------------------------------------------------------------

	private Cause cause(Derived derived) {
		List<Link> rules = derived.rules().stream().flatMap(name -> base.rule(name).stream()).map(rule -> new Link(rule.title(), rule.span())).toList();
		return cause(derived.verdict().fault(), true, rules, "");
	}

	private Cause cause(String fault, boolean confirmed, List<Link> rules, String note) {
		List<Offer> offers = base.repairsOf(fault).stream().filter(repair -> isFor(repair) != Truth.NO).map(this::offer)
				.sorted(Comparator.comparing(Offer::inVain)).toList();
		String none = !offers.isEmpty() ? ""
				: base.repairsOf(fault).isEmpty() ? "The rules have no repair for it: refer the job, or add the repair to the rules."
						: "The rules have no repair for it on this vehicle, only on others: refer the job, or add the repair to the rules.";
		boolean inVain = done.cause().isEmpty() && done.inVain().stream().anyMatch(failed -> failed.faults().contains(fault));
		return new Cause(fault, words.fault(fault), confirmed, inVain, rules, offers, (note + none).strip());
	}

	private Truth isFor(Repair repair) {
		return Truth.of(base.reaches(repair.scope(), bench.now().family())).and(repair.scope().where().map(where -> Truth.of(where, this::trait)).orElse(Truth.YES));
	}

	/** A family without the trait has none of its values. */
	private Truth trait(Condition.Atom atom) {
		Optional<Trait> trait = Optional.ofNullable(base.traitsOf(bench.now().family()).get(atom.about()));
		Optional<Reading> told = bench.now().readings().stream().filter(reading -> reading.subject().equals(atom.about())).findFirst();
		return trait.isEmpty() ? Truth.NO : told.isEmpty() || !(atom instanceof Condition.TraitIs is) ? Truth.OPEN : Truth.of(is.values(), trait.get().domain(), told.get());
	}

	private Offer offer(Repair repair) {
		BigDecimal cost = repair.cost(base);
		String effort = Stream.of(Telling.minutes(repair.takes()), cost.signum() > 0 ? "cost " + Meaning.number(cost) : "").filter(text -> !text.isEmpty())
				.collect(Collectors.joining(", "));
		String only = isFor(repair) == Truth.OPEN ? repair.scope().where().map(where -> "only with " + words.condition(where)).orElse("") : "";
		return new Offer(repair.name(), repair.title(), effort, only, done.isInVain(repair.name()), repair.span());
	}

	private Work work(String name) {
		Repair repair = base.repair(name).orElseThrow();
		return new WorkMaker(bench, advice, repair, causes.stream().map(Cause::fault).filter(repair.fixes()::contains).toList()).work();
	}

	// ---- where it stands -------------------------------------------------------------------------------------------

	private Stage stage(Optional<Work> work, List<Work> others, Referral referral) {
		if (!referral.accepted().isEmpty()) {
			return Stage.REFERRED;
		}
		if (causes.isEmpty()) {
			return referral.isDue() ? Stage.REFERRED : Stage.FINDING;
		}
		List<Work> all = Stream.concat(work.stream(), others.stream()).toList();
		if (all.stream().anyMatch(each -> each.outcome() == Work.Outcome.FAILED)) {
			return Stage.FAILED;
		}
		boolean verified = causes.stream().allMatch(cause -> all.stream()
				.anyMatch(each -> each.outcome() == Work.Outcome.VERIFIED && each.faults().contains(cause.fault())));
		return verified ? Stage.VERIFIED : Stage.REPAIR;
	}

	private String headline(Stage stage, Optional<Work> work, Referral referral) {
		String before = done.inVain().isEmpty() ? "" : done.inVain().get(done.inVain().size() - 1).text() + " ";
		return switch (stage) {
		case FINDING -> before.isEmpty() ? "" : before + "Go on finding.";
		case REFERRED -> before + "Refer to " + referral.goesTo() + ".";
		case FAILED -> "What was read after the repair is not as expected. Read it again, or go back to finding.";
		case VERIFIED -> "The repair is verified." + untold(work);
		case REPAIR -> before + repair(work, !before.isEmpty());
		};
	}

	private String repair(Optional<Work> work, boolean again) {
		String found = Words.and(causes.stream().map(cause -> "“" + cause.title() + "”").toList());
		String said = (causes.stream().allMatch(Cause::confirmed) ? isSame() ? "By the rules the cause is still " : "The rules confirm " : "The cause is said to be ") + found + ". ";
		if (causes.stream().allMatch(cause -> cause.repairs().isEmpty())) {
			return said + causes.get(0).note();
		} else if (work.isEmpty()) {
			return said + (!again ? "Choose the repair." : "Look whether the repair was done as written, or "
					+ (Mending.areInVain(causes) ? "refer the job." : "choose another one."));
		}
		if (work.get().outcome() == Work.Outcome.VERIFIED) {
			return said + "“" + work.get().title() + "” is verified; go on with the other cause.";
		}
		return said + "Do the repair “" + work.get().title() + "”, then verify it.";
	}

	/** Returns whether the rules say again what was repaired last, in vain. */
	private boolean isSame() {
		return !done.inVain().isEmpty() && causes.stream().map(Cause::fault).allMatch(done.inVain().get(done.inVain().size() - 1).faults()::contains);
	}

	private static String untold(Optional<Work> work) {
		List<String> whom = work.stream().flatMap(each -> each.notices().stream()).filter(told -> !told.done())
				.map(told -> "the " + told.whom().name().toLowerCase(Locale.ROOT)).distinct().toList();
		return whom.isEmpty() ? " Keep the job." : " Still to be told: " + Words.and(whom) + ".";
	}
}
