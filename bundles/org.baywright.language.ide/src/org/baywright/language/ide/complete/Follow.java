package org.baywright.language.ide.complete;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.baywright.language.ide.text.Word;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.EnumLiteralDeclaration;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.TerminalRule;

/**
 * Walks the grammar along the words of one element, in all ways at once, and knows what may come next. A word that does
 * not fit is bridged: by one word that is missing before it, else by ending what is being read, else by passing over it.
 * So what is wrong further up does not hide what fits here.
 */
final class Follow {

	/**
	 * A word that may come next.
	 *
	 * @param leaf the keyword, or the call of a terminal rule
	 * @param frame the rules being read
	 */
	record Place(AbstractElement leaf, Frame frame) {
	}

	private Map<Place, Trail> expected = new LinkedHashMap<>();
	private boolean complete;
	private Trail trail;

	/** Begins to read a rule of the grammar. */
	Follow(AbstractRule rule) {
		first(rule.getAlternatives(), new Frame(rule, null, null), expected, null);
	}

	/** Returns what may come next, each with what was read on the way there. */
	Map<Place, Trail> expected() {
		return expected;
	}

	/** Returns whether the rule may end here. */
	boolean isComplete() {
		return complete;
	}

	/** Returns what was read. */
	Trail trail() {
		return trail;
	}

	/** Reads words up to one that ends behind an offset. */
	void read(List<Word> words, int offset) {
		for (Word word : words) {
			if (word.end() > offset) {
				return;
			}
			if (word.kind() != Word.Kind.COMMENT) {
				read(word);
			}
		}
	}

	private void read(Word word) {
		boolean done = step(word, expected) || step(word, behindOneMissing()) || step(word, behindEnd());
		if (done && !expected.isEmpty()) {
			trail = expected.values().iterator().next();
		}
	}

	private boolean step(Word word, Map<Place, Trail> from) {
		Map<Place, Trail> next = new LinkedHashMap<>();
		boolean fits = false;
		boolean ends = false;
		Trail last = trail;
		for (Map.Entry<Place, Trail> entry : from.entrySet()) {
			Place place = entry.getKey();
			if (fits(place.leaf(), word)) {
				Trail read = new Trail(entry.getValue(), Frame.spot(place.leaf(), place.frame()), word);
				fits = true;
				last = read;
				ends |= next(place.leaf(), place.frame(), next, read);
			}
		}
		if (fits) {
			expected = next;
			complete = ends;
			trail = last;
		}
		return fits;
	}

	private Map<Place, Trail> behindOneMissing() {
		Map<Place, Trail> behind = new LinkedHashMap<>();
		expected.forEach((place, read) -> next(place.leaf(), place.frame(), behind, read));
		return behind;
	}

	private Map<Place, Trail> behindEnd() {
		Map<Place, Trail> behind = new LinkedHashMap<>();
		expected.forEach((place, read) -> {
			for (Frame frame = place.frame(); frame != null; frame = frame.parent()) {
				loops(place.leaf(), frame, place.frame() == frame, behind, read);
				if (frame.call() != null) {
					next(frame.call(), frame.parent(), behind, read);
				}
			}
		});
		return behind;
	}

	/** What is being repeated around a place may begin again. */
	private static void loops(AbstractElement leaf, Frame frame, boolean own, Map<Place, Trail> out, Trail read) {
		if (own) {
			for (EObject at = leaf; at instanceof AbstractElement element; at = at.eContainer()) {
				if (GrammarUtil.isMultipleCardinality(element)) {
					next(element, frame, out, read);
				}
			}
		}
	}

	private static boolean fits(AbstractElement leaf, Word word) {
		if (leaf instanceof Keyword keyword) {
			return word.kind() == Word.Kind.KEYWORD && keyword.getValue().equals(word.text());
		}
		String rule = ((RuleCall) leaf).getRule().getName();
		return switch (word.kind()) {
		case NAME -> rule.equals("ID");
		case NUMBER -> rule.equals("NUMBER");
		case STRING -> rule.equals("STRING");
		default -> false;
		};
	}

	/** Adds the words with which an element can begin; returns whether it can be empty. */
	private static boolean first(AbstractElement element, Frame frame, Map<Place, Trail> out, Trail read) {
		boolean empty = GrammarUtil.isOptionalCardinality(element);
		if (element instanceof Keyword) {
			out.putIfAbsent(new Place(element, frame), read);
		} else if (element instanceof RuleCall call) {
			if (call.getRule() instanceof TerminalRule) {
				out.putIfAbsent(new Place(element, frame), read);
			} else {
				empty |= first(call.getRule().getAlternatives(), new Frame(call.getRule(), call, frame), out, read);
			}
		} else if (element instanceof Assignment assignment) {
			empty |= first(assignment.getTerminal(), frame, out, read);
		} else if (element instanceof CrossReference reference) {
			empty |= first(reference.getTerminal(), frame, out, read);
		} else if (element instanceof EnumLiteralDeclaration literal) {
			empty |= first(literal.getLiteral(), frame, out, read);
		} else if (element instanceof Alternatives alternatives) {
			for (AbstractElement choice : alternatives.getElements()) {
				empty |= first(choice, frame, out, read);
			}
		} else if (element instanceof Group group) {
			empty |= rest(group.getElements(), 0, frame, out, read);
		} else if (element instanceof Action) {
			empty = true;
		}
		return empty;
	}

	private static boolean rest(List<AbstractElement> parts, int from, Frame frame, Map<Place, Trail> out, Trail read) {
		for (int i = from; i < parts.size(); i++) {
			if (!first(parts.get(i), frame, out, read)) {
				return false;
			}
		}
		return true;
	}

	/** Adds the words that can follow an element; returns whether all may end behind it. */
	private static boolean next(AbstractElement element, Frame frame, Map<Place, Trail> out, Trail read) {
		if (GrammarUtil.isMultipleCardinality(element)) {
			first(element, frame, out, read);
		}
		if (element.eContainer() instanceof Group group
				&& !rest(group.getElements(), group.getElements().indexOf(element) + 1, frame, out, read)) {
			return false;
		}
		if (element.eContainer() instanceof AbstractElement outer) {
			return next(outer, frame, out, read);
		}
		return frame.call() == null || next(frame.call(), frame.parent(), out, read);
	}
}
