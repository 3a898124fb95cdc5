package org.baywright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.baywright.language.merge.Conflict;

import picocli.CommandLine.Option;

/** What is chosen where two changes do not go together. */
final class ChoiceOption {

	private final Session session;

	@Option(names = "--choose", paramLabel = "ELEMENT=ours|theirs|FILE", description = { "What to take where two changes do not go together, such as"
			+ " \"rule flat_battery=theirs\": ours, theirs, or the text in a file. May be given several times." })
	private List<String> given = List.of();

	ChoiceOption(Session session) {
		this.session = session;
	}

	Map<String, Conflict.Choice> made() {
		Map<String, Conflict.Choice> made = new TreeMap<>();
		for (String choice : given) {
			int at = choice.lastIndexOf('=');
			if (at < 0) {
				throw new CommandException(ExitCode.USAGE, "Write what to choose as ELEMENT=ours, ELEMENT=theirs or ELEMENT=FILE: " + choice);
			}
			made.put(choice.substring(0, at).strip(), choice(choice.substring(at + 1).strip()));
		}
		return made;
	}

	private Conflict.Choice choice(String word) {
		if (word.equals("ours") || word.equals("theirs")) {
			return word.equals("ours") ? Conflict.Choice.OURS : Conflict.Choice.THEIRS;
		}
		try {
			return Conflict.Choice.text(Files.readString(session.resolve(word)));
		} catch (IOException e) {
			throw new CommandException(ExitCode.FILES, "The file " + word + " cannot be read as text. Choose ours, theirs, or a file with the text of the element.");
		}
	}
}
