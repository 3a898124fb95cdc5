package org.baywright.analysis.check;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;

import org.baywright.analysis.RuleCheck;

/** The help pages of the checks, of the problems of a text and of the language, in Markdown. */
public final class HelpPages {

	/** The page on all problems of a text. */
	public static final String PROBLEMS = "problems";

	/** Each kind of problem with its page, which is a section of the page on all; read once, since lists of problems ask often. */
	private static final class Sections {

		static final SortedMap<String, String> BY_KIND = cut(file(PROBLEMS).orElseThrow());

		private static SortedMap<String, String> cut(String all) {
			SortedMap<String, String> sections = new TreeMap<>();
			Pattern.compile("^#(# ([a-z0-9-]+): .*?)(?=^## |\\z)", Pattern.MULTILINE | Pattern.DOTALL).matcher(all).results()
					.forEach(section -> sections.put(section.group(2), section.group(1)));
			return sections;
		}
	}

	private HelpPages() {
	}

	/** Returns the kinds of problems of a text that the page on them explains, sorted. */
	public static List<String> problems() {
		return List.copyOf(Sections.BY_KIND.keySet());
	}

	/** Returns the page on a check or on a kind of problem, or that of the {@code language}, if there is one. */
	public static Optional<String> page(String id) {
		return Optional.ofNullable(Sections.BY_KIND.get(id)).or(() -> file(id));
	}

	private static Optional<String> file(String id) {
		if (!id.matches("[a-z0-9-]+")) {
			return Optional.empty();
		}
		try (InputStream in = RuleCheck.class.getResourceAsStream("/help/" + id + ".md")) {
			return in == null ? Optional.empty() : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
		} catch (IOException e) {
			throw new UncheckedIOException("a part of the program cannot be read", e);
		}
	}
}
