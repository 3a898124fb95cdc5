package org.baywright.model;

/** What a rule says when it fires. */
public sealed interface Conclusion {

	/** Returns where the conclusion is written. */
	Span span();

	/** A verdict on one fault. */
	record OnFault(VerdictKind verdict, String fault, Span span) implements Conclusion {
	}

	/** An honest end of the road: somebody else goes on. */
	record Refers(String toWhom, Span span) implements Conclusion {
	}

	/** The result is known and proves nothing by itself; stating it tells that it was not forgotten. */
	record Nothing(Span span) implements Conclusion {
	}
}
