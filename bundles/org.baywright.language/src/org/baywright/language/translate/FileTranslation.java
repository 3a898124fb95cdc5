package org.baywright.language.translate;

import java.util.List;
import java.util.Set;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;

/**
 * What one file says.
 *
 * @param part the elements of the file that are whole, by themselves; they may speak of those of other files
 * @param problems what is wrong, in the order of the text
 * @param dropped elements that are not in {@code part} because of an error, each as {@code kind name}
 * @param used what was looked up; if any of it changes, the file must be translated again
 */
public record FileTranslation(RuleBase.Builder part, List<Problem> problems, List<String> dropped, Set<Key> used) {

	public FileTranslation {
		problems = List.copyOf(problems);
		dropped = List.copyOf(dropped);
		used = Set.copyOf(used);
	}
}
