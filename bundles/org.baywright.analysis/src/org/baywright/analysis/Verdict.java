package org.baywright.analysis;

import java.util.Comparator;
import java.util.Optional;

import org.baywright.model.Conclusion;
import org.baywright.model.VerdictKind;

/**
 * Something that rules derive: a verdict on a fault, or a referral.
 *
 * @param fault name of the fault; for a referral, to whom
 * @param kind the verdict; {@code null} for a referral
 */
public record Verdict(String fault, VerdictKind kind) implements Comparable<Verdict> {

	private static final Comparator<Verdict> ORDER = Comparator.comparing(Verdict::fault).thenComparing(Verdict::kind,
			Comparator.nullsLast(Comparator.naturalOrder()));

	/** Returns the referral to somebody. */
	public static Verdict referral(String toWhom) {
		return new Verdict(toWhom, null);
	}

	/** Returns what a conclusion derives; nothing if it proves nothing. */
	public static Optional<Verdict> of(Conclusion conclusion) {
		if (conclusion instanceof Conclusion.OnFault on) {
			return Optional.of(new Verdict(on.fault(), on.verdict()));
		}
		return conclusion instanceof Conclusion.Refers to ? Optional.of(referral(to.toWhom())) : Optional.empty();
	}

	public boolean isReferral() {
		return kind == null;
	}

	/** Returns whether a job may end with it: the fault is confirmed, or somebody else goes on. */
	public boolean isEnd() {
		return kind == null || kind == VerdictKind.CONFIRMED;
	}

	@Override
	public int compareTo(Verdict other) {
		return ORDER.compare(this, other);
	}
}
