package org.baywright.cli;

/** Forms in which commands tell what there is. */
enum Form {
	/** For people. */
	TEXT,
	/** For programs. */
	JSON
}
