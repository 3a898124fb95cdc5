package org.baywright.cli;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import picocli.CommandLine.Option;

/** What is chosen where two changes do not go together. */
final class ChoiceOption {

	@Option(names = "--choose", paramLabel = "ELEMENT=ours|theirs|FILE", description = { "What to take where two changes do not go together, such as"
			+ " \"rule flat_battery=theirs\": ours, theirs, or the text in a file. May be given several times." })
	private List<String> given = List.of();

	/** Returns what was chosen for each element. */
	Map<String, String> made() {
		Map<String, String> made = new TreeMap<>();
		for (String choice : given) {
			int at = choice.lastIndexOf('=');
			if (at < 0) {
				throw new CommandException(ExitCode.USAGE, "Write what to choose as ELEMENT=ours, ELEMENT=theirs or ELEMENT=FILE: " + choice);
			}
			made.put(choice.substring(0, at).strip(), choice.substring(at + 1).strip());
		}
		return made;
	}
}
