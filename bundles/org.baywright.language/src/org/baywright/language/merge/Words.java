package org.baywright.language.merge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.baywright.language.bay.RuleFile;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/**
 * The words of one element, sorted by whether they make its meaning.
 *
 * @param all every word, blank and comment, which make up the text
 * @param meaning those that make the meaning
 * @param said those that say more about it: title, reason, source, author and date
 * @param comments the comments
 */
record Words(List<String> all, List<String> meaning, List<String> said, List<String> comments) {

	/** What may be written about an element without its meaning being another. */
	private static final Set<String> BESIDE = Set.of("title", "because", "source", "authors", "dates", "note", "reason");

	/** Returns the words of a text that is one element; nothing if it is anything else. */
	static Optional<Words> of(String body) {
		Optional<RuleFile> content = Pieces.parse(body);
		if (content.isEmpty() || content.get().getElements().size() != 1) {
			return Optional.empty();
		}
		INode element = NodeModelUtils.findActualNodeFor(content.get().getElements().get(0));
		Words words = new Words(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
		for (ILeafNode leaf : element.getRootNode().getLeafNodes()) {
			if (leaf.getLength() > 0) {
				words.add(leaf, element);
			}
		}
		return Optional.of(words);
	}

	private void add(ILeafNode leaf, INode element) {
		String text = leaf.getText();
		all.add(text);
		if (!leaf.isHidden()) {
			(isBeside(leaf, element) ? said : meaning).add(text);
		} else if (!text.isBlank()) {
			comments.add(text.strip());
		}
	}

	private static boolean isBeside(INode leaf, INode element) {
		for (INode node = leaf; node != null && node != element; node = node.getParent()) {
			if (node.getGrammarElement() instanceof Keyword word && introduces(word)) {
				return true;
			}
			Assignment assigned = node.getGrammarElement() == null ? null : GrammarUtil.containingAssignment(node.getGrammarElement());
			if (assigned != null && BESIDE.contains(assigned.getFeature())) {
				return true;
			}
		}
		return false;
	}

	/** Returns whether a keyword only leads to what stands beside the meaning. */
	private static boolean introduces(Keyword word) {
		EObject group = word.eContainer();
		List<Assignment> assigned = group instanceof Group ? EcoreUtil2.eAllOfType(group, Assignment.class) : List.of();
		return !assigned.isEmpty() && assigned.stream().allMatch(one -> BESIDE.contains(one.getFeature()));
	}

	/** Returns whether both say the same, whatever they look like. */
	boolean sayTheSame(Words other) {
		return isLike(other) && comments.equals(other.comments);
	}

	/** Returns whether both say the same but for comments. */
	boolean isLike(Words other) {
		return meaning.equals(other.meaning) && said.equals(other.said);
	}
}
