package org.baywright.language.translate;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.baywright.language.bay.Date;
import org.baywright.language.bay.Picture;
import org.baywright.language.bay.Preparation;
import org.baywright.language.bay.Reach;
import org.baywright.language.text.Advice;
import org.baywright.language.text.DateText;
import org.baywright.language.vocabulary.Clause;
import org.baywright.language.vocabulary.Vocabulary;
import org.baywright.model.ProblemKind;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** What all elements with clauses in braces have in common. */
final class Clauses {

	private final Context context;

	Clauses(Context context) {
		this.context = context;
	}

	/** Reports each clause that may be given once and is given again. */
	void once(EObject element) {
		Vocabulary.of(element.eClass().getName()).stream().flatMap(own -> own.clauses().stream()).filter(Clause::isOnce)
				.forEach(clause -> {
					String word = clause.words().get(0);
					List<INode> given = clause.part().isEmpty() ? keywords(element, word) : parts(element, clause.part(), word);
					if (given.size() > 1) {
						context.report.error(ProblemKind.CLAUSE_TWICE, context.source.span(given.get(1)), "`" + word + "` is given twice.",
								clause.adviceIfTwice());
					}
				});
	}

	/** Returns the first words of the parts of an element that a rule of the grammar describes. */
	private static List<INode> parts(EObject element, String rule, String word) {
		return element.eContents().stream().filter(part -> part.eClass().getName().equals(rule)).map(part -> keyword(part, word))
				.filter(Objects::nonNull).toList();
	}

	/** Reads a date; reports one that no calendar has. */
	Optional<LocalDate> date(Date date) {
		if (date == null || date.getYear() == null || date.getMonth() == null || date.getDay() == null) {
			return Optional.empty();
		}
		try {
			return Optional.of(LocalDate.of(Integer.parseInt(date.getYear()), Integer.parseInt(date.getMonth()),
					Integer.parseInt(date.getDay())));
		} catch (DateTimeException | NumberFormatException e) {
			String written = context.source.written(date);
			context.report.tell(ProblemKind.WRONG_DATE, context.source.span(date), "There is no date " + written + ".",
					DateText.PATTERN.matcher(written).matches() ? DateText.advice(context.source.span(date), written)
							: Advice.words("Write year, month and day as numbers, such as 2026-03-02."));
			return Optional.empty();
		}
	}

	/** Returns the first keyword of an element with this text, itself and not in a part of it; null if there is none. */
	static INode keyword(EObject element, String keyword) {
		return keywords(element, keyword).stream().findFirst().orElse(null);
	}

	/**
	 * Returns each clause of an element that begins with one of some words, in the order of the text: its first and its last
	 * node.
	 */
	static List<List<INode>> beginning(EObject element, Collection<String> words) {
		Set<String> all = Vocabulary.of(element.eClass().getName()).stream().flatMap(own -> own.clauses().stream())
				.flatMap(clause -> clause.words().stream()).collect(Collectors.toSet());
		List<List<INode>> found = new ArrayList<>();
		boolean inside = false;
		for (INode child : NodeModelUtils.getNode(element).getChildren()) {
			if (child instanceof ILeafNode leaf && leaf.isHidden()) {
				continue;
			}
			String word = word(child);
			if (all.contains(word) || word.equals("}")) {
				inside = words.contains(word);
				if (inside) {
					found.add(new ArrayList<>(List.of(child, child)));
				}
			} else if (inside) {
				found.get(found.size() - 1).set(1, child);
			}
		}
		return found;
	}

	/** Returns the keyword that a node is, or with which a part of an element begins; the empty text for all else. */
	private static String word(INode node) {
		INode first = node;
		if (node instanceof ICompositeNode && node.hasDirectSemanticElement()
				&& (node.getSemanticElement() instanceof Preparation || node.getSemanticElement() instanceof Reach || node.getSemanticElement() instanceof Picture)) {
			for (ILeafNode leaf : node.getLeafNodes()) {
				if (!leaf.isHidden()) {
					first = leaf;
					break;
				}
			}
		}
		return first instanceof ILeafNode && first.getGrammarElement() instanceof Keyword ? first.getText() : "";
	}

	private static List<INode> keywords(EObject element, String keyword) {
		List<INode> found = new ArrayList<>();
		ICompositeNode node = NodeModelUtils.getNode(element);
		if (node != null) {
			for (INode child : node.getChildren()) {
				if (child instanceof ILeafNode leaf && !leaf.isHidden() && leaf.getText().equals(keyword)) {
					found.add(leaf);
				}
			}
		}
		return found;
	}
}
