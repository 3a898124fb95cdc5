package org.baywright.language.ide.names;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.bay.State;
import org.baywright.language.bay.Test;
import org.baywright.language.bay.Trait;
import org.baywright.language.index.Domains;
import org.eclipse.emf.ecore.EObject;

/** Named values of what has some. */
public final class Values {

	private Values() {
	}

	/** Returns the values that a state, a test or a trait declares; none for anything else. */
	public static List<NamedValue> of(EObject owner) {
		if (owner instanceof State state) {
			return state.getValues();
		}
		if (owner instanceof Test test) {
			return Stream.concat(test.getResults().stream(), Domains.beyond(test)).toList();
		}
		return owner instanceof Trait trait ? trait.getValues() : List.of();
	}

	/** Returns their names. */
	public static List<String> names(EObject owner) {
		return of(owner).stream().map(NamedValue::getName).filter(Objects::nonNull).toList();
	}
}
