package org.baywright.language.ide.names;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.Meaning;
import org.baywright.model.Review;
import org.baywright.model.RuleBase;

/**
 * Lets reviews follow a change of names. A review is tied to its rule's meaning, of which names are a part; but another
 * name for the same thing is no reason to look at the rule again.
 */
final class Reviews {

	private Reviews() {
	}

	/** Adds to the changes of names what keeps those reviews fresh that are. The project is afterwards as it was. */
	static SortedMap<String, List<TextEdit>> follow(RuleProject project, SortedMap<String, List<TextEdit>> edits) {
		RuleBase before = project.snapshot().rules();
		if (before.reviews().stream().noneMatch(review -> isFresh(before, review))) {
			return edits;
		}
		RuleBase after = tried(project, edits);
		SortedMap<String, List<TextEdit>> all = new TreeMap<>(edits);
		for (int i = 0; i < before.reviews().size() && before.reviews().size() == after.reviews().size(); i++) {
			Review old = before.reviews().get(i);
			Review now = after.reviews().get(i);
			if (isFresh(before, old) && !isFresh(after, now)) {
				after.rule(now.rule()).ifPresent(rule -> write(project, old, Meaning.fingerprint(rule), all));
			}
		}
		all.values().forEach(list -> list.sort(null));
		return all;
	}

	private static boolean isFresh(RuleBase base, Review review) {
		return base.rule(review.rule()).filter(rule -> Meaning.fingerprint(rule).equals(review.meaning())).isPresent();
	}

	private static RuleBase tried(RuleProject project, SortedMap<String, List<TextEdit>> edits) {
		Map<String, String> texts = new TreeMap<>();
		edits.keySet().forEach(file -> texts.put(file, project.source(file).orElseThrow().text()));
		try {
			texts.forEach((file, text) -> project.update(file, Edits.apply(text, edits.get(file))));
			return project.snapshot().rules();
		} finally {
			texts.forEach(project::update);
		}
	}

	private static void write(RuleProject project, Review review, String meaning, SortedMap<String, List<TextEdit>> edits) {
		String text = project.source(review.span().file()).orElseThrow().text();
		int end = review.span().offset() + review.span().length();
		int at = text.lastIndexOf('"' + review.meaning() + '"', end);
		if (at >= review.span().offset()) {
			edits.computeIfAbsent(review.span().file(), none -> new ArrayList<>())
					.add(new TextEdit(at + 1, review.meaning().length(), meaning));
		}
	}
}
