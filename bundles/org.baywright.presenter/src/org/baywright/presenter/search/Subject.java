package org.baywright.presenter.search;

/** What a search can be about, in the order in which it is offered. */
public enum Subject {

	SIGN("Signs"), TEST("Tests"), FAULT("Faults"), CODE("Codes"), AUTHOR("Authors and reviewers"), PART("Parts"),
	MODULE("Modules"), FAMILY("Vehicle families"), OTHER("Any other name or title");

	private final String words;

	Subject(String words) {
		this.words = words;
	}

	/** Returns what a technician calls things of this kind. */
	public String words() {
		return words;
	}
}
