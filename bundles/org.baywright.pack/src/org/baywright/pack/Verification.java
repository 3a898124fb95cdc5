package org.baywright.pack;

import java.util.List;
import java.util.Optional;

/**
 * What came out of verifying a pack.
 *
 * @param results one result for each thing that was looked at, in that order
 * @param pack the pack, if it could be read
 */
public record Verification(List<Result> results, Optional<Pack> pack) {

	public Verification {
		results = List.copyOf(results);
	}

	/** What is looked at. */
	public enum Aspect {
		/** The file is a zip archive of the right entries and no others. */
		ARCHIVE("archive"),
		/** The manifest can be read and is of a version that is known. */
		MANIFEST("manifest"),
		/** The entries are those whose hashes the manifest states. */
		FINGERPRINT("fingerprint"),
		/** The rules can be read; each part of them is there and has the right form. */
		RULES("rules"),
		/** Every name that is used is declared. */
		REFERENCES("references"),
		/** The JSON texts are canonical, byte by byte. */
		CANONICAL("canonical form"),
		/** What can be derived from the rules is what the pack says. */
		DERIVED("derived parts"),
		/** The sheet says what the rules say. */
		SHEET("sheet"),
		/** The archive is byte for byte as Baywright packs it. */
		PACKING("packing"),
		/** The checks find in the rules what the manifest says. */
		PROOFS("proofs");

		private final String title;

		Aspect(String title) {
			this.title = title;
		}

		/** Returns the aspect in a word or two. */
		public String title() {
			return title;
		}
	}

	/** How it came out. */
	public enum Outcome {
		/** It is as it should be. */
		PASSED,
		/** It is not. */
		FAILED,
		/** It could not be looked at. */
		OPEN
	}

	/**
	 * One result.
	 *
	 * @param aspect what was looked at
	 * @param outcome how it came out
	 * @param message one plain sentence
	 */
	public record Result(Aspect aspect, Outcome outcome, String message) {
	}

	/** Returns whether nothing failed. */
	public boolean isPassed() {
		return results.stream().noneMatch(result -> result.outcome() == Outcome.FAILED);
	}
}
