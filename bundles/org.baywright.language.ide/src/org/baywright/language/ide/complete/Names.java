package org.baywright.language.ide.complete;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.baywright.model.Family;
import org.baywright.language.index.Facts;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.ide.complete.Completion.Ranked;
import org.baywright.language.ide.names.Values;
import org.baywright.language.ide.text.Spelled;
import org.baywright.language.index.FamilyTree;
import org.baywright.language.index.Kind;
import org.baywright.language.index.Symbol;
import org.eclipse.emf.ecore.EObject;

/** Proposes names of the right kind. */
final class Names {

	private static final int RANK = 100;

	/** Where no family can name itself. */
	private static final Frame.Spot OWN_PARENT = new Frame.Spot("Family", "parent");

	private static final Frame.Spot OWN_SYSTEMS = new Frame.Spot("Family", "systems");

	private final Site site;

	Names(Site site) {
		this.site = site;
	}

	void add(Wanted wanted, Frame frame, Trail trail, List<Ranked> found) {
		if (wanted.type() == BayPackage.Literals.NAMED_VALUE) {
			values(frame, trail, found);
			return;
		}
		for (Kind kind : kinds(wanted, frame)) {
			List<Symbol> symbols = kind == Kind.TRAIT ? traits(trail) : site.index().all(kind);
			Map<String, Symbol> byName = new TreeMap<>();
			symbols.forEach(symbol -> byName.putIfAbsent(symbol.name(), symbol));
			if (wanted.spot().equals(OWN_PARENT) || wanted.spot().equals(OWN_SYSTEMS)) {
				byName.remove(Trail.last(trail, "Family", "name"));
				boolean system = wanted.spot().equals(OWN_SYSTEMS) || !Trail.all(trail, "Family", "system").isEmpty();
				byName.values().removeIf(symbol -> system != (((Facts.OfFamily) symbol.facts()).family() == Family.Kind.SYSTEM));
			}
			byName.values().stream().filter(symbol -> site.matches(symbol.name(), title(symbol.element())))
					.forEach(symbol -> found.add(new Ranked(RANK + (frame.isIn("VerifyStep") ? kind.ordinal() : rank(kind)), proposal(symbol))));
		}
	}

	private static int rank(Kind kind) {
		return kind == Kind.SIGN ? 0 : kind.ordinal();
	}

	private static List<Kind> kinds(Wanted wanted, Frame frame) {
		if (wanted.type() != BayPackage.Literals.SUBJECT) {
			return List.of(Kind.of(wanted.type()));
		}
		if (frame.isIn("Rule", "where") || frame.isIn("Reach", "where") || frame.isIn("Chain", "where") || frame.isIn("Case", "traits")) {
			return List.of(Kind.TRAIT);
		}
		if (frame.isIn("VerifyStep")) {
			return List.of(Kind.CODE, Kind.SIGN);
		}
		List<Kind> kinds = new ArrayList<>(List.of(Kind.SIGN, Kind.TEST, Kind.CODE, Kind.MODULE));
		if (wanted.spot().rule().equals("Atom")) {
			kinds.add(Kind.TRAIT);
			if (!frame.isIn("Law")) {
				kinds.add(Kind.FAULT);
			}
		}
		return kinds;
	}

	private List<Symbol> traits(Trail trail) {
		List<String> families = new ArrayList<>();
		families.addAll(Trail.all(trail, "Rule", "families"));
		families.addAll(Trail.all(trail, "Chain", "families"));
		families.addAll(Trail.all(trail, "Reach", "families"));
		families.addAll(Trail.all(trail, "Law", "families"));
		families.addAll(Trail.all(trail, "Case", "family"));
		if (families.isEmpty()) {
			return site.index().all(Kind.TRAIT);
		}
		FamilyTree tree = new FamilyTree(site.index()::get);
		return tree.withDescendants(families).stream().flatMap(family -> tree.traits(family).stream()).toList();
	}

	private Proposal proposal(Symbol symbol) {
		String title = title(symbol.element());
		String detail = title.isEmpty() ? symbol.kind().word() : symbol.kind().word() + " · " + title;
		return new Proposal(symbol.name(), detail, "Defined in " + symbol.file() + ".",
				Proposal.Kind.valueOf(symbol.kind().name()), site.start(), site.offset() - site.start(),
				Spelled.written(symbol.name()), List.of());
	}

	private void values(Frame frame, Trail trail, List<Ranked> found) {
		int rank = 0;
		for (Symbol owner : Owners.at(site.index(), frame, trail)) {
			for (NamedValue value : Values.of(owner.element())) {
				String name = value.getName();
				if (name != null && site.matches(name, title(value))) {
					String title = title(value);
					found.add(new Ranked(RANK + rank++, new Proposal(name,
							(title.isEmpty() ? "" : title + " · ") + "value of " + owner.name(), "Defined in " + owner.file() + ".",
							Proposal.Kind.VALUE, site.start(), site.offset() - site.start(), Spelled.writtenValue(name),
							List.of())));
				}
			}
		}
	}

	static String title(EObject element) {
		var feature = element.eClass().getEStructuralFeature("title");
		return feature != null && element.eGet(feature) instanceof String title ? title : "";
	}
}
