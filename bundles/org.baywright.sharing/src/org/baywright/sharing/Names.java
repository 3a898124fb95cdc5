package org.baywright.sharing;

import java.text.Normalizer;
import java.util.Locale;

import org.eclipse.jgit.lib.Constants;
import org.eclipse.jgit.lib.ObjectInserter;

/** How things are called beneath, where only plain small letters and digits are sure to fit. */
final class Names {

	/** Offers are branches that begin with this. */
	static final String OFFER = "offer/";
	/** Offers that were taken back are kept under this. */
	static final String WITHDRAWN = "withdrawn/";
	static final String LOOKED = "refs/baywright/looked/";
	static final String BEFORE = "refs/baywright/before/";
	static final String AFTER = "refs/baywright/after/";
	static final String UNDONE = "refs/baywright/undone/";
	static final String DOING = "refs/baywright/doing";
	/** The section of the settings of a repository. */
	static final String SECTION = "baywright";

	private static final int LONGEST = 40;
	private static final int SHORT = 8;

	private Names() {
	}

	/** Returns a text as a name: small letters, digits and dashes; for one that has none of these, a number that is made of it. */
	static String of(String text) {
		String plain = Normalizer.normalize(text, Normalizer.Form.NFKD).replaceAll("\\p{M}+", "").toLowerCase(Locale.ROOT).replace("\u00DF", "ss")
				.replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
		if (plain.length() > LONGEST) {
			// what begins alike must not be taken for the same
			return plain.substring(0, LONGEST - SHORT - 1).replaceAll("-+$", "") + "-" + number(text);
		}
		return plain.isEmpty() ? number(text) : plain;
	}

	/** Returns a short number that is made of a text. */
	static String number(String text) {
		try (ObjectInserter.Formatter formatter = new ObjectInserter.Formatter()) {
			return formatter.idFor(Constants.OBJ_BLOB, Constants.encode(text)).abbreviate(SHORT).name();
		}
	}
}
