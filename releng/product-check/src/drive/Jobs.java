package drive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.TreeItem;

/** Plays the jobs of the command line in the window, from the complaint to the kept job, answering what the bench asks as the vehicle would. */
final class Jobs {

	private static final Pattern TITLED = Pattern.compile("\\b(\\w+)\\s+\"([^\"]+)\"");
	private static final String COMPLAINT = "What is wrong with the vehicle?";
	private static final List<String> ANSWERS = List.of("Enter", "Done", "Told", "Choose", "Hand it on", "Back to finding", "Keep the job", "Draft a rule");
	/** What the window must have said of what a job of the command line expects. */
	private static final List<String> SAID = List.of("Do the repair", "Refer to", "The repair is verified", "The repair did not put it right", "Caution: ");
	private static final int MOST = 80;

	private final Drive drive;
	private final Hands hands;
	private final Path workspace;

	/** A job as the command line plays it: what the vehicle is, what it shows by name, before and after the repair. */
	private static final class Job {
		private final List<String> bare = new ArrayList<>();
		private final List<String> otherwise = new ArrayList<>();
		private final List<String> expected = new ArrayList<>();
		private final Map<String, Deque<String>> shows = new HashMap<>();
		private final Map<String, Deque<String>> after = new HashMap<>();
		private String project;
		private String family;
		private String complaint;

		static Job of(Path file) throws IOException {
			Job job = new Job();
			for (String line : Files.readAllLines(file)) {
				if (line.startsWith("bench ")) {
					job.begin(line.split(" "));
				} else if (line.startsWith("expect ")) {
					job.expected.add(line.substring(7));
				} else if (line.startsWith("otherwise = ")) {
					job.otherwise.add(line.substring(12));
				} else if (line.startsWith("afterwards ")) {
					put(job.after, line.substring(11));
				} else if (line.contains(" = ")) {
					put(job.shows, line);
				} else if (!line.isBlank() && !line.startsWith("#") && !line.startsWith("keep ")) {
					job.bare.add(line);
				}
			}
			job.family = job.family == null ? job.bare.get(0) : job.family;
			job.complaint = job.complaint == null ? job.bare.get(1) : job.complaint;
			return job;
		}

		private void begin(String[] words) {
			project = words[1];
			for (int i = 2; i + 1 < words.length; i += 2) {
				switch (words[i]) {
				case "--vehicle" -> family = words[i + 1];
				case "--complaint" -> complaint = words[i + 1];
				default -> put(shows, words[i + 1].replace("=", " = "));
				}
			}
		}

		private static void put(Map<String, Deque<String>> into, String line) {
			String[] sides = line.split(" = ", 2);
			into.computeIfAbsent(sides[0], key -> new ArrayDeque<>()).add(sides[1]);
		}
	}

	Jobs(Drive drive, Hands hands, Path work) {
		this.drive = drive;
		this.hands = hands;
		workspace = work.resolve("empty");
	}

	void go() throws IOException {
		try (Stream<Path> files = Files.list(Path.of(System.getProperty("drive.jobs")))) {
			for (Path file : files.sorted().toList()) {
				drive.check("job: " + file.getFileName(), () -> play(Job.of(file), file.getFileName().toString().replace(".txt", "")));
			}
		}
		drive.check("plan: the complaint stays while another project is shown", this::planStays);
	}

	private void planStays() throws IOException {
		String slow = "Engine cranks slowly";
		bringIn("light-van");
		bringIn("farm-tractor");
		open("light-van", "rules-starting.bay");
		drive.show("Plan");
		hands.until("the complaints", 60, () -> hands.look(Combo.class, list -> Controls.place(list).equals("Plan") && list.indexOf(slow) >= 0).isPresent());
		Combo complaint = hands.find(Combo.class, "the complaint", list -> Controls.place(list).equals("Plan") && list.indexOf(slow) >= 0);
		if (hands.see(() -> complaint.indexOf(slow)) == 0) {
			throw new AssertionError(slow + " is chosen at the beginning anyhow");
		}
		hands.pick(complaint, slow);
		turnTo("rules-hitch.bay");
		hands.until("another project", 60, () -> complaint.indexOf(slow) < 0);
		turnTo("rules-starting.bay");
		hands.until("what was chosen", 60, () -> complaint.getText().equals(slow));
		hands.picture("plan-stays");
	}

	/** Shows a file that is open; the views show its project. */
	private void turnTo(String file) {
		hands.click(hands.find(CTabItem.class, file, tab -> tab.getText().equals(file)));
	}

	/** Opens a file that no other project has; the views show its project. */
	private void open(String project, String file) {
		TreeItem item = hands.item(drive.projects(), text -> text.equals(project));
		if (!hands.see(item::getExpanded)) {
			hands.click(item);
			hands.key("Right");
			hands.rest(500);
		}
		hands.doubleClick(hands.item(drive.projects(), text -> text.equals(file)));
		hands.rest(1000);
	}

	// ---- the project -------------------------------------------------------------------------------------------

	private void bringIn(String project) throws IOException {
		drive.window();
		if (!Files.exists(workspace.resolve(project))) {
			hands.menu("File", "Bring in an example\u2026");
			hands.until("the wizard", () -> hands.look(Button.class, button -> Hands.label(button).equals("Finish")).isPresent());
			hands.picture("example-wizard");
			org.eclipse.swt.widgets.List list = hands.find(org.eclipse.swt.widgets.List.class, "the examples", each -> each.getItemCount() > 3);
			hands.click(list);
			hands.key("Home");
			String first = project.substring(0, project.indexOf('-'));
			int at = hands.see(() -> Stream.of(list.getItems()).map(String::toLowerCase).toList().stream().map(item -> item.startsWith(first)).toList().indexOf(true));
			for (int i = 0; i < at; i++) {
				hands.key("Down");
			}
			hands.click(hands.find(Button.class, "Finish"));
			hands.until("the example", 60, () -> Files.exists(workspace.resolve(project).resolve(".project")));
			// its rules open in the editor, so the views show it
			hands.until("the bench of " + project, 60, () -> hands.says(project));
		}
		hands.rest(1500);
		drive.show("Bench");
	}

	/** Returns by each name what it is called; a name may stand for several things. */
	private Map<String, Set<String>> titles(String project) throws IOException {
		Map<String, Set<String>> titles = new HashMap<>();
		for (Path folder : List.of(workspace.resolve(project), workspace.resolve("trailer-socket"))) {
			if (Files.isDirectory(folder)) {
				try (Stream<Path> files = Files.list(folder)) {
					for (Path file : files.filter(each -> each.toString().endsWith(".bay")).toList()) {
						Matcher matcher = TITLED.matcher(Files.readString(file));
						while (matcher.find()) {
							titles.computeIfAbsent(matcher.group(1), key -> new HashSet<>()).add(matcher.group(2));
						}
					}
				}
			}
		}
		return titles;
	}

	// ---- the job -----------------------------------------------------------------------------------------------

	private void play(Job job, String name) throws IOException {
		if (job.project.equals("service-truck")) {
			bringIn("trailer-socket");
		}
		bringIn(job.project);
		Map<String, Set<String>> titles = titles(job.project);
		Set<String> called = titles.getOrDefault(job.family, Set.of(job.family));
		Combo family = hands.find(Combo.class, "the vehicle", list -> Controls.place(list).equals("Bench") && called.stream().anyMatch(title -> list.indexOf(title) >= 0));
		hands.pick(family, called.stream().filter(title -> hands.see(() -> family.indexOf(title) >= 0)).findFirst().orElseThrow());
		StringBuilder said = new StringBuilder();
		String label = "";
		for (int step = 0; step < MOST && !label.equals("Keep the job"); step++) {
			Button give = hands.find(Button.class, "what to answer", button -> ANSWERS.contains(Hands.label(button)) && button.isEnabled());
			hands.settle();
			String title = title(give);
			label = hands.see(give::getText);
			said.append(title).append('\n').append(told()).append('\n');
			hands.picture(name + "-" + step);
			if (!label.equals("Keep the job")) {
				answer(give, title, job, titles);
			}
		}
		for (String line : job.expected) {
			if (SAID.stream().anyMatch(line::startsWith) && !said.toString().contains(line)) {
				throw new AssertionError(line + " is not said in: " + said);
			}
		}
		hands.click(hands.find(Button.class, "Keep the job"));
		hands.until("it is kept", () -> hands.says("is kept in "));
	}

	private String told() {
		return hands.look(StyledText.class, text -> (text.getStyle() & SWT.READ_ONLY) != 0 && text.getText().contains("Found so far"))
				.map(text -> hands.see(text::getText)).orElse("");
	}

	private String title(Button give) {
		return hands.see(() -> {
			Composite bar = give.getParent().getParent();
			StringBuilder text = new StringBuilder();
			for (Control control : bar.getChildren()) {
				if (control instanceof Label label && label.isVisible() && (label.getStyle() & SWT.WRAP) != 0) {
					text.append(text.isEmpty() ? "" : " / ").append(label.getText());
				}
			}
			return text.toString();
		});
	}

	private void answer(Button give, String title, Job job, Map<String, Set<String>> titles) {
		Control field = hands.see(() -> {
			for (Control control : ((Composite) give.getParent().getChildren()[0]).getChildren()) {
				if (control.isVisible()) {
					return control;
				}
			}
			return give;
		});
		if (field instanceof Combo list) {
			hands.pick(list, choice(list, title, job, titles));
		} else if (field instanceof Text text) {
			hands.click(text);
			hands.type(shown(title, job, titles).orElseThrow(() -> new AssertionError("no answer to " + title)));
		}
		hands.click(give);
		hands.rest(300);
	}

	private String choice(Combo list, String title, Job job, Map<String, Set<String>> titles) {
		List<String> items = List.of(hands.see(list::getItems));
		String wanted = title.equals(COMPLAINT) ? job.complaint : shown(title, job, titles).orElse("");
		Set<String> called = titles.getOrDefault(wanted, Set.of());
		return items.stream().filter(item -> item.equals(wanted) || called.contains(item)).findFirst()
				.or(() -> job.otherwise.stream().filter(items::contains).findFirst())
				.or(() -> items.size() == 1 ? Optional.of(items.get(0)) : Optional.empty())
				.orElseThrow(() -> new AssertionError("no answer to " + title + " among " + items + ": " + wanted));
	}

	/** What the vehicle shows of what the longest title in the question is about; after the repair what it shows then. */
	private static Optional<String> shown(String question, Job job, Map<String, Set<String>> titles) {
		Map<String, Deque<String>> shows = question.contains("Expected: ") ? job.after : job.shows;
		int longest = 0;
		String name = "";
		for (String known : shows.keySet()) {
			Set<String> called = new HashSet<>(titles.getOrDefault(known, Set.of()));
			called.add(known);
			for (String title : called) {
				if (question.contains(title) && title.length() > longest) {
					longest = title.length();
					name = known;
				}
			}
		}
		Deque<String> values = shows.get(name);
		return values == null || values.isEmpty() ? Optional.empty() : Optional.of(values.size() > 1 ? values.remove() : values.peek());
	}
}
