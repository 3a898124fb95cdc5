package org.baywright.language.ide.card;

import java.util.Map;
import java.util.Optional;
import org.baywright.language.vocabulary.Vocabulary;

/** What is said on a card in plain words where a word of the language alone would tell little. */
public final class Labels {

	private static final Map<String, String> ELEMENTS = Map.ofEntries(Map.entry("family", "Family of vehicles"), Map.entry("state", "State of the vehicle"),
			Map.entry("tool", "Tool"), Map.entry("workshop", "Workshop"), Map.entry("hazard", "Hazard"), Map.entry("module", "Control module"), Map.entry("code", "Trouble code"),
			Map.entry("sign", "Sign"), Map.entry("part", "Part"), Map.entry("exclusive", "Faults that exclude each other"), Map.entry("test", "Test"),
			Map.entry("law", "What cannot be together"), Map.entry("rule", "Rule"), Map.entry("chain", "Check points in a row"),
			Map.entry("repair", "Repair"), Map.entry("job", "Finished job"), Map.entry("review", "Review of a rule"), Map.entry("remark", "Remark"),
			Map.entry("reviewer", "Reviewer"), Map.entry("sign_off", "Sign-off"),
			Map.entry("accept", "Accept a flaw"), Map.entry("builds_on", "Build on another project"));
	/** By the element and by what the field is called after its word. */
	private static final Map<String, String> FIELDS = Map.ofEntries(Map.entry("family Family", "Kind"), Map.entry("family Has", "Fitted with"),
			Map.entry("sign Kind", "Precaution"), Map.entry("workshop Hour", "Price of an hour"), Map.entry("workshop Scan", "Reading modules"),
			Map.entry("workshop Lacks", "Tools not at hand"), Map.entry("workshop Skill", "Highest skill at hand"), Map.entry("code On", "Module"), Map.entry("module On", "Fitted in"),
			Map.entry("sign_off Agree", "How many must agree"), Map.entry("sign_off Not by", "Who does not count"),
			Map.entry("sign_off Hazard", "Who must agree on a hazard"), Map.entry("remark At", "Line it speaks of"), Map.entry("review Reply", "Answers"),
			Map.entry("remark Reply", "Answers"), Map.entry("test At", "Part it works on"), Map.entry("test Fits", "Fit for the test"), Map.entry("test Prepare", "Prepare (in words)"),
			Map.entry("test Preparation", "Wait, drive or do first"));
	/** Ways to write something that begin with no word, by the first thing that is filled in. */
	static final Map<String, String> ALTERNATIVES = Map.of("name", "named values", "word", "a number from … to …", "low", "a number from … to …");
	/** By the element and the field: what else has to be known of it. */
	private static final Map<String, String> BESIDE = Map.of("test Measures", "A test either measures or has named results.",
			"test Results", "A test either has named results or measures.");

	private Labels() {
	}

	/** Returns what the kind of element that begins with a word is called. */
	public static String element(String word) {
		return ELEMENTS.getOrDefault(word, Form.label(word));
	}

	/** Returns what a kind of element is called in a list to choose from: the word that rules have for it stands behind. */
	public static String entry(String word) {
		String title = element(word);
		return title.equalsIgnoreCase(word) ? title : title + " (" + word + ")";
	}

	/** Returns in a sentence what a kind of element is. */
	public static String explained(String word) {
		return Vocabulary.help(word).orElse("").replace("`", "");
	}

	static boolean isNamed(String word) {
		return ELEMENTS.containsKey(word);
	}

	static String field(String element, String label) {
		return FIELDS.getOrDefault(element + " " + label, label);
	}

	static String help(String element, String label, String word) {
		String help = Vocabulary.help(word).orElse("");
		return Optional.ofNullable(BESIDE.get(element + " " + label)).map(beside -> (help + " " + beside).strip()).orElse(help);
	}
}
