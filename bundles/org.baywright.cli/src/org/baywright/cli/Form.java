package org.baywright.cli;

import java.util.Locale;

/** Forms in which commands tell what there is. */
enum Form {
	/** For people. */
	TEXT,
	/** For programs. */
	JSON;

	@Override
	public String toString() {
		return name().toLowerCase(Locale.ROOT);
	}
}
