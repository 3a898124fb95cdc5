package org.baywright.model;

import java.util.List;

/**
 * What a project asks for before its rules count as agreed.
 *
 * @param agree how many must agree with each rule and chain as it stands; 0 if it does not say
 * @param withoutAuthor whether the author of a rule does not count
 * @param hazards who must agree with rules that touch a hazard
 * @param span where it is written
 */
public record SignOff(int agree, boolean withoutAuthor, List<OfHazard> hazards, Span span) {

	public SignOff {
		hazards = List.copyOf(hazards);
	}

	/**
	 * Rules that touch a hazard need one who agrees and is qualified.
	 *
	 * @param hazard name of the hazard
	 * @param qualification what the reviewer must be qualified for
	 * @param span where it is written
	 */
	public record OfHazard(String hazard, String qualification, Span span) {
	}
}
