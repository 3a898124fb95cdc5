package org.baywright.language.scoping;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Case;
import org.baywright.language.bay.Law;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.bay.Rule;
import org.baywright.language.bay.State;
import org.baywright.language.bay.Test;
import org.baywright.language.bay.Trait;
import org.baywright.language.index.FamilyTree;
import org.baywright.language.index.IndexAdapter;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Symbol;
import org.baywright.language.index.ValueOwner;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.scoping.IScope;

/**
 * Scopes by the project's index: what is declared in any file is visible in all; a trait is that of the families at
 * hand; a value is that of its test, trait or state.
 */
public class BayScopeProvider extends AbstractBayScopeProvider {

	@Override
	public IScope getScope(EObject context, EReference reference) {
		ProjectIndex index = IndexAdapter.of(context);
		if (reference.getEReferenceType() == BayPackage.Literals.NAMED_VALUE) {
			return values(context, index);
		}
		if (reference.getEReferenceType() == BayPackage.Literals.SUBJECT) {
			return subjects(context, reference, index);
		}
		Kind kind = Kind.of(reference.getEReferenceType());
		if (kind == null) {
			return IScope.NULLSCOPE;
		}
		return new SymbolScope(name -> elements(index.get(Key.of(kind, name))), () -> elements(index.all(kind)));
	}

	private static IScope subjects(EObject context, EReference reference, ProjectIndex index) {
		List<String> families = families(context);
		return new SymbolScope(name -> elements(subject(name, families, index)), () -> {
			List<Symbol> all = new ArrayList<>();
			for (Kind kind : visible(context, reference)) {
				all.addAll(kind == Kind.TRAIT ? traits(families, index) : index.all(kind));
			}
			return elements(all);
		});
	}

	private static List<Kind> visible(EObject context, EReference reference) {
		boolean where = EcoreUtil2.getContainerOfType(context, Rule.class) != null && isUnder(context,
				BayPackage.Literals.RULE__WHERE);
		if (where || isUnder(context, BayPackage.Literals.CASE__TRAITS)) {
			return List.of(Kind.TRAIT);
		}
		List<Kind> kinds = new ArrayList<>(List.of(Kind.SIGN, Kind.TEST, Kind.CODE, Kind.MODULE));
		if (reference == BayPackage.Literals.ATOM__SUBJECT) {
			kinds.add(Kind.TRAIT);
			if (EcoreUtil2.getContainerOfType(context, Law.class) == null) {
				kinds.add(Kind.FAULT);
			}
		}
		return kinds;
	}

	private static boolean isUnder(EObject context, EReference containment) {
		for (EObject element = context; element != null; element = element.eContainer()) {
			if (element.eContainmentFeature() == containment) {
				return true;
			}
		}
		return false;
	}

	/** What a name means to a condition; for a trait, its declarations in the families at hand. */
	private static List<Symbol> subject(String name, List<String> families, ProjectIndex index) {
		List<Symbol> found = index.get(Key.subject(name));
		if (found.isEmpty() || found.get(0).kind() != Kind.TRAIT) {
			return found;
		}
		List<Symbol> near = new FamilyTree(index::get).view(families, name).declarations();
		return near.isEmpty() ? found : near;
	}

	private static List<Symbol> traits(List<String> families, ProjectIndex index) {
		if (families.isEmpty()) {
			return index.all(Kind.TRAIT);
		}
		FamilyTree tree = new FamilyTree(index::get);
		return tree.withDescendants(families).stream().flatMap(family -> tree.traits(family).stream()).distinct().toList();
	}

	/** The families that a rule, law or job is about; empty for any. */
	private static List<String> families(EObject context) {
		Rule rule = EcoreUtil2.getContainerOfType(context, Rule.class);
		if (rule != null) {
			return Refs.names(rule, BayPackage.Literals.RULE__FAMILIES);
		}
		Law law = EcoreUtil2.getContainerOfType(context, Law.class);
		if (law != null) {
			return Refs.names(law, BayPackage.Literals.LAW__FAMILIES);
		}
		Case job = EcoreUtil2.getContainerOfType(context, Case.class);
		return job == null ? List.of() : Refs.names(job, BayPackage.Literals.CASE__FAMILY);
	}

	private static IScope values(EObject context, ProjectIndex index) {
		List<NamedValue> values = new ArrayList<>();
		for (Symbol owner : valueOwners(context, index)) {
			if (owner.element() instanceof State state) {
				values.addAll(state.getValues());
			} else if (owner.element() instanceof Test test) {
				values.addAll(test.getResults());
			} else if (owner.element() instanceof Trait trait) {
				values.addAll(trait.getValues());
			}
		}
		return new SymbolScope(name -> values.stream().filter(value -> name.equals(value.getName())).toList(),
				() -> values);
	}

	/** Whose values are meant where a value is written. */
	private static List<Symbol> valueOwners(EObject context, ProjectIndex index) {
		Optional<ValueOwner> owner = ValueOwner.at(context).filter(found -> !found.name().isEmpty());
		if (owner.isEmpty()) {
			return List.of();
		}
		String name = owner.get().name();
		return owner.get().kind().map(kind -> index.get(Key.of(kind, name)))
				.orElseGet(() -> subject(name, families(context), index));
	}

	private static List<EObject> elements(List<Symbol> symbols) {
		return symbols.stream().map(Symbol::element).toList();
	}
}
