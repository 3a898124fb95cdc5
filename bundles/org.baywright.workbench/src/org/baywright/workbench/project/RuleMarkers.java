package org.baywright.workbench.project;

import java.util.List;

import org.baywright.workbench.Baywright;
import org.eclipse.core.resources.IMarker;

/** Types and attributes of the markers that rule files carry. */
public final class RuleMarkers {

	/** Common type of both kinds. */
	public static final String BOTH = Baywright.ID + ".marker";

	/** What is wrong in a text. */
	public static final String PROBLEM = Baywright.ID + ".problem";

	/** What the proofs found. */
	public static final String FLAW = Baywright.ID + ".flaw";

	/** Attribute: id of the kind of problem or of the check. */
	public static final String KIND = "baywright.kind";

	/** Attribute: id of the flaw, or of the problem again. */
	public static final String FLAW_ID = "baywright.flaw";

	static final List<String> COMPARED = List.of(IMarker.SEVERITY, IMarker.MESSAGE, IMarker.LINE_NUMBER, IMarker.CHAR_START,
			IMarker.CHAR_END, KIND, FLAW_ID);

	private RuleMarkers() {
	}
}
