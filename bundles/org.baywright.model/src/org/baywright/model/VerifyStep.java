package org.baywright.model;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/** One step of proving that a repair worked. */
public sealed interface VerifyStep {

	/** Returns where the step is written. */
	Span span();

	/** Returns the answer of the one case that this step is. */
	<R> R match(Cases<R> cases);

	/** Returns the answer for the kind of step that this is; see {@link Condition#match}. */
	default <R> R match(Function<Clear, R> clear, Function<Cycle, R> cycle, Function<Put, R> put, Function<Read, R> read,
			Function<Expect, R> expect, Function<ExpectSign, R> sign, Function<Prepare, R> prepare, Function<Repeat, R> repeat,
			Function<RepeatWhatConfirmed, R> whatConfirmed) {
		return match(new Cases<>(clear, cycle, put, read, expect, sign, prepare, repeat, whatConfirmed));
	}

	/** As {@code match}, without an answer. */
	default void visit(Consumer<Clear> clear, Consumer<Cycle> cycle, Consumer<Put> put, Consumer<Read> read, Consumer<Expect> expect,
			Consumer<ExpectSign> sign, Consumer<Prepare> prepare, Consumer<Repeat> repeat, Consumer<RepeatWhatConfirmed> whatConfirmed) {
		match(Kinds.silent(clear), Kinds.silent(cycle), Kinds.silent(put), Kinds.silent(read), Kinds.silent(expect), Kinds.silent(sign),
				Kinds.silent(prepare), Kinds.silent(repeat), Kinds.silent(whatConfirmed));
	}

	/** What to answer for each kind of step. */
	record Cases<R>(Function<Clear, R> clear, Function<Cycle, R> cycle, Function<Put, R> put, Function<Read, R> read,
			Function<Expect, R> expect, Function<ExpectSign, R> sign, Function<Prepare, R> prepare, Function<Repeat, R> repeat,
			Function<RepeatWhatConfirmed, R> whatConfirmed) {
	}

	/** Clear the module's codes. Reaches the module only while it answers. */
	record Clear(String module, Span span) implements VerifyStep {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.clear().apply(this);
		}
	}

	/** Take the state through what the family says, or through all its values and back: modules test themselves again. */
	record Cycle(String state, Span span) implements VerifyStep {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.cycle().apply(this);
		}
	}

	/** Put the vehicle into a state. */
	record Put(StateSetting setting, Span span) implements VerifyStep {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.put().apply(this);
		}
	}

	/** Read the module's codes. */
	record Read(String module, Span span) implements VerifyStep {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.read().apply(this);
		}
	}

	/** The code just read must be present or absent. */
	record Expect(String code, boolean present, Span span) implements VerifyStep {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.expect().apply(this);
		}
	}

	/** Repeat the test; with values, it must give one of them. */
	record Repeat(String test, Optional<ValueSet> values, Span span) implements VerifyStep {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.repeat().apply(this);
		}
	}

	/** Wait, drive, or do what a sentence says. */
	record Prepare(Preparation preparation, Span span) implements VerifyStep {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.prepare().apply(this);
		}
	}

	/**
	 * The sign must be there or gone.
	 *
	 * @param tried how many times it is tried; 0 if nothing is said
	 */
	record ExpectSign(String sign, boolean present, int tried, Span span) implements VerifyStep {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.sign().apply(this);
		}
	}

	/** Repeat whichever test confirmed the fault; it must no longer confirm. */
	record RepeatWhatConfirmed(Span span) implements VerifyStep {
		@Override
		public <R> R match(Cases<R> cases) {
			return cases.whatConfirmed().apply(this);
		}
	}
}
