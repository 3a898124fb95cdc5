package org.baywright.language.index;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.bay.Code;
import org.baywright.language.bay.Element;
import org.baywright.language.bay.Family;
import org.baywright.language.bay.Fault;
import org.baywright.language.bay.Module;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.bay.Part;
import org.baywright.language.bay.RuleFile;
import org.baywright.language.bay.Sign;
import org.baywright.language.bay.State;
import org.baywright.language.bay.StateSetting;
import org.baywright.language.bay.Test;
import org.baywright.language.bay.Trait;
import org.baywright.language.bay.VinPattern;
import org.baywright.language.bay.BayPackage;
import org.eclipse.emf.ecore.EObject;

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
			add(test.getName(), test, new Facts.OfTest(Domains.of(test), settings(test)));
		} else if (element instanceof Code code) {
			add(code.getName(), code, new Facts.OfCode(Refs.first(code, BayPackage.Literals.CODE__MODULE).orElse("")));
		} else if (element instanceof Module module) {
			add(module.getName(), module, new Facts.OfModule(Refs.names(module, BayPackage.Literals.MODULE__FAMILIES)));
		} else if (element instanceof Sign sign) {
			add(sign.getName(), sign, new Facts.OfSign(sign.isIntermittent()));
		} else if (element instanceof Part part) {
			add(part.getName(), part, Facts.None.INSTANCE);
			for (Fault fault : part.getFaults()) {
				if (part.getName() != null && fault.getName() != null) {
					add(part.getName() + "." + fault.getName(), fault, Facts.None.INSTANCE);
				}
			}
		} else if (Kind.of(element.eClass()) != null) {
			add((String) element.eGet(element.eClass().getEStructuralFeature("name")), element, Facts.None.INSTANCE);
		}
	}

	private static Facts facts(Family family) {
		List<Facts.Vin> vins = new ArrayList<>();
		for (VinPattern vin : family.getVins()) {
			if (vin.getPattern() != null) {
				vins.add(new Facts.Vin(vin.getPattern(), vin.isCheckDigit()));
			}
		}
		Optional<String> parent = Refs.first(family, BayPackage.Literals.FAMILY__PARENT);
		return new Facts.OfFamily(parent, family.isBase(), List.copyOf(vins));
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
