package org.baywright.language.translate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.baywright.language.bay.Atom;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Both;
import org.baywright.language.bay.Compare;
import org.baywright.language.bay.Condition;
import org.baywright.language.bay.Either;
import org.baywright.language.bay.IsValue;
import org.baywright.language.bay.Negation;
import org.baywright.language.bay.Presence;
import org.baywright.language.bay.PresenceValue;
import org.baywright.language.bay.Standing;
import org.baywright.language.index.Facts;
import org.baywright.language.index.FamilyTree;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Refs.Ref;
import org.baywright.language.index.Symbol;
import org.baywright.language.text.Advice;
import org.baywright.language.text.Spelling;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.Mend;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;
import org.baywright.model.Written;

/** Conditions of rules and laws. */
final class Conditions {

	private final Context context;
	private final FamilyTree families;
	private final Values values;

	Conditions(Context context, FamilyTree families, Values values) {
		this.context = context;
		this.families = families;
		this.values = values;
	}

	/** Where a condition stands; that decides what it may speak of. */
	enum Place {
		/** Which vehicles: traits only. */
		WHERE,
		/** What a rule needs: anything. */
		GIVEN,
		/** A law: anything but verdicts. */
		LAW
	}

	/**
	 * A condition's surroundings.
	 *
	 * @param place where it stands
	 * @param families families it is written for; empty for all
	 */
	record Within(Place place, List<String> families) {
	}

	/** Translates a condition, or returns nothing if a part of it is wrong. */
	Optional<org.baywright.model.Condition> translate(Condition condition, Within within) {
		if (condition instanceof Either either) {
			either.getParts().forEach(this::mustBeInBrackets);
			return parts(either.getParts(), within)
					.map(parts -> new org.baywright.model.Condition.Or(parts, span(condition)));
		}
		if (condition instanceof Both both) {
			return parts(both.getParts(), within)
					.map(parts -> new org.baywright.model.Condition.And(parts, span(condition)));
		}
		if (condition instanceof Negation negation) {
			return translate(negation.getPart(), within)
					.map(part -> new org.baywright.model.Condition.Not(part, span(condition)));
		}
		if (condition instanceof Atom atom) {
			return atom(atom, within);
		}
		context.report.incomplete();
		return Optional.empty();
	}

	private Optional<List<org.baywright.model.Condition>> parts(List<Condition> written, Within within) {
		List<org.baywright.model.Condition> parts = new ArrayList<>();
		for (Condition part : written) {
			translate(part, within).ifPresent(parts::add);
		}
		return parts.size() == written.size() ? Optional.of(parts) : Optional.empty();
	}

	/** Read aloud, "a or b, c" sounds like "(a or b), c", which it is not; so nobody is left to guess. */
	private void mustBeInBrackets(Condition part) {
		String written = context.source.written(part);
		if (part instanceof Both && !isInBrackets(written)) {
			context.report.error(ProblemKind.AND_IN_OR, span(part), "`or` stands beside `and` or a comma, and it can be read in two ways.",
					"Put brackets around what belongs together, such as `(" + written + ")`, or give the rest a `given` of its own.");
		}
	}

	private static boolean isInBrackets(String written) {
		int depth = 0;
		for (int i = 0; i < written.length(); i++) {
			depth += written.charAt(i) == '(' ? 1 : written.charAt(i) == ')' ? -1 : 0;
			if (depth == 0) {
				return i > 0 && i == written.length() - 1;
			}
		}
		return false;
	}

	private Span span(Condition condition) {
		return context.source.span(condition);
	}

	private Optional<org.baywright.model.Condition> atom(Atom atom, Within within) {
		Optional<Ref> ref = Refs.one(atom, BayPackage.Literals.ATOM__SUBJECT);
		if (ref.isEmpty()) {
			context.report.incomplete();
			return Optional.empty();
		}
		List<Symbol> found = context.find(Key.subject(ref.get().name()));
		if (found.isEmpty()) {
			unknown(atom, ref.get(), within);
			return Optional.empty();
		}
		Symbol symbol = found.get(0);
		if (!mayStand(symbol.kind(), ref.get(), within)) {
			return Optional.empty();
		}
		return switch (symbol.kind()) {
		case SIGN -> reached(atom, symbol, within, () -> sign(atom, symbol, within));
		case CODE -> code(atom, symbol, within);
		case MODULE -> module(atom, symbol, within);
		case TEST -> reached(atom, symbol, within, () -> test(atom, symbol));
		case TRAIT -> trait(atom, ref.get(), within);
		case FAULT -> fault(atom, symbol);
		default -> throw new IllegalStateException(symbol.kind().word());
		};
	}

	private boolean mayStand(Kind kind, Ref ref, Within within) {
		if (within.place() == Place.WHERE && kind != Kind.TRAIT) {
			context.report.error(ProblemKind.WHERE_NOT_TRAIT, context.source.span(ref.node()),
					"`where` tells vehicles apart by their traits, and `" + ref.name() + "` is " + kind.aWord() + ".",
					"Put what is found on the vehicle under `given`.");
			return false;
		}
		if (within.place() == Place.LAW && kind == Kind.FAULT) {
			context.report.error(ProblemKind.LAW_VERDICT, context.source.span(ref.node()),
					"A law speaks of the vehicle and of what can be found on it, not of verdicts such as that on `"
							+ ref.name() + "`.",
					"Write a rule with `given`, or `exclusive` for faults that exclude each other.");
			return false;
		}
		return true;
	}

	private void unknown(Atom atom, Ref ref, Within within) {
		Span span = context.source.span(ref.node());
		if (ref.name().indexOf('.') >= 0) {
			if (fits(Kind.FAULT, atom, within)) {
				context.resolve(ref, Kind.FAULT);
			} else if (mayStand(Kind.FAULT, ref, within)) {
				context.report.error(ProblemKind.UNKNOWN_NAME, span, "There is no fault `" + ref.name() + "`.",
						advice(span, ref.name(), List.of(), context.names(Kind.FAULT)));
			}
			return;
		}
		if (context.find(Kind.PART, ref.name()).isPresent()) {
			List<String> faults = context.names(Kind.FAULT).stream().filter(name -> name.startsWith(ref.name() + "."))
					.toList();
			context.report.error(ProblemKind.UNKNOWN_NAME, span, "`" + ref.name() + "` is a part, and a condition needs a fault of it.",
					within.place() != Place.GIVEN ? Advice.words("Name what is found on the vehicle.")
							: faults.isEmpty() ? Advice.words("Define a fault of the part first.")
							: fits(Kind.FAULT, atom, within) ? Advice.writeName(span, ref.name(), faults)
									: Advice.words("Write one of " + Spelling.either(faults) + ", and behind it what rules say of it."));
			return;
		}
		for (Kind kind : List.of(Kind.STATE, Kind.TOOL, Kind.FAMILY, Kind.HAZARD, Kind.RULE, Kind.REPAIR)) {
			if (context.find(kind, ref.name()).isPresent()) {
				context.report.error(ProblemKind.UNKNOWN_NAME, span,
						"`" + ref.name() + "` is " + kind.aWord() + ", of which a condition cannot speak.",
						kind == Kind.STATE ? "Put the vehicle into a state with `in`." : "Name what is found on the vehicle.");
				return;
			}
		}
		boolean where = within.place() == Place.WHERE;
		List<String> names = new ArrayList<>();
		List<String> others = new ArrayList<>();
		for (Kind kind : where ? List.of(Kind.TRAIT) : List.of(Kind.SIGN, Kind.TEST, Kind.CODE, Kind.MODULE, Kind.TRAIT)) {
			for (String name : context.names(kind)) {
				boolean there = kind != Kind.TRAIT || !families.view(within.families(), name).declarations().isEmpty();
				(there && fits(kind, atom, within) ? names : others).add(name);
			}
		}
		List<Mend> define = !where && fits(Kind.SIGN, atom, within) ? Defining.bare(Kind.SIGN, ref.name())
				: !where && fits(Kind.MODULE, atom, within) ? Defining.bare(Kind.MODULE, ref.name()) : List.of();
		String what = within.place() == Place.WHERE ? "trait" : "sign, test, code, module or trait";
		context.report.error(ProblemKind.UNKNOWN_NAME, span, "There is no " + what + " `" + ref.name() + "`.",
				advice(span, ref.name(), names, others).or(define));
	}

	/** Of a name that is near, but of which one cannot say what the condition says, only the author knows what is meant. */
	private static Advice advice(Span span, String written, List<String> names, List<String> others) {
		List<String> unfit = Spelling.near(written, others);
		return Spelling.advice(span, written, names, unfit.isEmpty() ? "Define it, or correct the name."
				: "There is " + Spelling.either(unfit) + ", but not with what is said here. Define it, or correct what is meant.");
	}

	/** Whether one can say of a thing of a kind what a condition says. */
	private static boolean fits(Kind kind, Atom atom, Within within) {
		if (atom.getPredicate() instanceof Presence presence) {
			return switch (presence.getValue()) {
			case PRESENT, ABSENT -> kind == Kind.SIGN || kind == Kind.CODE;
			case UNEXPLAINED -> kind == Kind.SIGN && within.place() != Place.LAW;
			case UNREAD, ACTIVE, STORED, PENDING, UNTESTED, MISSING -> kind == Kind.CODE;
			case ANSWERS, SILENT -> kind == Kind.MODULE;
			};
		}
		if (atom.getPredicate() instanceof Standing) {
			return kind == Kind.FAULT && within.place() == Place.GIVEN;
		}
		return atom.getPredicate() == null ? kind == Kind.SIGN || kind == Kind.CODE : kind == Kind.TEST || kind == Kind.TRAIT;
	}

	private Optional<org.baywright.model.Condition> reached(Atom atom, Symbol symbol, Within within,
			Supplier<Optional<org.baywright.model.Condition>> translate) {
		checkReached(span(atom), symbol, within.families());
		return translate.get();
	}

	/** Tells of a sign or a test that is for none of the vehicles that are meant. */
	void checkReached(Span place, Symbol symbol, List<String> families) {
		if (!this.families.reachesAny(symbol.facts().reach(), families)) {
			context.report.tell(ProblemKind.NOT_FITTED, place, "The " + symbol.kind().word() + " `" + symbol.name()
					+ "` is for no vehicle meant here.", "Name the family behind `for` at the " + symbol.kind().word() + ", or take it out here.");
		}
	}

	private Optional<org.baywright.model.Condition> sign(Atom atom, Symbol symbol, Within within) {
		Presence presence = presence(atom);
		if (within.place() == Place.LAW && presence != null && presence.getValue() == PresenceValue.UNEXPLAINED) {
			Span said = context.source.span(presence, BayPackage.Literals.PRESENCE__VALUE);
			context.report.error(ProblemKind.LAW_VERDICT, span(atom),
					"Whether a sign is explained depends on verdicts, of which a law does not speak.",
					Advice.write(said, List.of("present", "absent"), ""));
			return Optional.empty();
		}
		if (atom.getPredicate() != null && presence == null) {
			return wrongPredicate(atom, symbol, "`present`, `absent` or `unexplained`");
		}
		PresenceValue value = presence == null ? PresenceValue.PRESENT : presence.getValue();
		org.baywright.model.Condition condition = switch (value) {
		case PRESENT -> new org.baywright.model.Condition.SignIs(symbol.name(), true, span(atom));
		case ABSENT -> new org.baywright.model.Condition.SignIs(symbol.name(), false, span(atom));
		case UNEXPLAINED -> new org.baywright.model.Condition.Unexplained(symbol.name(), span(atom));
		default -> null;
		};
		if (condition == null) {
			return wrongPredicate(atom, symbol, "`present`, `absent` or `unexplained`");
		}
		return Optional.of(negated(condition, presence));
	}

	private Optional<org.baywright.model.Condition> code(Atom atom, Symbol symbol, Within within) {
		Presence presence = presence(atom);
		String choices = "`present`, `absent`, `active`, `stored`, `pending`, `untested`, `missing` or `unread`";
		if (atom.getPredicate() != null && presence == null) {
			return wrongPredicate(atom, symbol, choices);
		}
		CodeReading reading = switch (presence == null ? PresenceValue.PRESENT : presence.getValue()) {
		case PRESENT -> CodeReading.PRESENT;
		case ABSENT -> CodeReading.ABSENT;
		case UNREAD -> CodeReading.UNREAD;
		case ACTIVE -> CodeReading.ACTIVE;
		case STORED -> CodeReading.STORED;
		case PENDING -> CodeReading.PENDING;
		case UNTESTED -> CodeReading.UNTESTED;
		case MISSING -> CodeReading.MISSING;
		default -> null;
		};
		if (reading == null) {
			return wrongPredicate(atom, symbol, choices);
		}
		String module = ((Facts.OfCode) symbol.facts()).module();
		Optional<Symbol> holder = context.find(Kind.MODULE, module);
		if (holder.isEmpty()) {
			context.report.incomplete(); // reported where the code is declared
			return Optional.empty();
		}
		checkFitted(atom, symbol.name(), holder.get(), within);
		if (reading == CodeReading.UNREAD) {
			String plainly = Written.name(module) + (presence.isNegated() ? " answers" : " silent");
			context.report.tell(ProblemKind.CODE_UNREAD, span(atom),
					"A code is unread exactly when its module does not answer.",
					Advice.write(span(atom), List.of(plainly), ", which says it plainly"));
		}
		return Optional.of(negated(new org.baywright.model.Condition.CodeIs(symbol.name(), reading, span(atom)), presence));
	}

	private Optional<org.baywright.model.Condition> module(Atom atom, Symbol symbol, Within within) {
		Presence presence = presence(atom);
		PresenceValue value = presence == null ? null : presence.getValue();
		if (value != PresenceValue.ANSWERS && value != PresenceValue.SILENT) {
			return wrongPredicate(atom, symbol, "`answers` or `silent`");
		}
		checkFitted(atom, symbol.name(), symbol, within);
		return Optional.of(negated(
				new org.baywright.model.Condition.ModuleIs(symbol.name(), value == PresenceValue.ANSWERS, span(atom)),
				presence));
	}

	private void checkFitted(Atom atom, String name, Symbol module, Within within) {
		List<String> fittedIn = ((Facts.OfModule) module.facts()).families();
		if (!families.anyHas(within.families(), fittedIn)) {
			context.report.tell(ProblemKind.NOT_FITTED, span(atom), "No vehicle meant here has the module of `" + name + "`.",
					"Name the family under `on` at the module `" + module.name() + "`, or take the condition out.");
		}
	}

	private Optional<org.baywright.model.Condition> test(Atom atom, Symbol symbol) {
		Optional<Domain> domain = ((Facts.OfTest) symbol.facts()).domain();
		if (domain.isEmpty()) {
			context.report.incomplete(); // reported where the test is declared
			return Optional.empty();
		}
		return valued(atom, symbol.name(), Values.Owner.of(symbol.name(), domain.get()))
				.map(set -> new org.baywright.model.Condition.TestIs(symbol.name(), set, span(atom)))
				.map(condition -> negatedValue(condition, atom));
	}

	private Optional<org.baywright.model.Condition> trait(Atom atom, Ref ref, Within within) {
		FamilyTree.TraitView view = families.view(within.families(), ref.name());
		if (view.declarations().isEmpty()) {
			if (view.wrong()) {
				context.report.incomplete();
			} else {
				context.report.error(ProblemKind.TRAIT_NOT_IN_FAMILY, context.source.span(ref.node()),
						"No vehicle meant here has the trait `" + ref.name() + "`.",
						"Define the trait in the family, or name a family that has it under `for`.");
			}
			return Optional.empty();
		}
		if (!view.missing().isEmpty()) {
			context.report.tell(ProblemKind.TRAIT_MISSING, context.source.span(ref.node()),
					"The family `" + view.missing().get(0) + "` has no trait `" + ref.name()
							+ "`, so this never holds there.",
					"Take the family out, or define the trait in it.");
		}
		List<Domain> domains = view.facts().stream().map(facts -> facts.domain().get()).toList();
		Values.Owner owner = new Values.Owner(ref.name(), view.facts().get(0).word(), domains);
		return valued(atom, ref.name(), owner)
				.map(set -> new org.baywright.model.Condition.TraitIs(ref.name(), set, span(atom)))
				.map(condition -> negatedValue(condition, atom));
	}

	private Optional<org.baywright.model.ValueSet> valued(Atom atom, String name, Values.Owner owner) {
		if (atom.getPredicate() instanceof IsValue is) {
			return values.any(is.getValues(), owner);
		}
		if (atom.getPredicate() instanceof Compare compare) {
			return values.compare(compare.getOp(), compare.getLimit(), owner, compare);
		}
		String such = owner.isQuantity()
				? "`" + name + " below " + owner.target().domain().sayNumber(owner.target().domain().high()) + "`"
				: "`" + name + " is " + owner.names().get(0) + "`";
		context.report.error(ProblemKind.WRONG_PREDICATE, span(atom), "`" + name + "` has values, and the condition names none.",
				"Write a value, such as " + such + ".");
		return Optional.empty();
	}

	private Optional<org.baywright.model.Condition> fault(Atom atom, Symbol symbol) {
		if (!(atom.getPredicate() instanceof Standing standing)) {
			return wrongPredicate(atom, symbol, "`confirmed`, `suspected` or `cleared`");
		}
		VerdictKind verdict = VerdictKind.valueOf(standing.getVerdict().getName().toUpperCase(Locale.ROOT));
		return Optional.of(new org.baywright.model.Condition.VerdictIs(symbol.name(), verdict, !standing.isNegated(),
				span(atom)));
	}

	private Optional<org.baywright.model.Condition> wrongPredicate(Atom atom, Symbol symbol, String choices) {
		String message = atom.getPredicate() == null
				? "`" + symbol.name() + "` is " + symbol.kind().aWord() + ", and the condition does not say what of it."
				: "`" + symbol.name() + "` is " + symbol.kind().aWord() + ", of which one cannot say `"
						+ context.source.written(atom.getPredicate()) + "`.";
		context.report.error(ProblemKind.WRONG_PREDICATE, span(atom), message, "Write " + choices + " after it.");
		return Optional.empty();
	}

	private static Presence presence(Atom atom) {
		return atom.getPredicate() instanceof Presence presence ? presence : null;
	}

	private static org.baywright.model.Condition negated(org.baywright.model.Condition condition, Presence presence) {
		return presence != null && presence.isNegated()
				? new org.baywright.model.Condition.Not(condition, condition.span()) : condition;
	}

	/** "Is not" is a negation and no other set of values: without the trait, a vehicle is not electric. */
	private static org.baywright.model.Condition negatedValue(org.baywright.model.Condition condition, Atom atom) {
		return atom.getPredicate() instanceof IsValue is && is.isNegated()
				? new org.baywright.model.Condition.Not(condition, condition.span()) : condition;
	}
}
