package org.baywright.model;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * What must hold. A condition on a finding holds only when the finding is known and true; {@link Not} of it holds only
 * when it is known and false. A condition on a verdict looks at what the rules have derived: the verdict stands or it
 * does not.
 */
public sealed interface Condition {

	/** Returns where the condition is written. */
	Span span();

	/**
	 * Returns the answer for the kind of condition that this is. Lambdas that say their kind, as {@code (Condition.Or or) ->},
	 * read like a switch, and the compiler knows when one is missing or stands in another's place.
	 */
	<R> R match(Function<And, R> and, Function<Or, R> or, Function<Not, R> not, Function<Atom, R> atom);

	/** As {@link #match}, without an answer. */
	default void visit(Consumer<And> and, Consumer<Or> or, Consumer<Not> not, Consumer<Atom> atom) {
		match(Kinds.silent(and), Kinds.silent(or), Kinds.silent(not), Kinds.silent(atom));
	}

	/** Calls {@code use} for each condition that is not made of others, in the order of the text. */
	default void eachAtom(Consumer<Atom> use) {
		eachAtom(true, (atom, asItStands) -> use.accept(atom));
	}

	/**
	 * As {@link #eachAtom(Consumer)}, with whether the atom counts as it stands or, behind {@code not}, reversed.
	 *
	 * @param asItStands whether this condition itself counts as it stands
	 */
	default void eachAtom(boolean asItStands, BiConsumer<Atom, Boolean> use) {
		visit(
				(And and) -> and.parts().forEach(part -> part.eachAtom(asItStands, use)),
				(Or or) -> or.parts().forEach(part -> part.eachAtom(asItStands, use)),
				(Not not) -> not.part().eachAtom(!asItStands, use),
				(Atom atom) -> use.accept(atom, asItStands));
	}

	/** A condition that is not made of others. */
	sealed interface Atom extends Condition {

		/** Returns the answer of the one case that this atom is. */
		<R> R match(Cases<R> cases);

		/** Returns the answer for the kind of atom that this is; see {@link Condition#match}. */
		default <R> R match(Function<TraitIs, R> trait, Function<SignIs, R> sign, Function<TestIs, R> test, Function<CodeIs, R> code,
				Function<ModuleIs, R> module, Function<VerdictIs, R> verdict, Function<Unexplained, R> unexplained) {
			return match(new Cases<>(trait, sign, test, code, module, verdict, unexplained));
		}

		/** As {@code match}, without an answer. */
		default void visit(Consumer<TraitIs> trait, Consumer<SignIs> sign, Consumer<TestIs> test, Consumer<CodeIs> code,
				Consumer<ModuleIs> module, Consumer<VerdictIs> verdict, Consumer<Unexplained> unexplained) {
			match(Kinds.silent(trait), Kinds.silent(sign), Kinds.silent(test), Kinds.silent(code), Kinds.silent(module), Kinds.silent(verdict),
					Kinds.silent(unexplained));
		}

		@Override
		default <R> R match(Function<And, R> and, Function<Or, R> or, Function<Not, R> not, Function<Atom, R> atom) {
			return atom.apply(this);
		}

		/** Returns the name of what is asked about. */
		default String about() {
			return match(TraitIs::trait, SignIs::sign, TestIs::test, CodeIs::code, ModuleIs::module, VerdictIs::fault, Unexplained::sign);
		}
	}

	/** What to answer for each kind of atom. */
	record Cases<R>(Function<TraitIs, R> trait, Function<SignIs, R> sign, Function<TestIs, R> test, Function<CodeIs, R> code,
			Function<ModuleIs, R> module, Function<VerdictIs, R> verdict, Function<Unexplained, R> unexplained) {
	}

	/** All parts hold; an empty list always holds. */
	record And(List<Condition> parts, Span span) implements Condition {
		public And {
			parts = List.copyOf(parts);
		}

		@Override
		public <R> R match(Function<And, R> and, Function<Or, R> or, Function<Not, R> not, Function<Atom, R> atom) {
			return and.apply(this);
		}
	}

	/** At least one part holds; an empty list never holds. */
	record Or(List<Condition> parts, Span span) implements Condition {
		public Or {
			parts = List.copyOf(parts);
		}

		@Override
		public <R> R match(Function<And, R> and, Function<Or, R> or, Function<Not, R> not, Function<Atom, R> atom) {
			return or.apply(this);
		}
	}

	record Not(Condition part, Span span) implements Condition {
		@Override
		public <R> R match(Function<And, R> and, Function<Or, R> or, Function<Not, R> not, Function<Atom, R> atom) {
			return not.apply(this);
		}
	}

	/** The trait of the vehicle is one of the values; false in a family without the trait. */
	record TraitIs(String trait, ValueSet values, Span span) implements Atom {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.trait().apply(this);
		}
	}

	/** The sign was looked for and is present or absent. */
	record SignIs(String sign, boolean present, Span span) implements Atom {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.sign().apply(this);
		}
	}

	/** The test was done and gave one of the values. */
	record TestIs(String test, ValueSet values, Span span) implements Atom {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.test().apply(this);
		}
	}

	/** The code was asked for and has this reading. */
	record CodeIs(String code, CodeReading reading, Span span) implements Atom {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.code().apply(this);
		}
	}

	/** The module was asked and answered, or stayed silent. */
	record ModuleIs(String module, boolean answers, Span span) implements Atom {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.module().apply(this);
		}
	}

	/** The verdict on the fault stands, or does not stand. */
	record VerdictIs(String fault, VerdictKind verdict, boolean stands, Span span) implements Atom {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.verdict().apply(this);
		}
	}

	/**
	 * The sign is present and none of the faults is confirmed that rules for this sign can confirm. A rule is for a sign if
	 * it asks for the sign to be present or about a verdict that such a rule states, and not for it to be unexplained.
	 */
	record Unexplained(String sign, Span span) implements Atom {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.unexplained().apply(this);
		}
	}
}
