package org.baywright.language.ide.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.baywright.language.bay.Acceptance;
import org.baywright.language.bay.BuildsOn;
import org.baywright.language.bay.Chain;
import org.baywright.language.bay.Element;
import org.baywright.language.bay.Exclusive;
import org.baywright.language.bay.Family;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.bay.Part;
import org.baywright.language.bay.Point;
import org.baywright.language.bay.Remark;
import org.baywright.language.bay.Review;
import org.baywright.language.bay.Rule;
import org.baywright.language.bay.RuleFile;
import org.baywright.language.bay.SignOff;
import org.baywright.language.bay.State;
import org.baywright.language.bay.Test;
import org.baywright.language.bay.Trait;
import org.baywright.language.bay.Workshop;
import org.baywright.language.ide.outline.OutlineItem.Kind;
import org.baywright.language.ide.names.Values;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.index.Symbol;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.resource.XtextResource;

/** What a file or a project declares. */
public final class Outline {

	private Outline() {
	}

	/** Returns the elements of a file in the order of its text; those without a name yet are left out. */
	public static List<OutlineItem> of(XtextResource tree) {
		List<OutlineItem> items = new ArrayList<>();
		if (!tree.getContents().isEmpty() && tree.getContents().get(0) instanceof RuleFile file) {
			for (Element element : file.getElements()) {
				item(element).ifPresent(items::add);
			}
		}
		return items;
	}

	private static Optional<OutlineItem> item(EObject element) {
		ICompositeNode node = NodeModelUtils.findActualNodeFor(element);
		if (node == null) {
			return Optional.empty();
		}
		String name = element instanceof Workshop ? "workshop" : element instanceof SignOff ? "sign_off" : name(element);
		String title = text(element, "title");
		if (name.isEmpty() && title.isEmpty()) {
			return Optional.empty();
		}
		INode at = NodeModelUtils.findNodesForFeature(element, nameFeature(element)).stream().findFirst().orElse(node);
		List<OutlineItem> children = new ArrayList<>();
		for (EObject child : parts(element)) {
			item(child).ifPresent(children::add);
		}
		boolean titled = !title.isEmpty();
		return Optional.of(new OutlineItem(titled ? title : name, titled && !title.equals(name) ? name : "", kind(element), node.getOffset(),
				node.getLength(), at.getOffset(), at.getLength(), children));
	}

	private static List<EObject> parts(EObject element) {
		List<EObject> parts = new ArrayList<>();
		if (element instanceof Family family) {
			parts.addAll(family.getTraits());
		} else if (element instanceof Part part) {
			parts.addAll(part.getFaults());
		} else if (element instanceof Chain chain) {
			parts.addAll(chain.getPoints());
		} else if (element instanceof Test test) {
			parts.addAll(Values.of(test));
		} else if (element instanceof State state) {
			parts.addAll(state.getValues());
		} else if (element instanceof Trait trait) {
			parts.addAll(trait.getValues());
		}
		return parts;
	}

	private static Kind kind(EObject element) {
		return element instanceof NamedValue ? Kind.VALUE : element instanceof Point ? Kind.TEST : element instanceof Rule ? Kind.RULE
				: Kind.valueOf(element.eClass().getName().toUpperCase(Locale.ROOT));
	}

	private static EStructuralFeature nameFeature(EObject element) {
		String feature = element instanceof Point ? "test" : element instanceof Review ? "rule" : element instanceof SignOff ? "agree"
				: element instanceof Remark remark ? remark.getChange() == null ? "rule" : "change"
				: element instanceof Acceptance ? "flaw" : element instanceof BuildsOn ? "path"
						: element instanceof Exclusive ? "faults"
								: element.eClass().getEStructuralFeature("name") == null ? "title" : "name";
		return element.eClass().getEStructuralFeature(feature);
	}

	private static String name(EObject element) {
		if (element instanceof Review || element instanceof Remark remark && remark.getChange() == null || element instanceof Exclusive || element instanceof Point) {
			StringBuilder names = new StringBuilder();
			for (INode node : NodeModelUtils.findNodesForFeature(element, nameFeature(element))) {
				names.append(names.isEmpty() ? "" : ", ").append(NodeModelUtils.getTokenText(node));
			}
			return names.toString();
		}
		return text(element, nameFeature(element).getName());
	}

	private static String text(EObject element, String feature) {
		EStructuralFeature found = element.eClass().getEStructuralFeature(feature);
		return found != null && element.eGet(found) instanceof String text ? text : "";
	}

	/**
	 * Returns the names of a project that a query means, sorted by name.
	 *
	 * @param index names of the project
	 * @param query letters that occur in the name in this order, or a part of the title; the empty text means all
	 */
	public static List<FoundSymbol> symbols(ProjectIndex index, String query) {
		List<FoundSymbol> found = new ArrayList<>();
		String wanted = query.toLowerCase(Locale.ROOT);
		for (var kind : org.baywright.language.index.Kind.values()) {
			for (Symbol symbol : index.all(kind)) {
				String title = text(symbol.element(), "title");
				if (inOrder(symbol.name().toLowerCase(Locale.ROOT), wanted) || title.toLowerCase(Locale.ROOT).contains(wanted)) {
					NodeModelUtils.findNodesForFeature(symbol.element(), symbol.element().eClass().getEStructuralFeature("name"))
							.stream().findFirst().ifPresent(node -> found.add(new FoundSymbol(symbol.name(), title, kind,
									symbol.file(), node.getOffset(), node.getLength())));
				}
			}
		}
		found.sort(Comparator.comparing(FoundSymbol::name).thenComparing(FoundSymbol::kind)
				.thenComparing(FoundSymbol::file).thenComparing(FoundSymbol::offset));
		return found;
	}

	private static boolean inOrder(String name, String letters) {
		int at = 0;
		for (int i = 0; i < letters.length(); i++) {
			at = name.indexOf(letters.charAt(i), at) + 1;
			if (at == 0) {
				return false;
			}
		}
		return true;
	}
}
