package org.baywright.analysis.check;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.baywright.analysis.RuleCheck;

/** The help pages of the checks, of the problems of a text and of the language, in Markdown. */
public final class HelpPages {

	/** The page on all problems of a text. */
	public static final String PROBLEMS = "problems";

	private static final Pattern PROBLEM = Pattern.compile("^## ([a-z0-9-]+): .*$", Pattern.MULTILINE);

	private HelpPages() {
	}

	/** Returns the kinds of problems of a text that the page on them explains, sorted. */
	public static List<String> problems() {
		return PROBLEM.matcher(file(PROBLEMS).orElseThrow()).results().map(found -> found.group(1)).sorted().toList();
	}

	/** Returns the page on a check or on a kind of problem, or that of the {@code language}, if there is one. */
	public static Optional<String> page(String id) {
		return file(id).or(() -> problem(id));
	}

	private static Optional<String> problem(String id) {
		String all = file(PROBLEMS).orElseThrow();
		Matcher heading = PROBLEM.matcher(all);
		while (heading.find()) {
			if (heading.group(1).equals(id)) {
				int next = all.indexOf("\n## ", heading.end());
				return Optional.of(all.substring(heading.start() + 1, next < 0 ? all.length() : next + 1));
			}
		}
		return Optional.empty();
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
