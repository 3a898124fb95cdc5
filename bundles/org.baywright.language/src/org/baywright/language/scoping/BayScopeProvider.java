package org.baywright.language.scoping;

import org.baywright.language.index.ProjectIndex;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.scoping.IScope;

/**
 * Sees nothing: names are resolved by {@link ProjectIndex} alone, and the references of a syntax tree stay unresolved.
 *
 * <p>What a name means depends here on more than where it stands: a trait on the families that a rule is for, a value on
 * the test or trait before it, and both on names that another project brings. The index answers from what is written, for
 * text that cannot be parsed too, and while one file is typed the trees of all others may be replaced; a resolved
 * reference would lead into a tree that is gone. So checks, translation, completion, hover and renaming ask the index.
 */
public class BayScopeProvider extends AbstractBayScopeProvider {

	@Override
	public IScope getScope(EObject context, EReference reference) {
		return IScope.NULLSCOPE;
	}
}
