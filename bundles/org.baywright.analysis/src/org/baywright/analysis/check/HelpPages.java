package org.baywright.analysis.check;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

import org.baywright.analysis.RuleCheck;

/** The help pages of the checks and of the language, in Markdown. */
public final class HelpPages {

	private HelpPages() {
	}

	/** Returns the page on a check, or that of the {@code language}, if there is one. */
	public static Optional<String> page(String id) {
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
