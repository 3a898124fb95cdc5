package org.baywright.language.ide.grid;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.baywright.language.ide.card.Writing;
import org.baywright.language.ide.grid.RuleTable.Line;
import org.baywright.language.ide.text.LineEnds;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;
import org.baywright.model.Conclusion;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;

/** The outcomes of a rule in its text: where they stand, and what changes them without touching anything else. */
final class RuleText {

	private final Rule rule;
	private final String text;
	private final List<Word> words;
	private final List<Spot> spots = new ArrayList<>();

	/**
	 * An outcome.
	 *
	 * @param label where its label begins
	 * @param labelEnd where it ends
	 * @param begin where its conclusions begin
	 * @param end where they end
	 */
	private record Spot(int label, int labelEnd, int begin, int end, List<Said> said) {
	}

	/**
	 * @param rule the rule, as it was read from the text
	 * @param text the file in which it stands
	 */
	RuleText(Rule rule, String text) {
		this.rule = rule;
		this.text = text;
		words = Words.of(text).stream().filter(word -> word.kind() != Word.Kind.COMMENT).toList();
		rule.outcomes().forEach(outcome -> spots.add(spot(outcome)));
	}

	/** Returns what an outcome proves, as it is written. */
	List<Said> said(int outcome) {
		return spots.get(outcome).said();
	}

	// ---- read ------------------------------------------------------------------------------------------------------

	private Spot spot(Outcome outcome) {
		Map<Integer, String> faults = new HashMap<>();
		outcome.conclusions().forEach(said -> {
			if (said instanceof Conclusion.OnFault on) {
				faults.put(on.span().offset(), on.fault());
			}
		});
		Span label = outcome.span();
		int at = 0;
		while (at < words.size() && words.get(at).offset() < label.offset() + label.length()) {
			at++;
		}
		if (is(at, ":")) {
			at++;
		}
		int begin = at < words.size() ? words.get(at).offset() : text.length();
		List<Said> said = new ArrayList<>();
		while (at < words.size()) {
			Optional<VerdictKind> verdict = verdict(at);
			if (verdict.isPresent()) {
				List<Said.Name> names = new ArrayList<>();
				at = names(at + 1, faults, names);
				said.add(new Said(verdict, names, ""));
			} else if (is(at, "refers") && at + 1 < words.size()) {
				said.add(new Said(Optional.empty(), List.of(), "refers " + words.get(at + 1).text()));
				at += 2;
			} else if (is(at, "proves") && is(at + 1, "nothing")) {
				said.add(Said.nothing());
				at += 2;
			} else {
				break;
			}
		}
		int end = at > 0 && words.get(at - 1).end() > begin ? words.get(at - 1).end() : begin;
		return new Spot(label.offset(), label.offset() + label.length(), begin, end, said);
	}

	private int names(int from, Map<Integer, String> faults, List<Said.Name> to) {
		int at = from;
		while (at < words.size() && words.get(at).isWord()) {
			int begin = words.get(at).offset();
			StringBuilder written = new StringBuilder(words.get(at++).text());
			while (is(at, ".") && at + 1 < words.size() && words.get(at + 1).isWord()) {
				written.append('.').append(words.get(at + 1).text());
				at += 2;
			}
			to.add(new Said.Name(faults.getOrDefault(begin, ""), written.toString()));
			if (!is(at, ",")) {
				return at;
			}
			at++;
		}
		return at;
	}

	private boolean is(int at, String word) {
		return at < words.size() && words.get(at).is(word);
	}

	private Optional<VerdictKind> verdict(int at) {
		for (VerdictKind kind : VerdictKind.values()) {
			if (is(at, kind.verb())) {
				return Optional.of(kind);
			}
		}
		return Optional.empty();
	}

	// ---- write -----------------------------------------------------------------------------------------------------

	/** Returns changes after which the rule says what a table of it does. */
	List<TextEdit> edits(List<Line> lines) {
		List<TextEdit> edits = new ArrayList<>();
		StringBuilder first = new StringBuilder();
		Spot last = null;
		StringBuilder behind = new StringBuilder();
		for (Line line : lines) {
			if (line.origin().isPresent()) {
				insert(last, behind, first, edits);
				last = spots.get(line.origin().get());
				changed(line, last, edits);
			} else if (!line.open() || line.saysSomething()) {
				Spot beside = last == null ? spots.isEmpty() ? null : spots.get(0) : last;
				(last == null ? first : behind).append(gap(beside, last == null)).append(written(line, beside)).append(last == null ? gap(beside, false) : "");
			}
		}
		insert(last, behind, first, edits);
		return edits.stream().sorted().toList();
	}

	private void insert(Spot last, StringBuilder behind, StringBuilder first, List<TextEdit> edits) {
		if (last == null) {
			return;
		}
		if (first.length() > 0) {
			put(last.label(), first.toString(), true, edits);
			first.setLength(0);
		}
		if (behind.length() > 0) {
			put(isLastInLine(last) ? Words.endOfLine(text, last.end()) : last.end(), behind.toString(), false, edits);
			behind.setLength(0);
		}
	}

	/** What is added twice at one place is one change, as the order of changes at one place is nobody's choice. */
	private static void put(int at, String added, boolean first, List<TextEdit> edits) {
		String all = added;
		for (TextEdit edit : List.copyOf(edits)) {
			if (edit.offset() == at && edit.length() == 0) {
				edits.remove(edit);
				all = first ? all + edit.text() : edit.text() + all;
			}
		}
		edits.add(TextEdit.insert(at, all));
	}

	private void changed(Line line, Spot spot, List<TextEdit> edits) {
		String label = rule.outcomes().get(line.origin().get()).label();
		if (!line.label().equals(label)) {
			edits.addAll(Writing.changes(text, spot.label(), spot.labelEnd() - spot.label(), line.label()));
		}
		if (!line.said().equals(spot.said())) {
			edits.addAll(Writing.changes(text, spot.begin(), spot.end() - spot.begin(), Said.text(line.said())));
		}
	}

	private boolean isLastInLine(Spot spot) {
		int endOfLine = Words.endOfLine(text, spot.end());
		return words.stream().noneMatch(word -> word.offset() >= spot.end() && word.offset() < endOfLine);
	}

	private String gap(Spot beside, boolean first) {
		if (first) {
			return "";
		}
		boolean ownLine = Words.isFirstInLine(text, beside.label()) && isLastInLine(beside);
		return ownLine ? LineEnds.of(text) + Words.indent(text, beside.label()) : "  ";
	}

	/** The colons of neighbouring lines stand below each other if they do so already. */
	private String written(Line line, Spot beside) {
		int colon = text.indexOf(':', beside.labelEnd());
		int width = colon < 0 || colon > beside.begin() ? 0 : colon - beside.label() - 1;
		String label = line.label() + " ".repeat(Math.max(0, width - line.label().length()));
		return label + " : " + Said.text(line.said());
	}
}
