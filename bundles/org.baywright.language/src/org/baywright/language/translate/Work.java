package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.ClearStep;
import org.baywright.language.bay.CycleStep;
import org.baywright.language.bay.ExpectStep;
import org.baywright.language.bay.ExpectValue;
import org.baywright.language.bay.ReadStep;
import org.baywright.language.bay.Repair;
import org.baywright.language.bay.RepeatConfirmed;
import org.baywright.language.bay.RepeatStep;
import org.baywright.language.bay.SetStep;
import org.baywright.language.bay.Test;
import org.baywright.language.bay.VerifyBlock;
import org.baywright.language.bay.VerifyStep;
import org.baywright.language.index.Domains;
import org.baywright.language.index.Facts;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Refs.Ref;
import org.baywright.language.index.Symbol;
import org.baywright.model.Domain;
import org.baywright.model.Skill;
import org.baywright.model.Span;
import org.baywright.model.ValueSet;

/** What a technician does: tests and repairs. */
final class Work {

	private final Context context;
	private final Declarations declarations;
	private final Limits limits;
	private final Values values;
	private final Clauses clauses;

	Work(Context context, Declarations declarations, Limits limits, Values values, Clauses clauses) {
		this.context = context;
		this.declarations = declarations;
		this.limits = limits;
		this.values = values;
		this.clauses = clauses;
	}

	/** Translates a test, or returns nothing if its results are not known. */
	Optional<org.baywright.model.Test> test(Test test) {
		clauses.once(test, BayPackage.Literals.TEST__LOW, "measures");
		clauses.once(test, BayPackage.Literals.TEST__PART, "at");
		clauses.once(test, BayPackage.Literals.TEST__TAKES, "takes");
		clauses.once(test, BayPackage.Literals.TEST__COST, "cost");
		clauses.once(test, BayPackage.Literals.TEST__SKILL, "skill");
		Span span = context.source.span(test, BayPackage.Literals.SUBJECT__NAME);
		Optional<Domain> domain = domain(test, span);
		Optional<String> part = context.resolveOne(test, BayPackage.Literals.TEST__PART, Kind.PART);
		List<String> tools = context.resolveAll(test, BayPackage.Literals.TEST__TOOLS, Kind.TOOL);
		List<org.baywright.model.StateSetting> states = context.settings(test.getStates());
		List<String> cautions = context.resolveAll(test, BayPackage.Literals.TEST__CAUTIONS, Kind.HAZARD);
		List<String> disturbs = disturbs(test);
		BigDecimal takes = limits.minutes(test.getTakes());
		return domain.map(known -> new org.baywright.model.Test(test.getName(),
				Context.title(test.getTitle(), test.getName()), known, part, tools, states, test.getPrepare(), takes,
				orZero(test.getCost()), skill(test.getSkill()), test.getFits(), disturbs, cautions, span));
	}

	private Optional<Domain> domain(Test test, Span span) {
		boolean measures = Clauses.keyword(test, "measures") != null;
		boolean results = Clauses.keyword(test, "results") != null;
		if (measures && results) {
			context.report.error("test-both", span,
					"The test `" + test.getName() + "` gives a measured value and named results.",
					"Keep `measures` or `results`; make two tests if both are needed.");
			return Optional.empty();
		}
		if (!measures && !results) {
			context.report.error("test-neither", span,
					"The test `" + test.getName() + "` does not say what it can give.",
					"Add `measures V 0 .. 18 step 0.1`, with your unit and range, or `results` with their names.");
			return Optional.empty();
		}
		declarations.checkValues(test.getResults(), "test", test.getName());
		if (measures) {
			Span range = context.source.span(test, BayPackage.Literals.TEST__LOW);
			if (test.getUnit() != null
					&& !limits.known(test.getUnit(), context.source.span(test, BayPackage.Literals.TEST__UNIT))) {
				return Optional.empty();
			}
			if (test.getStep() != null && test.getStep().signum() == 0) {
				context.report.error("step-zero", context.source.span(test, BayPackage.Literals.TEST__STEP),
						"A step of 0 tells no two values apart.", "Write what the instrument can show, such as 0.1.");
				return Optional.empty();
			}
			if (!declarations.checkRange(test.getLow(), test.getHigh(), test.getStep(), range)) {
				return Optional.empty();
			}
		}
		return Domains.of(test, declarations::place);
	}

	private List<String> disturbs(Test test) {
		List<String> out = new ArrayList<>();
		for (Ref ref : Refs.all(test, BayPackage.Literals.TEST__DISTURBS)) {
			List<Symbol> found = context.find(Key.subject(ref.name()));
			if (found.isEmpty()) {
				List<String> names = new ArrayList<>(context.names(Kind.TEST));
				names.addAll(context.names(Kind.SIGN));
				names.addAll(context.names(Kind.CODE));
				names.addAll(context.names(Kind.MODULE));
				context.report.error("unknown-name", context.source.span(ref.node()),
						"There is no sign, test, code or module `" + ref.name() + "`.",
						Spelling.advice(ref.name(), names, "Define it, or correct the name."));
			} else if (found.get(0).kind() == Kind.TRAIT || found.get(0).kind() == Kind.FAULT) {
				context.report.error("wrong-subject", context.source.span(ref.node()),
						"A test disturbs what can be found, and `" + ref.name() + "` is " + found.get(0).kind().aWord() + ".",
						"Name a sign, a test, a code or a module.");
			} else {
				out.add(ref.name());
			}
		}
		return out;
	}

	org.baywright.model.Repair repair(Repair repair) {
		clauses.once(repair, BayPackage.Literals.REPAIR__TAKES, "takes");
		clauses.once(repair, BayPackage.Literals.REPAIR__COST, "cost");
		clauses.once(repair, BayPackage.Literals.REPAIR__SKILL, "skill");
		Span span = context.source.span(repair, BayPackage.Literals.REPAIR__NAME);
		if (Refs.all(repair, BayPackage.Literals.REPAIR__FAULTS).isEmpty()) {
			context.report.error("repair-fixes-nothing", span,
					"The repair `" + repair.getName() + "` does not say which fault it puts right.",
					"Add `fixes` with a fault, such as `fixes battery.discharged`.");
		}
		List<org.baywright.model.VerifyStep> steps = new ArrayList<>();
		for (VerifyBlock block : repair.getVerify()) {
			for (VerifyStep step : block.getSteps()) {
				step(step).ifPresent(steps::add);
			}
		}
		return new org.baywright.model.Repair(repair.getName(), Context.title(repair.getTitle(), repair.getName()),
				context.resolveAll(repair, BayPackage.Literals.REPAIR__FAULTS, Kind.FAULT), repair.getSteps(),
				context.resolveAll(repair, BayPackage.Literals.REPAIR__CAUTIONS, Kind.HAZARD),
				context.resolveAll(repair, BayPackage.Literals.REPAIR__TOOLS, Kind.TOOL), limits.minutes(repair.getTakes()),
				orZero(repair.getCost()), skill(repair.getSkill()), repair.getTell(), repair.getChanges(),
				!repair.getVerify().isEmpty(), steps, span);
	}

	private Optional<org.baywright.model.VerifyStep> step(VerifyStep step) {
		Span span = context.source.span(step);
		if (step instanceof ClearStep) {
			return context.resolveOne(step, BayPackage.Literals.CLEAR_STEP__MODULE, Kind.MODULE)
					.map(module -> new org.baywright.model.VerifyStep.Clear(module, span));
		}
		if (step instanceof CycleStep) {
			return context.resolveOne(step, BayPackage.Literals.CYCLE_STEP__STATE, Kind.STATE)
					.map(state -> new org.baywright.model.VerifyStep.Cycle(state, span));
		}
		if (step instanceof SetStep set) {
			return context.setting(set.getSetting()).map(setting -> new org.baywright.model.VerifyStep.Put(setting, span));
		}
		if (step instanceof ReadStep) {
			return context.resolveOne(step, BayPackage.Literals.READ_STEP__MODULE, Kind.MODULE)
					.map(module -> new org.baywright.model.VerifyStep.Read(module, span));
		}
		if (step instanceof ExpectStep expect) {
			return context.resolveOne(step, BayPackage.Literals.EXPECT_STEP__CODE, Kind.CODE)
					.map(code -> new org.baywright.model.VerifyStep.Expect(code, expect.getValue() == ExpectValue.PRESENT, span));
		}
		if (step instanceof RepeatConfirmed) {
			return Optional.of(new org.baywright.model.VerifyStep.RepeatWhatConfirmed(span));
		}
		return step instanceof RepeatStep repeat ? repeat(repeat, span) : Optional.empty();
	}

	private Optional<org.baywright.model.VerifyStep> repeat(RepeatStep repeat, Span span) {
		Optional<Symbol> test = Refs.one(repeat, BayPackage.Literals.REPEAT_STEP__TEST)
				.flatMap(ref -> context.resolve(ref, Kind.TEST));
		Optional<Domain> domain = test.flatMap(symbol -> ((Facts.OfTest) symbol.facts()).domain());
		if (domain.isEmpty()) {
			return Optional.empty();
		}
		Optional<ValueSet> expected = repeat.getExpected().isEmpty() ? Optional.empty()
				: values.anyBand(repeat.getExpected(), Values.Owner.of(test.get().name(), domain.get()));
		return Optional.of(new org.baywright.model.VerifyStep.Repeat(test.get().name(), expected, span));
	}

	private static BigDecimal orZero(BigDecimal number) {
		return number == null ? BigDecimal.ZERO : number;
	}

	private static Skill skill(org.baywright.language.bay.Skill skill) {
		return skill == null ? Skill.BASIC : Skill.valueOf(skill.getName().toUpperCase(Locale.ROOT));
	}
}
