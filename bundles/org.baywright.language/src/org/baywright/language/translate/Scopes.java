package org.baywright.language.translate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Condition;
import org.baywright.language.bay.Reach;
import org.baywright.language.index.Kind;
import org.baywright.language.translate.Conditions.Place;
import org.baywright.language.translate.Conditions.Within;
import org.baywright.model.Scope;
import org.baywright.model.Span;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** Which vehicles a rule, a sign, a test or a repair is for. */
final class Scopes {

	private final Context context;
	private final Conditions conditions;

	Scopes(Context context, Conditions conditions) {
		this.context = context;
		this.conditions = conditions;
	}

	/** Translates what stands behind {@code for} at a sign, a test or a repair; without it every vehicle is meant. */
	Scope of(List<Reach> reaches) {
		return reaches.isEmpty() ? Scope.EVERY : of(reaches.get(0), BayPackage.Literals.REACH__FAMILIES, BayPackage.Literals.REACH__EXCEPT,
				BayPackage.Literals.REACH__WHERE, reaches.get(0).getWhere(), context.source.span(reaches.get(0)));
	}

	/**
	 * Translates what stands behind {@code for}.
	 *
	 * @param holder what it stands in, with the features given
	 * @param without the place to tell if nothing stands there
	 */
	Scope of(EObject holder, EReference families, EReference except, EReference where, List<Condition> written, Span without) {
		List<String> named = context.resolveAll(holder, families, Kind.FAMILY);
		List<String> left = context.resolveAll(holder, except, Kind.FAMILY);
		List<org.baywright.model.Condition> all = new ArrayList<>();
		written.forEach(condition -> conditions.translate(condition, new Within(Place.WHERE, named)).ifPresent(all::add));
		Optional<org.baywright.model.Condition> both = all.isEmpty() ? Optional.empty()
				: Optional.of(all.size() == 1 ? all.get(0) : new org.baywright.model.Condition.And(all, all.get(0).span()));
		return new Scope(named, left, both, span(holder, List.of(families, except, where), without));
	}

	private Span span(EObject holder, List<EReference> features, Span without) {
		INode first = Clauses.keyword(holder, "for");
		if (first == null) {
			return without;
		}
		INode last = first;
		INode every = Clauses.keyword(holder, "family");
		if (every != null) {
			last = every;
		}
		for (EReference feature : features) {
			for (INode node : NodeModelUtils.findNodesForFeature(holder, feature)) {
				last = node.getEndOffset() > last.getEndOffset() ? node : last;
			}
		}
		return context.source.span(first, last);
	}
}
