package org.baywright.pack;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import org.baywright.model.Rule;
import org.baywright.pack.manifest.PackManifest;

/** Tells in lines what a pack is, what it counts, what was checked and what stands. */
public final class PackText {

	/** How what the pack says and parts of lines are shown; as they are, if nothing else is given. */
	public interface Manner {

		/** What comes from the pack. */
		default String given(String text) {
			return text;
		}

		/** What stands out. */
		default String strong(String text) {
			return text;
		}

		/** What steps back. */
		default String faint(String text) {
			return text;
		}
	}

	private final Manner manner;
	private final List<String> lines = new ArrayList<>();

	private PackText(Manner manner) {
		this.manner = manner;
	}

	/** Returns the text without marks, each line with a line feed at its end. */
	public static String of(Pack pack, boolean withRules) {
		return String.join("\n", lines(pack, withRules, new Manner() {
		})) + "\n";
	}

	/**
	 * Returns the lines.
	 *
	 * @param withRules whether the rules are listed too
	 */
	public static List<String> lines(Pack pack, boolean withRules, Manner manner) {
		PackText text = new PackText(manner);
		text.tell(pack.manifest());
		if (withRules) {
			text.rules(pack.rules().rules());
		}
		text.lines.add(manner.faint("This is what the pack says of itself. Only verifying it tells whether that is so."));
		return text.lines;
	}

	private void tell(PackManifest manifest) {
		lines.add(manner.strong(manner.given(manifest.project())));
		lines.add("Format version " + manifest.version() + ", made by Baywright " + manner.given(manifest.tool()));
		lines.add("Fingerprint " + manifest.fingerprint());
		manifest.builtOn().forEach(other -> lines.add("Built on " + manner.given(other.project() + " (" + other.path() + "), meaning " + other.meaning())
				+ "; all of it is in this pack."));
		manifest.signOff().ifPresent(signOff -> lines.add(signOff.met() ? "Signed off: all that the project asks for before its rules count as agreed is met."
				: manner.strong("Draft: the rules are not signed off.")));
		lines.add("");
		manifest.counts().forEach((kind, count) -> lines.add(String.format(Locale.ROOT, "%6d %s", count, word(kind, count))));
		lines.add("");
		lines.add(number(manifest.checks().size(), "check") + " made; the rules bring " + manifest.cases() + " of "
				+ number(manifest.count("jobs"), "finished job") + " to the known end.");
		standing("Open", manifest.openFlaws());
		standing("Accepted", manifest.acceptedFlaws());
		if (!manifest.problems().isEmpty()) {
			lines.add("");
			lines.add(manner.strong("Remarks on the text (" + manifest.problems().size() + ")"));
			manifest.problems().forEach(
					problem -> lines.add("  " + manner.given(problem.at().map(at -> at + "  ").orElse("") + problem.message())));
		}
	}

	static String number(long count, String word) {
		return count + " " + word + (count == 1 ? "" : "s");
	}

	/** Returns what the manifest counts, as people call it. */
	private static String word(String kind, long count) {
		String many = switch (kind) {
		case "jobs" -> "finished jobs";
		case "exclusives" -> "sets of faults that rule each other out";
		default -> kind;
		};
		return count != 1 ? many : kind.equals("families") ? "family" : many.replaceFirst("s\\b", "");
	}

	private void standing(String title, List<PackManifest.Standing> flaws) {
		if (flaws.isEmpty()) {
			return;
		}
		lines.add("");
		lines.add(manner.strong(title + " (" + flaws.size() + ")"));
		for (PackManifest.Standing flaw : flaws) {
			lines.add("  " + manner.given(flaw.at().map(at -> at + "  ").orElse("") + flaw.message()) + "  "
					+ manner.faint(manner.given(flaw.check())));
			flaw.accepted().ifPresent(accepted -> lines.add("    " + manner.given(accepted.reason()
					+ accepted.author().map(author -> " – " + author).orElse(""))));
		}
	}

	private void rules(List<Rule> rules) {
		lines.add("");
		lines.add(manner.strong("Rules (" + rules.size() + ")"));
		int width = rules.stream().mapToInt(rule -> rule.name().length()).max().orElse(0);
		for (Rule rule : rules) {
			String place = rule.span().file().isEmpty() ? "" : "  " + rule.span().file() + ":" + rule.span().line();
			lines.add("  " + manner.given(rule.name()) + " ".repeat(width - rule.name().length()) + "  "
					+ manner.given(rule.title()) + manner.faint(manner.given(place)));
		}
	}
}
