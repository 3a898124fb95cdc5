package org.baywright.model;

/** Who may do a piece of work. Local law may ask for more. */
public enum Skill {
	BASIC, TRAINED, LICENSED
}
