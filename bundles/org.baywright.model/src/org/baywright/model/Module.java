package org.baywright.model;

import java.util.List;

/**
 * A control unit that can be asked over the vehicle's network.
 *
 * @param name name of the module
 * @param title what a technician calls it
 * @param families families that have it; empty for all
 * @param answersIn states in which it must answer; its silence in any other state proves nothing. Empty: in all states
 * @param span where its name stands
 */
public record Module(String name, String title, List<String> families, List<StateSetting> answersIn, Span span)
		implements Named {

	public Module {
		families = List.copyOf(families);
		answersIn = List.copyOf(answersIn);
	}
}
