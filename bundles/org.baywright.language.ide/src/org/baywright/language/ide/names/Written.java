package org.baywright.language.ide.names;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.conversion.Texts;
import org.baywright.language.index.FileSymbols;
import org.baywright.language.index.Kind;
import org.baywright.language.index.Refs;
import org.baywright.language.index.ValueOwner;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/**
 * A name as it is written in one file, before anybody asked what it means: that depends on other files too.
 *
 * @param kind what it must mean; nothing if anything that a condition can speak of will do
 * @param name all of it, without {@code ^}; of a fault with its part
 * @param owner for a value, whose
 * @param offset where the part of the name stands that means the thing itself
 * @param length how long that is
 * @param declaration whether the thing is declared here
 */
record Written(Optional<Kind> kind, String name, Optional<ValueOwner> owner, int offset, int length,
		boolean declaration) {

	/** Returns all names of a file in the order of the text. */
	static List<Written> in(INode root) {
		List<Written> found = new ArrayList<>();
		if (root == null) {
			return found;
		}
		for (INode node : root.getAsTreeIterable()) {
			if (node.getGrammarElement() instanceof CrossReference reference && node.getLength() > 0) {
				reference(node, (EClass) reference.getType().getClassifier(), found);
			}
		}
		EObject content = NodeModelUtils.findActualSemanticObjectFor(root);
		if (content != null) {
			content.eAllContents().forEachRemaining(element -> declaration(element, found));
		}
		found.sort(Comparator.comparingInt(Written::offset));
		return List.copyOf(found);
	}

	private static void reference(INode node, EClass type, List<Written> found) {
		String name = Refs.text(node);
		if (type == BayPackage.Literals.NAMED_VALUE) {
			ValueOwner.at(NodeModelUtils.findActualSemanticObjectFor(node)).ifPresent(owner -> found.add(
					new Written(Optional.empty(), name, Optional.of(owner), node.getOffset(), node.getLength(), false)));
			return;
		}
		Optional<Kind> kind = Optional.ofNullable(Kind.of(type));
		List<ILeafNode> words = new ArrayList<>();
		node.getLeafNodes().forEach(leaf -> {
			if (!leaf.isHidden()) {
				words.add(leaf);
			}
		});
		int point = name.indexOf('.');
		if (point < 0 || words.size() < 3) {
			found.add(new Written(kind, name, Optional.empty(), node.getOffset(), node.getLength(), false));
			return;
		}
		// battery.flat names the part and the fault
		ILeafNode part = words.get(0);
		ILeafNode fault = words.get(words.size() - 1);
		found.add(new Written(Optional.of(Kind.PART), name.substring(0, point), Optional.empty(), part.getOffset(),
				part.getLength(), false));
		found.add(new Written(Optional.of(Kind.FAULT), name, Optional.empty(), fault.getOffset(), fault.getLength(), false));
	}

	private static void declaration(EObject element, List<Written> found) {
		boolean value = element instanceof NamedValue;
		Kind kind = Kind.of(element.eClass());
		if (!value && kind == null) {
			return;
		}
		List<INode> nodes = NodeModelUtils.findNodesForFeature(element, element.eClass().getEStructuralFeature("name"));
		if (nodes.isEmpty() || FileSymbols.reference(element) == null) {
			return;
		}
		INode node = nodes.get(0);
		if (value) {
			Kind owner = Kind.of(element.eContainer().eClass());
			String name = FileSymbols.reference(element.eContainer());
			if (owner != null && name != null) {
				found.add(new Written(Optional.empty(), FileSymbols.reference(element),
						Optional.of(new ValueOwner(Optional.of(owner), Texts.plainName(name))), node.getOffset(), node.getLength(),
						true));
			}
		} else {
			found.add(new Written(Optional.of(kind), FileSymbols.reference(element), Optional.empty(), node.getOffset(),
					node.getLength(), true));
		}
	}
}
