package org.baywright.language.scoping;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.naming.QualifiedName;
import org.eclipse.xtext.resource.EObjectDescription;
import org.eclipse.xtext.resource.IEObjectDescription;
import org.eclipse.xtext.scoping.IScope;

/** A scope that looks names up by hash and lists all of them only when asked to. */
final class SymbolScope implements IScope {

	private final Function<String, List<? extends EObject>> byName;
	private final Supplier<List<? extends EObject>> all;

	/**
	 * @param byName finds what a name means
	 * @param all lists everything, for content assist
	 */
	SymbolScope(Function<String, List<? extends EObject>> byName, Supplier<List<? extends EObject>> all) {
		this.byName = byName;
		this.all = all;
	}

	@Override
	public IEObjectDescription getSingleElement(QualifiedName name) {
		List<? extends EObject> found = byName.apply(name.toString());
		return found.isEmpty() ? null : EObjectDescription.create(name, found.get(0));
	}

	@Override
	public Iterable<IEObjectDescription> getElements(QualifiedName name) {
		List<IEObjectDescription> out = new ArrayList<>();
		byName.apply(name.toString()).forEach(element -> out.add(EObjectDescription.create(name, element)));
		return out;
	}

	@Override
	public IEObjectDescription getSingleElement(EObject object) {
		for (IEObjectDescription description : getElements(object)) {
			return description;
		}
		return null;
	}

	@Override
	public Iterable<IEObjectDescription> getElements(EObject object) {
		List<IEObjectDescription> out = new ArrayList<>();
		String reference = BayNames.reference(object);
		if (reference != null) {
			for (EObject element : byName.apply(reference)) {
				if (element == object || EcoreUtil.getURI(element).equals(EcoreUtil.getURI(object))) {
					out.add(description(element, reference));
				}
			}
		}
		return out;
	}

	@Override
	public Iterable<IEObjectDescription> getAllElements() {
		List<IEObjectDescription> out = new ArrayList<>();
		for (EObject element : all.get()) {
			String reference = BayNames.reference(element);
			if (reference != null) {
				out.add(description(element, reference));
			}
		}
		return out;
	}

	private static IEObjectDescription description(EObject element, String reference) {
		return EObjectDescription.create(QualifiedName.create(reference.split("\\.")), element);
	}
}
