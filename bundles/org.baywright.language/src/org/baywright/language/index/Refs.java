package org.baywright.language.index;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.conversion.Texts;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** Reads the names written at references, without resolving them. */
public final class Refs {

	private Refs() {
	}

	/**
	 * A name as written.
	 *
	 * @param name the name
	 * @param node where it is written
	 */
	public record Ref(String name, INode node) {
	}

	/** Returns the names written at a reference, in the order of the text. */
	public static List<Ref> all(EObject owner, EReference reference) {
		List<INode> nodes = NodeModelUtils.findNodesForFeature(owner, reference);
		List<Ref> refs = new ArrayList<>(nodes.size());
		for (INode node : nodes) {
			String name = text(node);
			if (!name.isEmpty()) {
				refs.add(new Ref(name, node));
			}
		}
		return refs;
	}

	/** Returns the names written at a reference, in the order of the text. */
	public static List<String> names(EObject owner, EReference reference) {
		return all(owner, reference).stream().map(Ref::name).toList();
	}

	/** Returns the name written at a reference that has at most one. */
	public static Optional<Ref> one(EObject owner, EReference reference) {
		List<Ref> refs = all(owner, reference);
		return refs.isEmpty() ? Optional.empty() : Optional.of(refs.get(0));
	}

	/** Returns the name written at a reference that has at most one. */
	public static Optional<String> first(EObject owner, EReference reference) {
		return one(owner, reference).map(Ref::name);
	}

	/** Returns the text of a node without blanks and comments, as a plain name. */
	public static String text(INode node) {
		StringBuilder text = new StringBuilder();
		for (ILeafNode leaf : node.getLeafNodes()) {
			if (!leaf.isHidden()) {
				text.append(leaf.getText());
			}
		}
		return Texts.plainName(text.toString());
	}
}
