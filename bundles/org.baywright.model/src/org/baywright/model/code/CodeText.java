package org.baywright.model.code;

/** How a trouble code is written, by the standard that defines its form. */
public sealed interface CodeText permits Dtc, J1939Code, RawCode {

	/** Returns the text as people write it. */
	String display();
}
