package org.baywright.language.index;

import java.util.Optional;
import org.baywright.language.bay.Atom;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Cycle;
import org.baywright.language.bay.Point;
import org.baywright.language.bay.Reading;
import org.baywright.language.bay.RepeatStep;
import org.baywright.language.bay.Rule;
import org.baywright.language.bay.StateSetting;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;

/**
 * Whose values are meant where a value is written.
 *
 * @param kind a state or a test; nothing if it is whatever a condition or a reading speaks of
 * @param name the owner's name as written; the empty text if there is none
 */
public record ValueOwner(Optional<Kind> kind, String name) {

	/** Returns the owner of a value that is written in an element, or nothing where no value can stand. */
	public static Optional<ValueOwner> at(EObject context) {
		for (EObject element = context; element != null; element = element.eContainer()) {
			if (element instanceof StateSetting) {
				return of(element, BayPackage.Literals.STATE_SETTING__STATE, Optional.of(Kind.STATE));
			}
			if (element instanceof Cycle) {
				return of(element, BayPackage.Literals.CYCLE__STATE, Optional.of(Kind.STATE));
			}
			if (element instanceof Atom) {
				return of(element, BayPackage.Literals.ATOM__SUBJECT, Optional.empty());
			}
			if (element instanceof Reading) {
				return of(element, BayPackage.Literals.READING__SUBJECT, Optional.empty());
			}
			if (element instanceof RepeatStep) {
				return of(element, BayPackage.Literals.REPEAT_STEP__TEST, Optional.of(Kind.TEST));
			}
			if (element instanceof Point) {
				return of(element, BayPackage.Literals.POINT__TEST, Optional.of(Kind.TEST));
			}
			if (element instanceof Rule) {
				return of(element, BayPackage.Literals.RULE__TESTS, Optional.of(Kind.TEST));
			}
		}
		return Optional.empty();
	}

	private static Optional<ValueOwner> of(EObject element, EReference reference, Optional<Kind> kind) {
		return Optional.of(new ValueOwner(kind, Refs.first(element, reference).orElse("")));
	}
}
