package org.baywright.analysis;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import org.baywright.model.Acceptance;
import org.baywright.model.Severity;
import org.baywright.model.Span;

/**
 * Something proved about a rule base.
 *
 * @param id stable id: the check and what it is about; the same as long as the flaw is
 * @param check id of the check that found it
 * @param severity how much it matters
 * @param span the first place it concerns
 * @param message one plain sentence
 * @param related further places
 * @param evidence what shows it
 * @param story the evidence as a technician would tell it, one sentence each
 * @param meaning fingerprint of the meaning it was found on; an acceptance names it
 * @param fixes changes that would answer it, best first
 * @param accepted the author's acceptance, if there is one that still holds
 * @param breach whether it is a breach of the project's sign-off, which nobody can accept
 */
public record Flaw(String id, String check, Severity severity, Span span, String message, List<Place> related,
		Evidence evidence, List<String> story, String meaning, List<Fix> fixes, Optional<Acceptance> accepted, boolean breach)
		implements Comparable<Flaw> {

	private static final Comparator<Flaw> ORDER = Comparator.comparing(Flaw::span)
			.thenComparing(Flaw::severity).thenComparing(Flaw::id).thenComparing(Flaw::message);

	public Flaw {
		related = List.copyOf(related);
		story = List.copyOf(story);
		fixes = List.copyOf(fixes);
	}

	/** A flaw that has nothing to do with a sign-off. */
	public Flaw(String id, String check, Severity severity, Span span, String message, List<Place> related, Evidence evidence, List<String> story,
			String meaning, List<Fix> fixes, Optional<Acceptance> accepted) {
		this(id, check, severity, span, message, related, evidence, story, meaning, fixes, accepted, false);
	}

	@Override
	public int compareTo(Flaw other) {
		return ORDER.compare(this, other);
	}

	/** Returns the text that an acceptance of this flaw carries. */
	public String acceptanceKey() {
		return id + "@" + meaning;
	}

	/** Returns the same flaw with an acceptance. */
	public Flaw accept(Acceptance by) {
		return new Flaw(id, check, severity, span, message, related, evidence, story, meaning, fixes,
				Optional.of(by), breach);
	}
}
