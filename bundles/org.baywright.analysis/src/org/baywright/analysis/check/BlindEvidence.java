package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Branch;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Encoding;
import org.baywright.analysis.proof.Formula;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.CodeReading;
import org.baywright.model.IndexSet;
import org.baywright.model.Module;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.Sign;
import org.baywright.model.StateSetting;
import org.baywright.model.Test;
import org.baywright.model.VerdictKind;

/**
 * A rule that confirms or clears on what nobody has seen: the missing code of a silent module, the silence of a module
 * that need not answer, or the absence of a sign that comes and goes.
 */
@RuleCheck(id = "blind-evidence", severity = Severity.WARNING, summary = "A rule takes as proof what merely was not seen")
public final class BlindEvidence implements ProofCheck<List<BlindEvidence.Blind>> {

	/** Why evidence proves nothing. */
	enum Kind {
		SILENT_CODE, UNTESTED_CODE, IDLE_MODULE, INTERMITTENT_SIGN
	}

	/**
	 * A rule that is blind to something, with the smallest situation that shows it.
	 *
	 * @param asking the rule that asks for it: the same, or one whose suspicion the rule takes as proof
	 */
	record Blind(String rule, String asking, Kind kind, String about, Situation situation) {
	}

	@Override
	public List<Blind> examine(Prover prover) {
		Map<String, Blind> found = new LinkedHashMap<>();
		for (int b = 0; b < prover.program().branches.size(); b++) {
			if (proves(prover.program(), prover.program().branches.get(b))) {
				for (int asking : asking(prover.program(), b)) {
					int branch = b;
					prover.program().branches.get(asking).body().eachLeaf(leaf -> {
						if (leaf instanceof Formula.Known lit && lit.var() >= 0) {
							examine(prover, branch, asking, lit, (key, blind) -> found.merge(key, blind, BlindEvidence::plainer));
						}
					});
				}
			}
		}
		return List.copyOf(found.values());
	}

	/** What a rule asks for itself is told rather than what stands behind it. */
	private static Blind plainer(Blind old, Blind now) {
		boolean oldItself = old.asking().equals(old.rule());
		boolean nowItself = now.asking().equals(now.rule());
		boolean better = oldItself == nowItself ? now.situation().findings() < old.situation().findings() : nowItself;
		return better ? now : old;
	}

	/** Returns the branch and, as long as none of them rests on a test, those whose suspicions it asks for. */
	private static Set<Integer> asking(Program program, int branch) {
		Set<Integer> all = new LinkedHashSet<>();
		collect(program, branch, all);
		return all;
	}

	private static void collect(Program program, int branch, Set<Integer> into) {
		Formula body = program.branches.get(branch).body();
		if (into.add(branch) && !restsOnTest(program, body)) {
			body.eachLeaf(leaf -> {
				if (leaf instanceof Formula.Stands asked && asked.stands()
						&& program.verdicts.get(asked.verdict()).kind() == VerdictKind.SUSPECTED) {
					program.derivedBy.get(asked.verdict()).forEach(b -> collect(program, b, into));
				}
			});
		}
	}

	/** Returns whether every way in which the formula holds takes a test. */
	private static boolean restsOnTest(Program program, Formula formula) {
		if (formula instanceof Formula.Known lit) {
			return lit.var() >= 0 && program.variables.get(lit.var()).kind() == Variable.Kind.TEST;
		} else if (formula instanceof Formula.All all) {
			return all.parts().stream().anyMatch(part -> restsOnTest(program, part));
		}
		return formula instanceof Formula.Any any && !any.parts().isEmpty()
				&& any.parts().stream().allMatch(part -> restsOnTest(program, part));
	}

	private static boolean proves(Program program, Branch branch) {
		return branch.verdicts().stream().map(program.verdicts::get).map(Verdict::kind)
				.anyMatch(kind -> kind == VerdictKind.CONFIRMED || kind == VerdictKind.CLEARED);
	}

	private static void examine(Prover prover, int branch, int asking, Formula.Known lit, BiConsumer<String, Blind> add) {
		Variable variable = prover.program().variables.get(lit.var());
		Rule rule = prover.program().rules.get(prover.program().branches.get(asking).rule());
		switch (variable.kind()) {
		case CODE:
			if (lit.cells().contains(Variable.UNREAD)) {
				boolean asSilence = lit.cells().equals(Encoding.only(Variable.UNREAD));
				String module = prover.program().variables.get(prover.program().moduleOf[lit.var()]).name();
				if (!asSilence) {
					show(prover, branch, asking, lit.var(), Variable.UNREAD, Kind.SILENT_CODE, variable.name(), add);
				} else if (needNotAnswer(prover, rule, module)) {
					show(prover, branch, asking, lit.var(), Variable.UNREAD, Kind.IDLE_MODULE, module, add);
				}
			}
			boolean anyThatAnswers = CodeReading.OF_PRESENT.stream().allMatch(state -> lit.cells().contains(state.ordinal()));
			if (lit.cells().contains(Variable.UNTESTED) && lit.cells().contains(Variable.ABSENT) && !anyThatAnswers) {
				show(prover, branch, asking, lit.var(), Variable.UNTESTED, Kind.UNTESTED_CODE, variable.name(), add);
			}
			break;
		case MODULE:
			if (lit.cells().contains(Variable.SILENT) && !lit.cells().contains(Variable.ANSWERS)
					&& needNotAnswer(prover, rule, variable.name())) {
				show(prover, branch, asking, lit.var(), Variable.SILENT, Kind.IDLE_MODULE, variable.name(), add);
			}
			break;
		case SIGN:
			if (lit.cells().contains(Variable.ABSENT) && !lit.cells().contains(Variable.PRESENT)
					&& prover.base().sign(variable.name()).map(Sign::intermittent).orElse(false)) {
				show(prover, branch, asking, lit.var(), Variable.ABSENT, Kind.INTERMITTENT_SIGN, variable.name(), add);
			}
			break;
		default:
			break;
		}
	}

	private static void show(Prover prover, int branch, int asking, int var, int cell, Kind kind, String about,
			BiConsumer<String, Blind> add) {
		Encoding encoding = prover.encoding();
		Optional<Situation> situation = prover.smallestWith(encoding.body(branch), encoding.body(asking),
				encoding.values.knownIn(var, IndexSet.range(cell, cell)));
		situation.ifPresent(shown -> add.accept(prover.ruleName(branch) + "/" + kind + "/" + about,
				new Blind(prover.ruleName(branch), prover.ruleName(asking), kind, about, shown)));
	}

	/**
	 * A module must answer only in the states it declares; the rule or its test has to put the vehicle into one, and the
	 * other must not take it out again.
	 */
	private static boolean needNotAnswer(Prover prover, Rule rule, String module) {
		List<StateSetting> answersIn = prover.base().module(module).map(Module::answersIn).orElse(List.of());
		List<StateSetting> states = new ArrayList<>(rule.states());
		rule.test().flatMap(prover.base()::test).map(prover.base()::doneBy).map(Test::states).ifPresent(states::addAll);
		Set<String> named = answersIn.stream().map(StateSetting::state).collect(Collectors.toSet());
		List<StateSetting> set = states.stream().filter(state -> named.contains(state.state())).toList();
		return !answersIn.isEmpty() && (set.isEmpty() || !answersIn.containsAll(set));
	}

	@Override
	public List<Blind> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		Smallest<Blind> smallest = new Smallest<>();
		checked.each(this, (part, blinds) -> blinds.forEach(blind -> smallest.add(
				blind.rule() + "/" + blind.kind().name().toLowerCase(Locale.ROOT) + "/" + blind.about(), part, blind, blind.situation())));
		smallest.each((key, part, blind) -> {
			Rule rule = checked.base().rule(blind.rule()).orElseThrow();
			Rule asking = checked.base().rule(blind.asking()).orElseThrow();
			Checked.Draftsman flaw = checked.flaw(this, key, rule.span()).says(sentence(checked, blind))
					.shownBy(checked.witness(part, blind.situation())).about(rule);
			if (asking != rule) {
				flaw.near(asking.span(), "rule " + asking.name() + " asks for it").about(asking);
			}
			flaw.add();
		});
	}

	private static String sentence(Checked checked, Blind blind) {
		String rule = "Rule " + blind.rule()
				+ (blind.asking().equals(blind.rule()) ? "" : ", which builds on the suspicion of rule " + blind.asking() + ",");
		return switch (blind.kind()) {
		case SILENT_CODE -> rule + " takes it as proof that code " + blind.about()
				+ " is missing, even when the module is silent and the code was never read; "
				+ "ask for \"absent\".";
		case UNTESTED_CODE -> rule + " takes it as proof that code " + blind.about()
				+ " is not seen, even when its module has not tested for it since its codes were cleared; "
				+ "ask for \"absent\", or for the states that are meant.";
		case IDLE_MODULE -> rule + " takes the silence of module " + blind.about()
				+ " as proof, but in this state the module need not answer; "
				+ "put the vehicle into one in which it must.";
		case INTERMITTENT_SIGN -> rule + " takes it as proof that \""
				+ checked.base().sign(blind.about()).map(Sign::title).orElse(blind.about())
				+ "\" is not seen, but it comes and goes; let a test decide.";
		};
	}
}
