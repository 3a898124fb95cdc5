package org.baywright.language.ide.grid;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.words.Words;

/**
 * What a paste into the grid comes to.
 *
 * @param snapshot the texts that the changes are in terms of
 * @param changes what will be changed, a cell each
 * @param troubles what is not understood or cannot be changed, with its row and column and what to do
 * @param tables the rules that change
 * @param added by test, the tables of rules that are written anew, as no rule runs the test yet
 * @param files by test, the file of the new rule
 */
public record Pasted(Snapshot snapshot, List<String> changes, List<String> troubles, List<RuleTable> tables, Map<String, RuleTable> added,
		Map<String, String> files) {

	public Pasted {
		changes = List.copyOf(changes);
		troubles = List.copyOf(troubles);
		tables = List.copyOf(tables);
		added = new LinkedHashMap<>(added);
		files = new LinkedHashMap<>(files);
	}

	/**
	 * Returns the rules that are written anew, each about its test.
	 *
	 * @param families the vehicle families they speak of; none for every family
	 * @param sign the sign they are given; the empty text for none
	 * @param because why, in the author's words
	 * @param author who writes them
	 * @param date when
	 */
	public List<NewRule> rules(List<String> families, String sign, String because, String author, LocalDate date) {
		Words words = new Words(snapshot.rules());
		List<NewRule> rules = new ArrayList<>();
		added.forEach((test, table) -> rules.add(new NewRule(words.test(test), families, sign, test, table, because, author, date, files.get(test))));
		return rules;
	}

	/** Returns what is still wrong with new rules, in one sentence. */
	public static Optional<String> problem(List<NewRule> rules) {
		return rules.stream().map(NewRule::problem).flatMap(Optional::stream).findFirst();
	}

	/** Returns all that is to be written; reads texts, so not for a screen's thread. */
	public GridEdit edit(List<NewRule> rules) {
		GridChange change = new GridChange(snapshot);
		tables.forEach(change::set);
		rules.forEach(change::add);
		return change.done();
	}
}
