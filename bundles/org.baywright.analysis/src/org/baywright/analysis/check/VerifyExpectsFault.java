package org.baywright.analysis.check;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.analysis.proof.Encoding;
import org.baywright.analysis.proof.Formula;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Conclusion;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Outcome;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;
import org.baywright.model.Written;
import org.baywright.model.words.Words;

/**
 * A verification that expects a result at which a rule confirms the very fault. A warning and no error: the rule may rest
 * on a sign that is gone after the repair, which only its author knows.
 */
@RuleCheck(id = "verify-expects-fault", severity = Severity.WARNING, summary = "A verification passes with a result that confirms the fault")
public final class VerifyExpectsFault implements Check {

	@Override
	public void report(Checked checked) {
		Map<Component, Prover> provers = new HashMap<>();
		for (Repair repair : checked.base().repairs()) {
			List<Expects> all = new Verification(checked.base(), repair).expectedLast().values().stream()
					.map(step -> Expects.of(checked.base(), step)).toList();
			for (Expects expects : all) {
				Search search = new Search(checked, repair, expects, all, provers);
				search.run();
				if (search.least.isPresent() || !search.undecided.isEmpty()) {
					report(checked, repair, search);
				}
			}
		}
	}

	private void report(Checked checked, Repair repair, Search search) {
		String name = search.expects.variable().name();
		Checked.Draftsman flaw = checked.flaw(this, repair.name() + "/" + name, search.expects.step().span());
		if (search.least.isEmpty()) {
			String question = "whether the verification of repair " + repair.name() + " can pass while rule "
					+ String.join(", ", search.undecided) + " still confirms the fault";
			flaw.says("It was not decided " + question + ": the search reached its limit.")
					.shownBy(new Evidence.Undecided(question));
		} else {
			List<String> rules = List.copyOf(search.atLeast);
			boolean one = rules.size() == 1;
			flaw.says("The verification of repair " + repair.name() + " passes with " + search.result() + ", at which "
					+ (one ? "rule " : "rules ") + Words.and(rules) + (one ? " confirms " : " confirm ")
					+ ClashReport.say(checked, List.copyOf(search.faults)) + "; " + search.advice() + ".")
					.shownBy(search.least.get());
			search.right().ifPresent(right -> flaw.fix(new Fix.RewriteText(right.getKey(),
					search.expects.step().span(), "repeat " + Written.name(name) + " expect " + right.getValue())));
		}
		search.confirming.forEach(rule -> flaw.about(rule).near(rule.span(), "rule " + rule.name() + " confirms it"));
		flaw.about(repair.name() + name + search.expects.values()).add();
	}

	/** Looks for results with which one step of one verification passes while a rule still confirms a fault. */
	private static final class Search {
		private final Checked checked;
		private final Repair repair;
		private final Expects expects;
		private final List<Expects> all;
		private final Map<Component, Prover> provers;
		private final List<Rule> confirming = new ArrayList<>();
		/** Rules that confirm at the least value, and the faults that they confirm. */
		private final TreeSet<String> atLeast = new TreeSet<>();
		private final TreeSet<String> faults = new TreeSet<>();
		private final TreeSet<String> undecided = new TreeSet<>();
		/** The results with which it passes and a rule confirms. */
		private IndexSet wrong = IndexSet.EMPTY;
		private Optional<Evidence> least = Optional.empty();
		private int leastValue = Integer.MAX_VALUE;

		Search(Checked checked, Repair repair, Expects expects, List<Expects> all, Map<Component, Prover> provers) {
			this.checked = checked;
			this.repair = repair;
			this.expects = expects;
			this.all = all;
			this.provers = provers;
		}

		void run() {
			for (String fault : repair.fixes()) {
				for (Rule rule : Confirming.rules(checked, repair, fault)) {
					if (restsOnIt(rule, fault) && !HeldBack.in(checked).waits(rule)) {
						for (Component part : checked.partsOf(rule.name())) {
							search(part, rule, fault);
						}
					}
				}
			}
		}

		/** A rule that runs a test confirms by that test, and not by what it asks for before. Only for such is a prover made. */
		private boolean restsOnIt(Rule rule, String fault) {
			String name = expects.variable().name();
			if (rule.test().isPresent()) {
				return rule.test().get().equals(name) && rule.outcomes().stream()
						.filter(outcome -> says(outcome, VerdictKind.CONFIRMED, List.of(fault))).map(Outcome::values).flatMap(Optional::stream)
						.anyMatch(values -> values.in(expects.domain().orElseThrow()).meets(expects.values()));
			}
			boolean[] asks = { false };
			rule.given().forEach(given -> given.eachAtom(atom -> asks[0] |= atom.about().equals(name)));
			return asks[0];
		}

		private void search(Component part, Rule rule, String fault) {
			Prover prover = provers.computeIfAbsent(part, key -> checked.prover(key, key.families().get(0), List.of()));
			Program program = prover.program();
			int var = program.numberOf(expects.variable());
			if (var < 0 || !program.isStratified() || !prover.isPossible()) {
				return;
			}
			int confirmed = program.numberOf(new Verdict(fault, VerdictKind.CONFIRMED));
			Formula meant = program.mendOf.get(confirmed).get(repair.name());
			if (meant == null) {
				return; // the repair is for other families
			}
			for (int branch : program.derivedBy.get(confirmed)) {
				if (prover.ruleName(branch).equals(rule.name())) {
					for (int cell : expects.cells(program, var)) {
						ask(part, prover, meant, branch, var, cell, rule, fault);
					}
				}
			}
		}

		private void ask(Component part, Prover prover, Formula meant, int branch, int var, int cell, Rule rule, String fault) {
			int[] goals = goals(prover, meant, branch, var, cell);
			if (prover.encoding().ask(goals) == Answer.NO) {
				return;
			}
			IndexSet here = prover.program().cells.get(var).values(Encoding.only(cell)).intersect(expects.values());
			Optional<Situation> situation = prover.smallestWith(goals).map(found -> with(found, here));
			if (situation.isEmpty()) {
				undecided.add(rule.name());
			} else if (!HeldBack.in(checked).mayForbid(situation.get())) {
				wrong = wrong.union(here);
				if (!confirming.contains(rule)) {
					confirming.add(rule);
				}
				if (here.first() < leastValue) {
					leastValue = here.first();
					least = Optional.of(checked.witness(part, situation.get()));
					atLeast.clear();
					faults.clear();
				}
				if (here.first() == leastValue) {
					atLeast.add(rule.name());
					faults.add(fault);
				}
			}
		}

		/** The repair is meant for the vehicle, the rule fires, not without the result, and all else that the verification expects is so as well. */
		private int[] goals(Prover prover, Formula meant, int branch, int var, int cell) {
			Program program = prover.program();
			Encoding encoding = prover.encoding();
			List<Integer> goals = new ArrayList<>(List.of(encoding.body(branch), encoding.literal(meant, false), known(encoding, var, Encoding.only(cell)),
					-encoding.literal(without(program.branches.get(branch).body(), var), true)));
			for (Expects other : all) {
				int number = program.numberOf(other.variable());
				if (number >= 0 && number != var) {
					IndexSet cells = other.cells(program, number).stream().map(Encoding::only).reduce(IndexSet.EMPTY, IndexSet::union);
					goals.add(known(encoding, number, cells));
				}
			}
			return goals.stream().mapToInt(Integer::intValue).toArray();
		}

		private static int known(Encoding encoding, int var, IndexSet cells) {
			Formula found = new Formula.Known(var, cells, Program.NO_LINE);
			return encoding.literal(new Formula.All(List.of(encoding.program.limitOf.get(var), found)), true);
		}

		/** Returns what is left of a formula when nobody knows the variable. */
		private static Formula without(Formula formula, int var) {
			if (formula instanceof Formula.Known known && known.var() == var) {
				return new Formula.Any(List.of());
			} else if (formula instanceof Formula.All all) {
				return new Formula.All(all.parts().stream().map(part -> without(part, var)).toList());
			} else if (formula instanceof Formula.Any any) {
				return new Formula.Any(any.parts().stream().map(part -> without(part, var)).toList());
			}
			return formula;
		}

		/** Returns the situation with the least result that passes in place of the one that shows its cell best. */
		private Situation with(Situation situation, IndexSet passing) {
			return new Situation(situation.family(), situation.facts().stream().map(fact -> fact.variable().equals(expects.variable())
					? new Situation.Fact(fact.variable(), passing, passing.first()) : fact).toList());
		}

		String result() {
			String name = expects.variable().name();
			return expects.domain().map(domain -> (!(domain instanceof Domain.Quantity quantity && quantity.isNumber(leastValue)) ? "\"" + domain.say(leastValue) + "\""
					: domain.say(leastValue)) + " in test " + name)
					.orElse("code " + name + (leastValue == Variable.ABSENT ? " absent" : " present"));
		}

		String advice() {
			if (expects.domain().isEmpty()) {
				return "expect it " + (leastValue == Variable.ABSENT ? "present" : "absent");
			}
			// with a part fitted for the test, its results say nothing of the part that stays
			boolean fitted = checked.base().test(expects.variable().name()).map(checked.base()::doneBy).filter(test -> !test.fits().isEmpty()).isPresent();
			Optional<String> clears = fitted || !(expects.domain().get() instanceof Domain.Names names) ? Optional.empty()
					: confirming.stream().flatMap(rule -> rule.outcomes().stream()).filter(this::clears).map(Outcome::values).flatMap(Optional::stream)
							.map(values -> values.in(names)).filter(values -> !values.meets(wrong)).findFirst().map(values -> names.say(values.first()));
			if (clears.isPresent()) {
				return "expect \"" + clears.get() + "\", which clears the fault";
			}
			return expects.domain().get() instanceof Domain.Names && wrong.equals(expects.values())
					? "repeat what the customer complained of instead" : "expect only results at which no rule confirms it";
		}

		/** Returns what to expect of a measured value instead, as rules are written, with the title of such a fix. */
		Optional<Map.Entry<String, String>> right() {
			if (!(expects.domain().orElse(null) instanceof Domain.Quantity quantity)) {
				return Optional.empty();
			}
			if (confirming.size() == 1) {
				List<Outcome> outcomes = confirming.get(0).outcomes();
				Optional<Map.Entry<String, String>> own = safe(outcomes, quantity, outcome -> outcome.listed() && outcome.label().equals("met"))
						.map(values -> Map.entry("Expect what the rule expects", values))
						.or(() -> safe(outcomes, quantity, this::clears).map(values -> Map.entry("Expect what clears the fault", values)));
				if (own.isPresent()) {
					return own;
				}
			}
			IndexSet rest = expects.values().intersect(wrong.complement(quantity.size()));
			return rest.runCount() != 1 ? Optional.empty() : Optional.of(Map.entry("Expect only what does not confirm the fault", range(rest, quantity)));
		}

		private Optional<String> safe(List<Outcome> outcomes, Domain.Quantity quantity, Predicate<Outcome> which) {
			return outcomes.stream().filter(which).filter(outcome -> outcome.values().filter(values -> !values.in(quantity).meets(wrong)).isPresent())
					.map(Outcome::values).flatMap(Optional::stream).findFirst().map(values -> written(values, quantity));
		}

		private boolean clears(Outcome outcome) {
			return says(outcome, VerdictKind.CLEARED, repair.fixes());
		}

		private static boolean says(Outcome outcome, VerdictKind verdict, List<String> faults) {
			return outcome.conclusions().stream()
					.anyMatch(said -> said instanceof Conclusion.OnFault on && on.verdict() == verdict && faults.contains(on.fault()));
		}

		private static String range(IndexSet values, Domain.Quantity quantity) {
			if (!quantity.isNumber(values.first()) || !quantity.isNumber(values.last())) {
				return beyond(values, quantity);
			}
			String low = say(quantity, quantity.value(values.first()));
			String high = say(quantity, quantity.value(values.last()));
			return values.last() == quantity.size() - 1 ? "at_least " + low : values.first() == 0 ? "at_most " + high : low + " .. " + high;
		}

		/** As {@link #range} for values of which the first or the last is beyond the range of the instrument. */
		private static String beyond(IndexSet values, Domain.Quantity quantity) {
			IndexSet numbers = values.intersect(IndexSet.range(quantity.first(), quantity.last()));
			List<String> parts = new ArrayList<>();
			quantity.named().stream().filter(value -> values.contains(quantity.indexOf(value.name()))).forEach(value -> parts.add(Written.value(value.name())));
			if (!numbers.isEmpty()) {
				parts.add(0, say(quantity, quantity.value(numbers.first())) + " .. " + say(quantity, quantity.value(numbers.last())));
			}
			return String.join(", ", parts);
		}

		private static String written(ValueSet values, Domain.Quantity quantity) {
			if (values instanceof ValueSet.Union union) {
				return union.parts().stream().map(part -> written(part, quantity)).collect(Collectors.joining(", "));
			} else if (values instanceof ValueSet.Choices choices) {
				return choices.names().stream().map(Written::value).collect(Collectors.joining(", "));
			} else if (values instanceof ValueSet.Except) {
				return range(values.in(quantity), quantity);
			}
			ValueSet.Band band = (ValueSet.Band) values;
			if (band.low().isPresent() && band.high().isPresent()) {
				return say(quantity, band.low().get()) + " .. " + say(quantity, band.high().get());
			}
			return band.low().map(low -> (band.lowOpen() ? "above " : "at_least ") + say(quantity, low))
					.orElseGet(() -> (band.highOpen() ? "below " : "at_most ") + say(quantity, band.high().orElseThrow()));
		}

		private static String say(Domain.Quantity quantity, BigDecimal limit) {
			String number = limit.stripTrailingZeros().toPlainString();
			return quantity.unit().isEmpty() ? number : number + " " + quantity.unit();
		}
	}
}
