package org.baywright.language.text;

import java.util.ArrayList;
import java.util.List;
import org.baywright.model.Mend;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;

/**
 * What to do about a problem: in words, and as what an editor can do. Both are made together, so that they say the same.
 *
 * @param words one plain sentence
 * @param mends what would do it, each by itself; empty where only the author knows
 */
public record Advice(String words, List<Mend> mends) {

	public Advice {
		mends = List.copyOf(mends);
	}

	/** Advice that only the author can follow. */
	public static Advice words(String words) {
		return new Advice(words, List.of());
	}

	/** Says to write one of some texts at a place, and may say more behind them. */
	public static Advice write(Span span, List<String> texts, String more) {
		return new Advice("Write " + Spelling.either(texts) + more + ".",
				texts.stream().<Mend>map(text -> replace("Write " + text, span, text)).toList());
	}

	/** Says to write a text at a place. */
	public static Advice write(Span span, String text) {
		return write(span, List.of(text), "");
	}

	/** Asks whether a text was meant. */
	public static Advice meant(Span span, String text) {
		return new Advice("Did you mean `" + text + "`?", List.of(replace("Write " + text, span, text)));
	}

	/** Asks whether one of some names was meant. */
	public static Advice meant(Span span, String old, List<String> names, boolean value) {
		List<Mend.Name> mends = names(span, old, names, value);
		return new Advice("Did you mean " + either(mends) + "?", List.copyOf(mends));
	}

	/** Says to write one of some names. */
	public static Advice writeName(Span span, String old, List<String> names) {
		List<Mend.Name> mends = names(span, old, names, false);
		return new Advice("Write " + either(mends) + ".", List.copyOf(mends));
	}

	private static List<Mend.Name> names(Span span, String old, List<String> names, boolean value) {
		return names.stream().map(name -> new Mend.Name(span, old, name, value)).toList();
	}

	/** Says names as they are written. */
	private static String either(List<Mend.Name> names) {
		return Spelling.either(names.stream().map(Mend.Name::text).toList());
	}

	/** Returns what writes something else at one place. */
	public static Mend replace(String title, Span span, String text) {
		return new Mend.Write(title, List.of(new Mend.Piece(span, text)));
	}

	/** Returns what sets something in order at one place. */
	public static Mend tidy(String title, Span span, String text) {
		return new Mend.Tidy(title, List.of(new Mend.Piece(span, text)));
	}

	/** Returns the advice with something more that an editor can do: define what is missing. */
	public Advice or(List<Mend> others) {
		List<Mend> all = new ArrayList<>(mends);
		all.addAll(others);
		return new Advice(words, all);
	}

	/** Returns the problem about which this is said. */
	public Problem problem(ProblemKind kind, Span span, String message) {
		return new Problem(kind, span, message, words, mends);
	}
}
