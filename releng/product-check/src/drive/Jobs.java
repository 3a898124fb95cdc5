package drive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Plays whole jobs on the bench, from the complaint to the kept job, answering what it asks as the vehicle would. */
final class Jobs {

	private static final Pattern TITLED = Pattern.compile("^\\s*(sign|test|code)\\s+(\\w+)\\s+\"([^\"]+)\"", Pattern.MULTILINE);
	private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(?:\\.[0-9]+)?");
	private static final List<String> ANSWERS = List.of("Enter", "Done", "Told", "Choose", "Hand it on", "Back to finding", "Keep the job", "Draft a rule");
	private static final int MOST = 60;

	private final Drive drive;
	private final Hands hands;
	private final Path workspace;

	/**
	 * A vehicle with what it shows.
	 *
	 * @param shows values by the names of signs, tests and codes; what is not named is absent
	 * @param end what the bench must say at the end of finding
	 */
	record Job(String project, String family, String complaint, Map<String, String> shows, String end) {
	}

	Jobs(Drive drive, Hands hands, Path work) {
		this.drive = drive;
		this.hands = hands;
		workspace = work.resolve("empty");
	}

	void go() {
		drive.check("job: passed on by three workshops", () -> play(new Job("light-van", "Quillane Bord S panel van", "Engine cranks slowly",
				Map.of("rest_voltage", "12.6", "load_test", "pass", "cranking_voltage", "10.8", "post_drop", "40", "starter_feed_drop", "0.31", "engine_ground_drop", "0.74"),
				"Engine strap has high resistance")));
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
			hands.until("the example", 60, () -> Files.exists(workspace.resolve(project).resolve("tests.bay")));
			// its rules open in the editor, so the views show it
			hands.until("the bench of " + project, 60, () -> hands.says(project));
		}
		hands.rest(1500);
		drive.show("Bench");
	}

	private Map<String, String> titles(String project) throws IOException {
		Map<String, String> titles = new HashMap<>();
		try (Stream<Path> files = Files.list(workspace.resolve(project))) {
			for (Path file : files.filter(each -> each.toString().endsWith(".bay")).toList()) {
				Matcher matcher = TITLED.matcher(Files.readString(file));
				while (matcher.find()) {
					titles.put(matcher.group(3), matcher.group(2));
				}
			}
		}
		return titles;
	}

	// ---- the job -----------------------------------------------------------------------------------------------

	private void play(Job job) throws IOException {
		bringIn(job.project());
		Map<String, String> titles = titles(job.project());
		Combo family = hands.find(Combo.class, "the vehicle", list -> list.indexOf(job.family()) >= 0);
		hands.until("the vehicle", 60, () -> hands.see(family::isEnabled));
		hands.pick(family, job.family());
		List<String> asked = new ArrayList<>();
		String said = "";
		for (int step = 0; step < MOST; step++) {
			Button give = hands.find(Button.class, "what to answer", button -> ANSWERS.contains(Hands.label(button)) && button.isEnabled());
			hands.settle();
			String title = title(give);
			String label = hands.see(give::getText);
			hands.picture("job-" + step);
			asked.add(title + " | " + label);
			if (label.equals("Keep the job")) {
				said = told();
				break;
			}
			answer(give, title, job, titles);
		}
		drive.note("asked: " + String.join("; ", asked));
		if (!said.contains(job.end())) {
			throw new AssertionError("the end is not " + job.end() + ": " + said + "; asked: " + asked);
		}
		hands.click(hands.find(Button.class, "Keep the job"));
		hands.until("it is kept", () -> hands.says("is kept in "));
	}

	private String told() {
		StyledText told = hands.find(StyledText.class, "what the bench tells", text -> (text.getStyle() & SWT.READ_ONLY) != 0 && text.getText().contains("So far:"));
		return hands.see(told::getText);
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

	private void answer(Button give, String title, Job job, Map<String, String> titles) {
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
			hands.type(number(title, job, titles));
		}
		hands.click(give);
		hands.rest(300);
	}

	private String choice(Combo list, String title, Job job, Map<String, String> titles) {
		List<String> items = List.of(hands.see(list::getItems));
		String wanted = title.equals("What is wrong with the vehicle?") ? job.complaint() : title.contains("Expected: ") ? title.replaceAll(".*Expected: ", "") : shown(title, job, titles);
		return items.stream().filter(item -> item.equalsIgnoreCase(wanted.replace('_', ' ')) || item.equals(wanted)).findFirst()
				.orElseGet(() -> items.stream().filter(item -> wanted.isEmpty() && (item.equals("absent") || item.equals("answers"))).findFirst()
						.orElseThrow(() -> new AssertionError("no answer to " + title + " among " + items + ": " + wanted)));
	}

	private String number(String title, Job job, Map<String, String> titles) {
		String wanted = shown(title, job, titles);
		if (title.contains("Expected: ")) {
			Matcher matcher = NUMBER.matcher(title.replaceAll(".*Expected: ", ""));
			return title.contains("below") || title.contains("at most") ? "0" : matcher.find() ? matcher.group() : "";
		} else if (wanted.isEmpty()) {
			throw new AssertionError("no answer to " + title);
		}
		return wanted;
	}

	/** What the vehicle shows of what the longest title in the question is about; the empty text if nobody said. */
	private static String shown(String question, Job job, Map<String, String> titles) {
		return titles.keySet().stream().filter(question::contains).max((a, b) -> Integer.compare(a.length(), b.length())).map(titles::get)
				.map(name -> job.shows().getOrDefault(name, "")).orElse("");
	}
}
