package org.baywright.language.translate;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Choice;
import org.baywright.language.bay.OutcomeValue;
import org.baywright.language.index.Kind;
import org.baywright.language.index.Refs;
import org.baywright.model.Mend;
import org.eclipse.emf.ecore.EObject;

/** What can be defined in answer to a name that means nothing. */
final class Defining {

	/** A fault has one name, behind that of its part. */
	private static final Pattern OF_PART = Pattern.compile("[^.]+\\.[^.]+");

	private Defining() {
	}

	/** Returns the definition of a thing of a kind with a name, if nothing more needs to be known of it. */
	static List<Mend> bare(Kind kind, String name) {
		return thing(kind).filter(thing -> isName(thing, name)).map(thing -> withValues(thing, name, List.of())).orElse(List.of());
	}

	/** Returns the definition of a thing that must have some values; none if the name has points in it. */
	static List<Mend> withValues(Mend.Thing thing, String name, List<String> values) {
		return isName(thing, name) ? List.of(new Mend.Define(thing, name, values)) : List.of();
	}

	/** Returns the definition of a test that gives the results that are named; none if numbers are written, whose unit is not known. */
	static List<Mend> test(String name, List<? extends EObject> written) {
		Set<String> values = new LinkedHashSet<>();
		for (EObject band : written) {
			if (band instanceof OutcomeValue value && value.getValue() instanceof Choice choice) {
				values.addAll(Refs.names(choice, BayPackage.Literals.CHOICE__VALUE));
			} else {
				return List.of();
			}
		}
		return withValues(Mend.Thing.TEST, name, List.copyOf(values));
	}

	private static boolean isName(Mend.Thing thing, String name) {
		return thing == Mend.Thing.FAULT ? OF_PART.matcher(name).matches() : name.indexOf('.') < 0;
	}

	private static Optional<Mend.Thing> thing(Kind kind) {
		return switch (kind) {
		case FAMILY -> Optional.of(Mend.Thing.FAMILY);
		case STATE -> Optional.of(Mend.Thing.STATE);
		case TOOL -> Optional.of(Mend.Thing.TOOL);
		case HAZARD -> Optional.of(Mend.Thing.HAZARD);
		case MODULE -> Optional.of(Mend.Thing.MODULE);
		case SIGN -> Optional.of(Mend.Thing.SIGN);
		case PART -> Optional.of(Mend.Thing.PART);
		case FAULT -> Optional.of(Mend.Thing.FAULT);
		case TEST -> Optional.of(Mend.Thing.TEST);
		case RULE, REPAIR, CODE, TRAIT -> Optional.empty(); // only the author knows what these are made of
		};
	}
}
