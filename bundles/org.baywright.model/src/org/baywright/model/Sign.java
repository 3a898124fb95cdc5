package org.baywright.model;

import java.util.List;

/**
 * Something the customer or the technician notices.
 *
 * @param name name of the sign
 * @param title what a technician says: "Engine does not crank"
 * @param scope the vehicles that can show it
 * @param intermittent whether it comes and goes; its absence on the day then proves nothing
 * @param precautions what comes first as long as it is there
 * @param span where its name stands
 */
public record Sign(String name, String title, Scope scope, boolean intermittent, List<Precaution> precautions, Span span)
		implements Named {

	public Sign {
		precautions = List.copyOf(precautions);
	}

	/** A sign of every vehicle without precautions. */
	public Sign(String name, String title, boolean intermittent, Span span) {
		this(name, title, Scope.EVERY, intermittent, List.of(), span);
	}
}
