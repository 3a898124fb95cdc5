package org.baywright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A job that is played on the bench, written as a file of lines:
 * <ul>
 * <li>{@code # ...} is a comment,</li>
 * <li>{@code bench PROJECT --vehicle ...} begins it, as on the command line,</li>
 * <li>{@code name = value} is what the vehicle shows whenever it is asked for, and {@code afterwards name = value} what it shows
 * in a verification; with several lines for one name the first time, the second time, and so on, and the last ever after,</li>
 * <li>{@code otherwise = value} is what is chosen, where it can be, for all that the job does not name; with several lines the first
 * that can be,</li>
 * <li>{@code expect ...} is what must be told, in this order,</li>
 * <li>any other line is the answer to the next question that neither what the vehicle shows nor the word done answers.</li>
 * </ul>
 *
 * @param arguments of the command, the project second
 * @param shows what the vehicle shows by name, each in its order
 * @param answers to all other questions
 * @param expected what must be told
 */
record PlayedJob(List<String> arguments, Map<String, Deque<String>> shows, Deque<String> answers, List<String> expected) {

	private static final Pattern SHOWN = Pattern.compile("((?:afterwards )?[a-z_0-9]+) = (.+)");
	private static final Pattern ASKED = Pattern.compile("(?m)^Answer(?: \\(([^)]+)\\))?:(.*)$");

	static PlayedJob of(Path file) throws IOException {
		PlayedJob job = new PlayedJob(new ArrayList<>(), new LinkedHashMap<>(), new ArrayDeque<>(), new ArrayList<>());
		for (String line : Files.readAllLines(file)) {
			Matcher shown = SHOWN.matcher(line);
			if (line.startsWith("bench ")) {
				job.arguments.addAll(List.of(line.split(" ")));
			} else if (line.startsWith("expect ")) {
				job.expected.add(line.substring("expect ".length()));
			} else if (shown.matches()) {
				job.shows.computeIfAbsent(shown.group(1), name -> new ArrayDeque<>()).add(shown.group(2));
			} else if (!line.isBlank() && !line.startsWith("#")) {
				job.answers.add(line);
			}
		}
		return job;
	}

	String project() {
		return arguments.get(1);
	}

	/** Returns the name under which it is kept. */
	String name() {
		return answers.getLast().substring("keep ".length());
	}

	/**
	 * Answers the last question of what was told.
	 *
	 * @throws AssertionError if the job has no answer
	 */
	String answer(String told) {
		Matcher asked = ASKED.matcher(told);
		String name = null;
		String how = "";
		while (asked.find()) {
			name = asked.group(1);
			how = asked.group(2).strip();
		}
		boolean verification = told.contains("\nExpected: ");
		Deque<String> values = name == null ? null : shows.get(verification ? "afterwards " + name : name);
		if (values != null) {
			return values.size() > 1 ? values.removeFirst() : values.getFirst();
		} else if (how.startsWith("done")) {
			return "done";
		} else if (name != null) {
			return shows.getOrDefault("otherwise", new ArrayDeque<>()).stream().filter(value -> Pattern.compile("(?m)^  [0-9]+ " + value).matcher(told).find()).findFirst()
					.orElseThrow(() -> new AssertionError("the job does not name what is asked here:\n" + told));
		} else if (answers.isEmpty()) {
			throw new AssertionError("the job has no answer to:\n" + told);
		}
		return answers.removeFirst();
	}
}
