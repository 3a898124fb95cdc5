package org.baywright.language.ide.grid;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.Condition;
import org.baywright.model.Provenance;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.words.Names;
import org.baywright.model.write.RuleWriter;

/**
 * A rule that is about to be written.
 *
 * @param title the rule in words
 * @param families families it speaks of; none for every family
 * @param sign the sign it is given; the empty text for none
 * @param test the test it runs; the empty text for none
 * @param table what its results prove
 * @param because why, in the author's words
 * @param author who writes it
 * @param date when
 * @param file the file it is written to, relative to the project; one that is not there is made
 */
public record NewRule(String title, List<String> families, String sign, String test, RuleTable table, String because, String author,
		LocalDate date, String file) {

	public NewRule {
		families = List.copyOf(families);
	}

	/** Returns what is still wrong, in one sentence. */
	public Optional<String> problem() {
		if (Names.suggest(title).isEmpty()) {
			return Optional.of("Say in a few words what the rule is about.");
		}
		if (!table.saysSomething()) {
			return Optional.of("Say what at least one result proves.");
		}
		if (test.isEmpty() && sign.isEmpty()) {
			return Optional.of("Choose the sign that the rule is given: it runs no test.");
		}
		if (because.isBlank()) {
			return Optional.of("Say why: others have to trust the rule.");
		}
		if (author.isBlank()) {
			return Optional.of("Say who writes the rule.");
		}
		return RuleProject.isRuleFile(file) ? Optional.empty() : Optional.of("Say in which file the rule is written, such as rules.bay.");
	}

	/** Returns the rule as text, with a name that no other one has. */
	String text(RuleBase base, Collection<String> taken) {
		Scope scope = families.isEmpty() ? Scope.EVERY : new Scope(families, List.of(), Optional.empty(), Span.NONE);
		List<Condition> given = sign.isEmpty() ? List.of() : List.of(new Condition.SignIs(sign, true, Span.NONE));
		return new RuleWriter(base).text(new Rule(Names.free(Names.suggest(title), taken), title, scope, given, List.of(),
				Optional.of(test).filter(name -> !name.isEmpty()), table.outcomes(),
				new Provenance(Optional.of(author.strip()), Optional.of(date), new Source(Source.Kind.PRACTICE, ""), Optional.of(because.strip())),
				Span.NONE, Span.NONE));
	}
}
