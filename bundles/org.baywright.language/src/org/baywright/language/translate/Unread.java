package org.baywright.language.translate;

import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.baywright.language.text.Nesting;
import org.baywright.model.LeftOut;

/**
 * The text that the parser could not make anything of, or not all: what names stand in it may be used there. Words of the
 * language and what stands in it by mistake are taken for names too; that only holds back a little more.
 */
final class Unread {

	private static final Pattern NAME = Pattern.compile("\\^?([\\p{L}_][\\p{L}\\p{N}_]*)(\\.\\^?[\\p{L}_][\\p{L}\\p{N}_]*)?");

	private final StringBuilder text;

	/** @param text a file's text, of which all counts as unread at first */
	Unread(String text) {
		this.text = new StringBuilder(text);
	}

	/** Takes out what was read. */
	void read(int from, int to) {
		for (int i = Math.max(0, from); i < Math.min(to, text.length()); i++) {
			text.setCharAt(i, ' ');
		}
	}

	/** Returns what is known of what is left, if any names are. */
	Optional<LeftOut> leftOut() {
		Set<String> decides = new TreeSet<>();
		Set<String> names = new TreeSet<>();
		Matcher name = NAME.matcher(withoutTexts());
		while (name.find()) {
			String plain = name.group().replace("^", "");
			names.add(plain);
			names.add(name.group(1));
			if (name.group(2) != null) {
				decides.add(plain);
			}
		}
		return names.isEmpty() ? Optional.empty() : Optional.of(new LeftOut(names.contains("law"), decides, names));
	}

	/** What stands in quotes or in a comment names nothing. */
	private String withoutTexts() {
		String all = text.toString();
		StringBuilder out = new StringBuilder();
		for (int at = 0; at < all.length();) {
			int end = Nesting.endOfSilent(all, at);
			out.append(end > at ? ' ' : all.charAt(at));
			at = Math.max(end, at + 1);
		}
		return out.toString();
	}
}
