package org.baywright.cli;

/** Entry point of the command line. */
public final class Main {

	private Main() {
	}

	public static void main(String[] args) {
		System.out.println("baywright 0.1.0");
	}
}
