package org.baywright.pack.format;

import org.baywright.model.RuleBase;
import org.baywright.pack.PackException;

/** Makes sure that every name a rule base uses is also declared in it, once, so that no user of it has to fear a hole. */
public final class References {

	private References() {
	}

	/**
	 * Follows all names.
	 *
	 * @throws PackException if a name leads nowhere or is declared twice; it says which one and who uses it
	 */
	public static void check(RuleBase base) throws PackException {
		try {
			org.baywright.model.References.check(base);
		} catch (org.baywright.model.References.Missing e) {
			throw new PackException(e.getMessage(), e);
		}
	}
}
