package org.baywright.model;

import java.util.List;
import org.baywright.model.code.CodeText;

/**
 * A trouble code that a module can hold. A code of a silent module is unread: neither present nor absent.
 *
 * @param name name of the code
 * @param title what it stands for
 * @param module the module that keeps it
 * @param text the code in the form of its standard
 * @param runsIn states in which the module tests for it; of several values of one state any will do; empty if nobody says
 * @param runsAfter what must have been done before the module has tested for it
 * @param span where its name stands
 */
public record Code(String name, String title, String module, CodeText text, List<StateSetting> runsIn,
		List<Preparation> runsAfter, Span span) implements Named {

	public Code {
		runsIn = List.copyOf(runsIn);
		runsAfter = List.copyOf(runsAfter);
	}

	/** A code of which nobody says when its module tests for it. */
	public Code(String name, String title, String module, CodeText text, Span span) {
		this(name, title, module, text, List.of(), List.of(), span);
	}
}
