package org.baywright.analysis.proof;

import java.util.List;
import java.util.function.Consumer;

import org.baywright.model.IndexSet;

/**
 * A condition made ready for proofs: negation stands only at the leaves, values are cells.
 */
public sealed interface Formula {

	/** Calls {@code use} for each part that is not made of others, in order. */
	default void eachLeaf(Consumer<Formula> use) {
		if (this instanceof All all) {
			all.parts().forEach(part -> part.eachLeaf(use));
		} else if (this instanceof Any any) {
			any.parts().forEach(part -> part.eachLeaf(use));
		} else {
			use.accept(this);
		}
	}

	/** Returns a text that is the same for formulas that differ only in their lines or the order of their parts. */
	default String written() {
		if (this instanceof Known known) {
			return known.var() + "=" + known.cells();
		} else if (this instanceof Stands stands) {
			return (stands.stands() ? "v" : "!v") + stands.verdict();
		}
		List<Formula> parts = this instanceof All all ? all.parts() : ((Any) this).parts();
		return (this instanceof All ? "all" : "any") + parts.stream().map(Formula::written).distinct().sorted().toList();
	}

	/** Always holds. */
	Formula TRUE = new All(List.of());

	/**
	 * The variable is known and in one of the cells.
	 *
	 * @param var number of the variable in its program; -1 if vehicles of the family do not have it, then it never holds
	 * @param cells cells of the variable
	 * @param line number of the source line in the program
	 */
	record Known(int var, IndexSet cells, int line) implements Formula {
	}

	/** The verdict stands, or does not stand. */
	record Stands(int verdict, boolean stands, int line) implements Formula {
	}

	/** All parts hold. */
	record All(List<Formula> parts) implements Formula {
	}

	/** At least one part holds. */
	record Any(List<Formula> parts) implements Formula {
	}
}
