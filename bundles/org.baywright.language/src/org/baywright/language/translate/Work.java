package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.ClearStep;
import org.baywright.language.bay.CycleStep;
import org.baywright.language.bay.ExpectStep;
import org.baywright.language.bay.ExpectValue;
import org.baywright.language.bay.PrepareStep;
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
import org.baywright.language.text.Advice;
import org.baywright.language.text.Spelling;
import org.baywright.model.Domain;
import org.baywright.model.Notice;
import org.baywright.model.ProblemKind;
import org.baywright.model.Scope;
import org.baywright.model.Skill;
import org.baywright.model.Span;
import org.baywright.model.ValueSet;
import org.eclipse.xtext.nodemodel.INode;

/** What a technician does: tests and repairs. */
final class Work {

	private static final int MOST_TRIED = 1_000_000;
	/** What only a test that is done by itself says. */
	private static final Set<String> EFFORT = Set.of("needs", "in", "prepare", "wait", "drive", "do", "takes", "cost", "skill", "fits", "disturbs");

	private final Context context;
	private final Declarations declarations;
	private final Limits limits;
	private final Values values;
	private final Preparations preparations;
	private final Scopes scopes;

	Work(Context context, Declarations declarations, Limits limits, Values values, Scopes scopes) {
		this.scopes = scopes;
		this.context = context;
		this.declarations = declarations;
		this.limits = limits;
		this.values = values;
		this.preparations = declarations.preparations();
	}

	/** Translates a test, or returns nothing if its results are not known. */
	Optional<org.baywright.model.Test> test(Test test) {
		Span span = context.source.span(test, BayPackage.Literals.SUBJECT__NAME);
		Optional<Domain> domain = domain(test, span);
		Optional<String> part = context.resolveOne(test, BayPackage.Literals.TEST__PART, Kind.PART);
		List<String> tools = context.tools(test, BayPackage.Literals.TEST__TOOLS);
		List<org.baywright.model.StateSetting> states = context.settings(test.getStates());
		List<String> cautions = context.resolveAll(test, BayPackage.Literals.TEST__CAUTIONS, Kind.HAZARD);
		List<String> disturbs = disturbs(test);
		List<org.baywright.model.Preparation> prepare = new ArrayList<>();
		test.getPrepare().forEach(written -> preparations.of(written).ifPresent(prepare::add));
		BigDecimal takes = limits.minutes(test.getTakes());
		Scope scope = scopes.of(test.getReaches());
		Optional<String> seenWith = seenWith(test);
		Optional<org.baywright.model.Test> made = domain.map(known -> new org.baywright.model.Test(test.getName(),
				Context.title(test.getTitle(), test.getName()), scope, known, Optional.empty(), part, Optional.ofNullable(test.getPlace()),
				declarations.pictures(test.getPictures()), tools, states,
				prepare, takes,
				orZero(test.getCost()), skill(test.getSkill()), test.getFits(), disturbs, cautions, span));
		return made.map(own -> seenWith.map(own::asSeenWith).orElse(own));
	}

	/** Returns the test that a test is seen with; reports one that is not done by itself, and what only that one may say. */
	private Optional<String> seenWith(Test test) {
		Optional<Ref> ref = Refs.one(test, BayPackage.Literals.TEST__SEEN_WITH);
		Optional<Symbol> other = ref.flatMap(found -> context.resolve(found, Kind.TEST));
		if (other.isEmpty()) {
			return Optional.empty();
		}
		String name = other.get().name();
		Optional<String> third = seenWith(other.get());
		if (third.isPresent()) {
			Span span = context.source.span(ref.get().node());
			List<String> done = doneBy(name).filter(last -> !last.equals(test.getName())).stream().toList();
			context.report.error(ProblemKind.SEEN_WITH_SEEN, span, "`" + test.getName() + "` is seen with "
					+ (name.equals(test.getName()) ? "itself." : "`" + name + "`, which is itself seen with `" + third.get() + "`."),
					done.isEmpty() ? Advice.words("Name the test that is done; that one has no `seen_with`.") : Advice.writeName(span, name, done));
			return Optional.empty();
		}
		for (List<INode> clause : Clauses.beginning(test, EFFORT)) {
			Span span = context.source.span(clause.get(0), clause.get(1));
			context.report.tell(ProblemKind.SEEN_WITH_EFFORT, span,
					"`" + test.getName() + "` is seen with `" + name + "`, which says how it is done.",
					new Advice("Take this out.", List.of(Advice.replace("Take it out", context.source.withBlanks(span), ""))));
		}
		return Optional.of(name);
	}

	private static Optional<String> seenWith(Symbol test) {
		return ((Facts.OfTest) test.facts()).seenWith();
	}

	/** Returns the test at the end of those that are seen with each other; nothing if they go in a circle or lead nowhere. */
	private Optional<String> doneBy(String test) {
		Set<String> passed = new HashSet<>();
		String last = test;
		while (passed.add(last)) {
			Optional<Symbol> found = context.find(Kind.TEST, last);
			Optional<String> next = found.flatMap(Work::seenWith);
			if (next.isEmpty()) {
				return found.map(Symbol::name);
			}
			last = next.get();
		}
		return Optional.empty();
	}

	private Optional<Domain> domain(Test test, Span span) {
		boolean measures = Clauses.keyword(test, "measures") != null;
		boolean results = Clauses.keyword(test, "results") != null;
		if (measures && results) {
			context.report.error(ProblemKind.TEST_BOTH, span,
					"The test `" + test.getName() + "` gives a measured value and named results.",
					"Keep `measures` or `results`; make two tests if both are needed.");
			return Optional.empty();
		}
		if (!measures && !results) {
			context.report.error(ProblemKind.TEST_NEITHER, span,
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
				context.report.error(ProblemKind.STEP_ZERO, context.source.span(test, BayPackage.Literals.TEST__STEP),
						"A step of 0 tells no two values apart.", "Write what the instrument can show, such as 0.1.");
				return Optional.empty();
			}
			declarations.checkValues(Domains.beyond(test).toList(), "test", test.getName());
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
				Span span = context.source.span(ref.node());
				context.report.error(ProblemKind.UNKNOWN_NAME, span,
						"There is no sign, test, code or module `" + ref.name() + "`.",
						Spelling.advice(span, ref.name(), names, "Define it, or correct the name.").or(Defining.bare(Kind.SIGN, ref.name())));
			} else if (found.get(0).kind() == Kind.TRAIT || found.get(0).kind() == Kind.FAULT) {
				context.report.error(ProblemKind.WRONG_SUBJECT, context.source.span(ref.node()),
						"A test disturbs what can be found, and `" + ref.name() + "` is " + found.get(0).kind().aWord() + ".",
						"Name a sign, a test, a code or a module.");
			} else {
				out.add(ref.name());
			}
		}
		return out;
	}

	org.baywright.model.Repair repair(Repair repair) {
		Span span = context.source.span(repair, BayPackage.Literals.REPAIR__NAME);
		if (Refs.all(repair, BayPackage.Literals.REPAIR__FAULTS).isEmpty()) {
			context.report.error(ProblemKind.REPAIR_FIXES_NOTHING, span,
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
				scopes.of(repair.getReaches()),
				context.resolveAll(repair, BayPackage.Literals.REPAIR__FAULTS, Kind.FAULT),
				Optional.ofNullable(repair.getPlace()), declarations.pictures(repair.getPictures()), repair.getSteps(),
				context.resolveAll(repair, BayPackage.Literals.REPAIR__CAUTIONS, Kind.HAZARD),
				context.tools(repair, BayPackage.Literals.REPAIR__TOOLS), limits.minutes(repair.getTakes()),
				orZero(repair.getCost()), skill(repair.getSkill()), notices(repair), repair.getChanges(),
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
			return expect(expect, span);
		}
		if (step instanceof PrepareStep prepare) {
			return preparations.of(prepare.getPreparation())
					.map(made -> new org.baywright.model.VerifyStep.Prepare(made, span));
		}
		if (step instanceof RepeatConfirmed) {
			return Optional.of(new org.baywright.model.VerifyStep.RepeatWhatConfirmed(span));
		}
		return step instanceof RepeatStep repeat ? repeat(repeat, span) : Optional.empty();
	}

	private Optional<org.baywright.model.VerifyStep> expect(ExpectStep expect, Span span) {
		boolean present = expect.getValue() == ExpectValue.PRESENT;
		Optional<Ref> ref = Refs.one(expect, BayPackage.Literals.EXPECT_STEP__SUBJECT);
		Optional<Symbol> sign = ref.flatMap(found -> context.find(Kind.SIGN, found.name()));
		if (sign.isEmpty()) {
			if (expect.getTried() != null) {
				context.report.tell(ProblemKind.TRIED_CODE, context.source.span(expect, BayPackage.Literals.EXPECT_STEP__TRIED),
						"A sign is tried; a code is read.", "Take `tried` out.");
			}
			return ref.flatMap(found -> context.resolve(found, Kind.CODE))
					.map(code -> new org.baywright.model.VerifyStep.Expect(code.name(), present, span));
		}
		BigDecimal tried = orZero(expect.getTried());
		if (expect.getTried() != null && (tried.signum() == 0 || !Domains.isWhole(tried))) {
			context.report.tell(ProblemKind.WHOLE_NUMBER_NEEDED, context.source.span(expect, BayPackage.Literals.EXPECT_STEP__TRIED),
					"What is tried is counted in whole numbers, and at least once; " + Limits.say(tried) + " is none.",
					"Write a whole number.");
			tried = BigDecimal.ZERO;
		}
		if (!present && tried.compareTo(BigDecimal.ONE) <= 0 && ((Facts.OfSign) sign.get().facts()).intermittent()) {
			context.report.tell(ProblemKind.TRIED_MISSING, context.source.span(expect),
					"`" + sign.get().name() + "` comes and goes: that it is absent once proves nothing.",
					"Say how often it was tried, such as `tried 10 times`.");
		}
		return Optional.of(new org.baywright.model.VerifyStep.ExpectSign(sign.get().name(), present,
				tried.min(BigDecimal.valueOf(MOST_TRIED)).intValue(), span));
	}

	private static List<Notice> notices(Repair repair) {
		List<Notice> notices = new ArrayList<>();
		repair.getTell().forEach(text -> notices.add(new Notice(Notice.Whom.CUSTOMER, text, "")));
		repair.getNotices().stream().filter(notice -> notice.getText() != null)
				.forEach(notice -> notices.add(new Notice(Notice.Whom.valueOf(notice.getWhom().getName().toUpperCase(Locale.ROOT)),
						notice.getText(), notice.getWhy() == null ? "" : notice.getWhy())));
		return notices;
	}

	private Optional<org.baywright.model.VerifyStep> repeat(RepeatStep repeat, Span span) {
		Optional<Symbol> test = Refs.one(repeat, BayPackage.Literals.REPEAT_STEP__TEST)
				.flatMap(ref -> context.resolve(ref, Kind.TEST, Defining.test(ref.name(), repeat.getExpected())));
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
