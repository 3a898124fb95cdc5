package org.baywright.language.translate;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.baywright.language.bay.Date;
import org.baywright.language.syntax.DateText;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
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

	/** Reports a clause that may be given once and is given again. */
	void once(EObject element, EStructuralFeature feature, String word) {
		List<INode> nodes = NodeModelUtils.findNodesForFeature(element, feature);
		if (nodes.size() > 1) {
			context.report.error("clause-twice", context.source.span(nodes.get(1)), "`" + word + "` is given twice.",
					"Keep one of the two.");
		}
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
			context.report.flaw("wrong-date", context.source.span(date),
					"There is no date " + context.source.written(date) + ".",
					DateText.PATTERN.matcher(context.source.written(date)).matches() ? DateText.advice(context.source.written(date))
							: "Write year, month and day as numbers, such as 2026-03-02.");
			return Optional.empty();
		}
	}

	/** Returns the first keyword of an element with this text, itself and not in a part of it; null if there is none. */
	static INode keyword(EObject element, String keyword) {
		ICompositeNode node = NodeModelUtils.getNode(element);
		if (node != null) {
			for (INode child : node.getChildren()) {
				if (child instanceof ILeafNode leaf && !leaf.isHidden() && leaf.getText().equals(keyword)) {
					return leaf;
				}
			}
		}
		return null;
	}
}
