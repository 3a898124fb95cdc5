package org.baywright.model.words;

import java.text.Normalizer;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/** Names of elements: lower-case words joined by underscores. */
public final class Names {

	private static final Pattern NAME = Pattern.compile("[\\p{L}_][\\p{L}\\p{N}_]*");

	private Names() {
	}

	/**
	 * Returns the name that a title suggests: "12 V battery" becomes {@code v_battery}, "Tür offen" becomes
	 * {@code tur_offen}. The empty text if the title holds no letter.
	 */
	public static String suggest(String title) {
		String plain = Normalizer.normalize(title, Normalizer.Form.NFD).replaceAll("\\p{M}", "").toLowerCase(Locale.ROOT);
		return plain.replaceAll("[^\\p{L}\\p{N}]+", "_").replaceAll("^[_\\p{N}]+|_+$", "");
	}

	/** Returns the name, or the name with the first number that makes it one that is not taken. */
	public static String free(String name, Collection<String> taken) {
		return free(name, taken::contains);
	}

	/** As {@link #free(String, Collection)}, for those who need not list what is taken. */
	public static String free(String name, Predicate<String> taken) {
		String candidate = name;
		for (int i = 2; taken.test(candidate); i++) {
			candidate = name + "_" + i;
		}
		return candidate;
	}

	/** Returns what is wrong with a name, in one sentence. */
	public static Optional<String> problem(String what, String name, Collection<String> taken) {
		if (name.isBlank()) {
			return Optional.of("Give the " + what + " a name, such as " + example(what) + ".");
		}
		if (!NAME.matcher(name).matches()) {
			return Optional.of("A name is made of letters, digits and underscores, and begins with a letter: not " + name + ".");
		}
		return taken.contains(name) ? Optional.of("There is already something named " + name + ".") : Optional.empty();
	}

	private static String example(String what) {
		return switch (what) {
		case "family" -> "tarn_t3";
		case "rule" -> "flat_battery";
		default -> "starting";
		};
	}
}
