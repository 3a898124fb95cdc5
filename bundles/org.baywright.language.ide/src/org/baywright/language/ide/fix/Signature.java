package org.baywright.language.ide.fix;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

import org.baywright.model.Written;

/**
 * Who stands for what a fix writes.
 *
 * @param author who writes, or the empty text where nobody said so
 * @param today the date
 */
public record Signature(String author, LocalDate today) {

	private static final Pattern BY = Pattern.compile("\\bby (\"[^\"\n]+\") on ");

	/** Returns the clause that signs a rule in a text, if it is known who writes: by the editor, or as all of the text is by one. */
	Optional<String> clause(String text) {
		List<String> authors = BY.matcher(text).results().map(by -> by.group(1)).distinct().toList();
		if (!author.isBlank()) {
			return Optional.of(clauseOf(Written.text(author)));
		}
		return authors.size() == 1 ? Optional.of(clauseOf(authors.get(0))) : Optional.empty();
	}

	/** Returns the clause of whoever uses the editor, or one with a place for a name. */
	String clause() {
		return clauseOf(Written.text(author));
	}

	/** Returns the clause with an author, or with a place for one. */
	String clauseOf(String quoted) {
		return "by " + quoted + " on " + today;
	}
}
