package org.baywright.cli.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

import org.baywright.language.merge.Conflict;

/** Reads what is chosen where two changes do not go together. */
public final class Choices {

	private Choices() {
	}

	/**
	 * Returns the choices that words stand for.
	 *
	 * @param words for each element {@code ours}, {@code theirs} or a file with its text
	 * @param resolve finds the file that a user means
	 * @throws IOException if a file cannot be read; the message is for the user
	 */
	public static Map<String, Conflict.Choice> of(Map<String, String> words, Function<String, Path> resolve) throws IOException {
		Map<String, Conflict.Choice> choices = new TreeMap<>();
		for (Map.Entry<String, String> word : words.entrySet()) {
			choices.put(word.getKey(), of(word.getValue(), resolve));
		}
		return choices;
	}

	/**
	 * Makes sure that each choice is for something that is to be chosen.
	 *
	 * @throws IOException if one is not; the message is for the user
	 */
	public static void requireKnown(Map<String, Conflict.Choice> choices, List<Conflict> conflicts) throws IOException {
		List<String> known = conflicts.stream().map(Conflict::id).toList();
		Optional<String> unknown = choices.keySet().stream().filter(id -> !known.contains(id)).findFirst();
		if (unknown.isPresent() && !known.isEmpty()) {
			throw new IOException("There is nothing to choose for \"" + unknown.get() + "\". There is: " + String.join(", ", known) + ".");
		}
	}

	private static Conflict.Choice of(String word, Function<String, Path> resolve) throws IOException {
		if (word.equals("ours") || word.equals("theirs")) {
			return word.equals("ours") ? Conflict.Choice.OURS : Conflict.Choice.THEIRS;
		}
		try {
			return Conflict.Choice.text(Files.readString(resolve.apply(word)));
		} catch (IOException e) {
			throw new IOException("The file " + word + " cannot be read as text. Choose ours, theirs, or a file with the text of the element.", e);
		}
	}
}
