package org.baywright.language.ide.names;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Acceptance;
import org.baywright.model.Remark;
import org.baywright.model.Review;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;

/**
 * Lets reviews and acceptances follow a change of names. Both are tied to a meaning, of which names are a part; but another
 * name for the same thing is no reason to look at it again.
 */
final class Followers {

	private final RuleProject project;
	private final SortedMap<String, List<TextEdit>> names;
	private final Pattern name;
	private final String newName;
	private final SortedMap<String, List<TextEdit>> all = new TreeMap<>();

	private Followers(RuleProject project, SortedMap<String, List<TextEdit>> names, String oldName, String newName) {
		this.project = project;
		this.names = names;
		this.newName = newName;
		name = Pattern.compile("\\b" + Pattern.quote(oldName) + "\\b", Pattern.UNICODE_CHARACTER_CLASS);
		names.forEach((file, edits) -> all.put(file, new ArrayList<>(edits)));
	}

	/**
	 * Adds to the changes of names what keeps fresh what is fresh. The project is afterwards as it was. Where something is
	 * accepted this makes all checks; where the text has errors they would not find all, and acceptances stay as they are.
	 *
	 * @param names the changes of names, by file and place
	 */
	static SortedMap<String, List<TextEdit>> follow(RuleProject project, SortedMap<String, List<TextEdit>> names, String oldName,
			String newName) {
		Snapshot snapshot = project.snapshot();
		RuleBase before = snapshot.rules();
		boolean accepted = !before.acceptances().isEmpty()
				&& snapshot.problems().stream().noneMatch(problem -> problem.severity() == Severity.ERROR);
		boolean reviewed = before.reviews().stream().anyMatch(review -> isFresh(before, review.rule(), review.meaning()))
				|| before.remarks().stream().anyMatch(remark -> isFresh(before, remark));
		if (!reviewed && !accepted) {
			return names;
		}
		Followers followers = new Followers(project, names, oldName, newName);
		RuleBase after = followers.tried(names);
		followers.reviews(before, after);
		if (accepted) {
			// an objection is found only while its review is fresh
			followers.acceptances(before, followers.all.equals(names) ? after : followers.tried(followers.all));
		}
		followers.all.values().forEach(list -> list.sort(null));
		return followers.all;
	}

	private RuleBase tried(SortedMap<String, List<TextEdit>> edits) {
		Map<String, String> texts = new TreeMap<>();
		edits.keySet().forEach(file -> texts.put(file, project.source(file).orElseThrow().text()));
		try {
			texts.forEach((file, text) -> project.update(file, Edits.apply(text, edits.get(file))));
			return project.snapshot().rules();
		} finally {
			texts.forEach(project::update);
		}
	}

	// ---- reviews -------------------------------------------------------------------------------------------------

	private static boolean isFresh(RuleBase base, String rule, String meaning) {
		return base.meaning(rule).filter(meaning::equals).isPresent();
	}

	private static boolean isFresh(RuleBase base, Remark remark) {
		return remark.rule().filter(rule -> isFresh(base, rule, remark.meaning())).isPresent();
	}

	private void reviews(RuleBase before, RuleBase after) {
		for (int i = 0; i < before.reviews().size() && before.reviews().size() == after.reviews().size(); i++) {
			Review old = before.reviews().get(i);
			Review now = after.reviews().get(i);
			if (isFresh(before, old.rule(), old.meaning()) && !isFresh(after, now.rule(), now.meaning())) {
				after.meaning(now.rule()).ifPresent(meaning -> write(old.span(), old.meaning(), meaning));
			}
		}
		for (int i = 0; i < before.remarks().size() && before.remarks().size() == after.remarks().size(); i++) {
			Remark old = before.remarks().get(i);
			Remark now = after.remarks().get(i);
			if (isFresh(before, old) && !isFresh(after, now)) {
				now.rule().flatMap(after::meaning).ifPresent(meaning -> write(old.span(), old.meaning(), meaning));
			}
		}
	}

	// ---- acceptances ---------------------------------------------------------------------------------------------

	private void acceptances(RuleBase before, RuleBase after) {
		Analysis analysis = new Analysis();
		List<Flaw> old = analysis.check(before, Listener.NONE).flaws();
		List<Flaw> now = analysis.check(after, Listener.NONE).flaws();
		Set<String> kept = now.stream().map(Flaw::acceptanceKey).collect(Collectors.toCollection(HashSet::new));
		for (Acceptance acceptance : before.acceptances()) {
			old.stream().filter(flaw -> flaw.acceptanceKey().equals(acceptance.flaw())).findFirst()
					.filter(flaw -> !kept.contains(flaw.acceptanceKey()))
					.flatMap(flaw -> same(flaw, old, now))
					.ifPresent(flaw -> write(acceptance.span(), acceptance.flaw(), flaw.acceptanceKey()));
		}
	}

	/** Returns what a flaw has become: the only one of its kind at its place, or of several the one that says the same. */
	private Optional<Flaw> same(Flaw flaw, List<Flaw> old, List<Flaw> now) {
		List<Flaw> were = alike(flaw.check(), flaw.span().file(), flaw.span().offset(), old);
		List<Flaw> are = alike(flaw.check(), flaw.span().file(), moved(flaw.span()), now);
		List<Flaw> same = were.size() == 1 ? are : are.stream().filter(each -> said(each).equals(renamed(said(flaw)))).toList();
		return same.size() == 1 ? Optional.of(same.get(0)) : Optional.empty();
	}

	private static String said(Flaw flaw) {
		return flaw.message() + "\n" + String.join("\n", flaw.story());
	}

	private String renamed(String text) {
		return name.matcher(text).replaceAll(Matcher.quoteReplacement(newName));
	}

	private static List<Flaw> alike(String check, String file, int offset, List<Flaw> flaws) {
		return flaws.stream().filter(each -> each.check().equals(check) && each.span().file().equals(file)
				&& each.span().offset() == offset).toList();
	}

	private int moved(Span span) {
		return span.offset() + names.getOrDefault(span.file(), List.of()).stream().filter(edit -> edit.offset() < span.offset())
				.mapToInt(edit -> edit.text().length() - edit.length()).sum();
	}

	private void write(Span within, String old, String now) {
		if (within.isElsewhere()) {
			return;
		}
		String text = project.source(within.file()).orElseThrow().text();
		int at = text.lastIndexOf('"' + old + '"', within.offset() + within.length());
		if (at >= within.offset()) {
			all.computeIfAbsent(within.file(), none -> new ArrayList<>()).add(new TextEdit(at + 1, old.length(), now));
		}
	}
}
