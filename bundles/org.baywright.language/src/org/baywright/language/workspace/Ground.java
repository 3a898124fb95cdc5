package org.baywright.language.workspace;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;

/**
 * What one {@code builds_on} of a project leads to.
 *
 * @param written the path as it is written
 * @param taken the texts after {@code meaning}: the fingerprint that was taken over, and behind it those of the elements
 * @param span where the path is written
 * @param element where all of it is written
 * @param rest the place behind the path, with the meaning that is written there
 * @param found what is there
 */
record Ground(String written, List<String> taken, Span span, Span element, Span rest, Found found) {

	/**
	 * What a path leads to.
	 *
	 * @param path the folder or the rule pack; nothing if the text is no path that can be followed
	 * @param project what was read there; nothing if there is none
	 * @param wrong what keeps it from being read or used
	 */
	record Found(Optional<Path> path, Optional<RuleProject> project, Optional<Wrong> wrong) {

		static Found wrong(Optional<Path> path, ProblemKind kind, String message, String advice) {
			return new Found(path, Optional.empty(), Optional.of(new Wrong(kind, message, advice)));
		}
	}

	/** Why something cannot be built on. */
	record Wrong(ProblemKind kind, String message, String advice) {
	}
}
