package org.baywright.language.index;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.baywright.language.bay.Code;
import org.baywright.language.bay.Cycle;
import org.baywright.language.bay.Element;
import org.baywright.language.bay.Family;
import org.baywright.language.bay.Fault;
import org.baywright.language.bay.Module;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.bay.Part;
import org.baywright.language.bay.Reach;
import org.baywright.language.bay.RuleFile;
import org.baywright.language.bay.Sign;
import org.baywright.language.bay.State;
import org.baywright.language.bay.StateSetting;
import org.baywright.language.bay.Test;
import org.baywright.language.bay.Trait;
import org.baywright.language.bay.VinPattern;
import org.baywright.language.bay.BayPackage;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;

/** Gathers the names that one file declares. */
public final class FileSymbols {

	private final String file;
	private final List<Symbol> symbols = new ArrayList<>();

	private FileSymbols(String file) {
		this.file = file;
	}

	/** Returns the names that a parsed file declares, in the order of its text. */
	public static List<Symbol> of(String file, RuleFile content) {
		FileSymbols gathered = new FileSymbols(file);
		for (Element element : content.getElements()) {
			gathered.add(element);
		}
		return List.copyOf(gathered.symbols);
	}

	private void add(Element element) {
		if (element instanceof Family family) {
			add(family.getName(), family, facts(family));
			for (Trait trait : family.getTraits()) {
				add(trait.getName(), trait, new Facts.OfTrait(orEmpty(family.getName()), orEmpty(trait.getWord()),
						Domains.of(trait)));
			}
		} else if (element instanceof State state) {
			add(state.getName(), state, new Facts.OfState(state.getValues().stream().map(NamedValue::getName)
					.filter(name -> name != null).toList()));
		} else if (element instanceof Test test) {
			add(test.getName(), test, new Facts.OfTest(Domains.of(test), settings(test),
					Refs.first(test, BayPackage.Literals.TEST__SEEN_WITH), reach(test.getReaches())));
		} else if (element instanceof Code code) {
			add(code.getName(), code, new Facts.OfCode(Refs.first(code, BayPackage.Literals.CODE__MODULE).orElse("")));
		} else if (element instanceof Module module) {
			add(module.getName(), module, new Facts.OfModule(Refs.names(module, BayPackage.Literals.MODULE__FAMILIES)));
		} else if (element instanceof Sign sign) {
			add(sign.getName(), sign, new Facts.OfSign(sign.isIntermittent(), reach(sign.getReaches())));
		} else if (element instanceof Part part) {
			add(part.getName(), part, Facts.None.INSTANCE);
			for (Fault fault : part.getFaults()) {
				if (part.getName() != null) {
					add(reference(fault), fault, Facts.None.INSTANCE);
				}
			}
		} else if (Kind.of(element.eClass()) != null) {
			add(reference(element), element, Facts.None.INSTANCE);
		}
	}

	/** Returns the name by which rules refer to what is declared: {@code part.fault} for a fault, else its own; null if it has none. */
	public static String reference(EObject element) {
		EStructuralFeature feature = element.eClass().getEStructuralFeature("name");
		String name = feature != null && element.eGet(feature) instanceof String written ? written : null;
		return name != null && element instanceof Fault && element.eContainer() instanceof Part part ? part.getName() + "." + name : name;
	}

	private static Facts facts(Family family) {
		List<Facts.Vin> vins = new ArrayList<>();
		for (VinPattern vin : family.getVins()) {
			if (vin.getPattern() != null) {
				vins.add(new Facts.Vin(vin.getPattern(), vin.isCheckDigit()));
			}
		}
		Optional<String> parent = Refs.first(family, BayPackage.Literals.FAMILY__PARENT);
		return new Facts.OfFamily(parent, Refs.names(family, BayPackage.Literals.FAMILY__SYSTEMS), kind(family),
				List.copyOf(vins), cycles(family));
	}

	private static Map<String, String> cycles(Family family) {
		Map<String, String> cycles = new TreeMap<>();
		for (Cycle cycle : family.getCycles()) {
			Refs.first(cycle, BayPackage.Literals.CYCLE__STATE).ifPresent(state -> cycles.put(state, cycle.getSteps().stream()
					.map(step -> step.getWait() == null ? Refs.first(step, BayPackage.Literals.CYCLE_PART__VALUE).orElse("")
							: "wait " + step.getWait().getNumber() + " " + step.getWait().getUnit())
					.collect(Collectors.joining(", "))));
		}
		return Map.copyOf(cycles);
	}

	/** Returns what a family is there for. */
	public static org.baywright.model.Family.Kind kind(Family family) {
		return family.isSystem() ? org.baywright.model.Family.Kind.SYSTEM
				: family.isBase() ? org.baywright.model.Family.Kind.BASE : org.baywright.model.Family.Kind.VEHICLES;
	}

	private static Facts.Reach reach(List<Reach> written) {
		return new Facts.Reach(written.stream().flatMap(reach -> Refs.names(reach, BayPackage.Literals.REACH__FAMILIES).stream()).toList(),
				written.stream().flatMap(reach -> Refs.names(reach, BayPackage.Literals.REACH__EXCEPT).stream()).toList());
	}

	private static List<Facts.Setting> settings(Test test) {
		List<Facts.Setting> settings = new ArrayList<>();
		for (StateSetting setting : test.getStates()) {
			Optional<String> value = Refs.first(setting, BayPackage.Literals.STATE_SETTING__VALUE);
			Refs.first(setting, BayPackage.Literals.STATE_SETTING__STATE)
					.ifPresent(state -> value.ifPresent(written -> settings.add(new Facts.Setting(state, written))));
		}
		return List.copyOf(settings);
	}

	private void add(String name, EObject element, Facts facts) {
		if (name != null && !name.isEmpty()) {
			symbols.add(new Symbol(Kind.of(element.eClass()), name, file, element, facts));
		}
	}

	private static String orEmpty(String text) {
		return text == null ? "" : text;
	}
}
