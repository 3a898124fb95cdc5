package org.baywright.cli.bench;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

import org.baywright.cli.work.Guess;

/**
 * Something that is meant by its name or by its title.
 *
 * @param name its name in the rules
 * @param title what a technician calls it
 */
record Named(String name, String title) {

	/**
	 * What was found at the beginning of a text.
	 *
	 * @param name the name of what was found
	 * @param rest what stands behind it
	 */
	record Begin(String name, String rest) {
	}

	static <T> List<Named> all(Collection<T> things, Function<T, String> name, Function<T, String> title) {
		return things.stream().map(thing -> new Named(name.apply(thing), title.apply(thing))).toList();
	}

	private boolean isMeant(String text) {
		return text.equalsIgnoreCase(name) || text.equalsIgnoreCase(title);
	}

	/** Returns the name of what is meant by a whole text. A name in its own letters comes before all else. */
	static Optional<String> find(String text, List<Named> all) {
		return all.stream().map(Named::name).filter(text::equals).findFirst()
				.or(() -> all.stream().filter(each -> each.isMeant(text)).map(Named::name).findFirst());
	}

	/** Returns what is meant by the first words of a text, as many as there can be. */
	static Optional<Begin> begin(String text, List<Named> all) {
		return all.stream().flatMap(each -> Stream.of(each.name(), each.title()).filter(words -> isBegin(words, text)).map(words -> new Begin(each.name(), text.substring(words.length()))))
				.min(Comparator.comparingInt(begin -> begin.rest().length()))
				.map(begin -> new Begin(begin.name(), begin.rest().strip().replaceFirst("^=\\s*", "")));
	}

	private static boolean isBegin(String words, String text) {
		return text.regionMatches(true, 0, words, 0, words.length())
				&& (text.length() == words.length() || " \t=".indexOf(text.charAt(words.length())) >= 0);
	}

	/** Returns a sentence on what may have been meant. */
	static String advice(String text, List<Named> all, String otherwise) {
		return Guess.advice(text, all.stream().flatMap(each -> Stream.of(each.name(), each.title())).toList(), otherwise);
	}
}
