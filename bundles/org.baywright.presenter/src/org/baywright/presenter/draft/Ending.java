package org.baywright.presenter.draft;

import java.util.List;
import java.util.Optional;

import org.baywright.model.Conclusion;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;
import org.baywright.presenter.Say;

/**
 * What a result leads to.
 *
 * @param kind what it says
 * @param about the fault, or to whom the job goes; without meaning if it says nothing
 */
public record Ending(Kind kind, String about) {

	/** What a result can say. */
	public enum Kind {
		/** It leads nowhere: the line is left out. */
		LEFT_OUT("leads nowhere yet"),
		/** It is known to prove nothing. */
		NOTHING("proves nothing"),
		/** It is this fault. */
		CONFIRMS("confirms"),
		/** It may be this fault. */
		SUSPECTS("suspects"),
		/** It is not this fault. */
		CLEARS("clears"),
		/** Somebody else goes on. */
		REFERS("refers");

		private final String words;

		Kind(String words) {
			this.words = words;
		}

		/** Returns how a list of choices says it. */
		public String words() {
			return words;
		}

		/** Returns whether it needs a fault or somebody to refer to. */
		public boolean needsMore() {
			return this != LEFT_OUT && this != NOTHING;
		}
	}

	/** Leads nowhere. */
	public static final Ending LEFT_OUT = new Ending(Kind.LEFT_OUT, "");

	Optional<String> problem(String result) {
		if (!kind.needsMore() || !about.isBlank()) {
			return Optional.empty();
		}
		String ask = kind == Kind.REFERS ? "say to whom the job goes" : "choose the fault that it " + kind.words();
		return Optional.of("For the result " + result + ", " + ask + ".");
	}

	/** Returns what it concludes; nothing where it leads nowhere. */
	List<Conclusion> conclusions() {
		return switch (kind) {
		case LEFT_OUT -> List.of();
		case NOTHING -> List.of(new Conclusion.Nothing(Span.NONE));
		case CONFIRMS -> on(VerdictKind.CONFIRMED);
		case SUSPECTS -> on(VerdictKind.SUSPECTED);
		case CLEARS -> on(VerdictKind.CLEARED);
		case REFERS -> List.of(new Conclusion.Refers(Say.inLine(about), Span.NONE));
		};
	}

	private List<Conclusion> on(VerdictKind verdict) {
		return List.of(new Conclusion.OnFault(verdict, about, Span.NONE));
	}
}
