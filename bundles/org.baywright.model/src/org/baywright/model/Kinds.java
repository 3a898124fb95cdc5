package org.baywright.model;

import java.util.function.Consumer;
import java.util.function.Function;

/** What the sealed kinds share whose answers are given kind by kind. */
final class Kinds {

	private Kinds() {
	}

	/** Returns a use as an answer that says nothing. */
	static <T> Function<T, Void> silent(Consumer<T> use) {
		return one -> {
			use.accept(one);
			return null;
		};
	}
}
