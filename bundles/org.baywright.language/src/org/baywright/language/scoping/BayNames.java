package org.baywright.language.scoping;

import org.baywright.language.bay.Case;
import org.baywright.language.bay.Fault;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.bay.Part;
import org.baywright.language.bay.Trait;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.naming.IQualifiedNameProvider;
import org.eclipse.xtext.naming.QualifiedName;

/**
 * Names of elements: their own name, {@code part.fault} for faults, and the owner's name before a trait or a listed
 * value, which are unique in their owner only.
 */
public class BayNames extends IQualifiedNameProvider.AbstractImpl {

	@Override
	public QualifiedName getFullyQualifiedName(EObject object) {
		String name = plainName(object);
		if (name == null || name.isEmpty() || object instanceof Case) {
			return null;
		}
		QualifiedName own = QualifiedName.create(name);
		if (object instanceof Fault || object instanceof Trait || object instanceof NamedValue) {
			QualifiedName owner = object.eContainer() == null ? null : getFullyQualifiedName(object.eContainer());
			return owner == null ? own : owner.append(own);
		}
		return own;
	}

	/** Returns the name by which rules refer to the element: {@code part.fault} for a fault, its own name otherwise. */
	public static String reference(EObject object) {
		String name = plainName(object);
		if (name != null && object instanceof Fault && object.eContainer() instanceof Part part) {
			return part.getName() + "." + name;
		}
		return name;
	}

	private static String plainName(EObject object) {
		EStructuralFeature feature = object.eClass().getEStructuralFeature("name");
		return feature != null && object.eGet(feature) instanceof String name ? name : null;
	}
}
