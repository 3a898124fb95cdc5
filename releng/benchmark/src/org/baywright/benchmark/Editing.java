package org.baywright.benchmark;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.concurrent.atomic.AtomicLong;

import org.baywright.analysis.Report;
import org.baywright.analysis.generate.RuleBaseGenerator;
import org.baywright.language.ide.live.Audience;
import org.baywright.language.ide.live.LiveProject;
import org.baywright.language.ide.live.Work;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;

/** How long somebody who types waits for problems, flaws and proposals. Prints one row of a table. */
public final class Editing {

	private static final int WARM = Integer.getInteger("warm", 20);
	private static final int EDITS = Integer.getInteger("edits", 100);
	private static final Duration LONGEST = Duration.ofMinutes(5);

	private final AtomicLong problemsAt = new AtomicLong();
	private final AtomicLong flawsAt = new AtomicLong();

	public static void main(String[] args) throws InterruptedException {
		int size = Integer.parseInt(args[0]);
		int topicsPerFile = Integer.parseInt(args[1]);
		new Editing().run(size, topicsPerFile);
	}

	private void run(int size, int topicsPerFile) throws InterruptedException {
		SortedMap<String, String> texts = RuleTexts.of(RuleBaseGenerator.generate(size, 50, 7).rules(), topicsPerFile);
		long start = System.nanoTime();
		RuleProject project = RuleProject.inMemory("generated");
		texts.forEach(project::update);
		LiveProject live = new LiveProject(project, Work.onThreads(), new Audience() {
			@Override
			public void problems(Snapshot snapshot) {
				problemsAt.set(System.nanoTime());
			}

			@Override
			public void flaws(Snapshot snapshot, Report report) {
				flawsAt.set(System.nanoTime());
			}

			@Override
			public void failed(Snapshot snapshot, Throwable failure) {
				throw new IllegalStateException(failure);
			}
		});
		live.awaitIdle(LONGEST);
		double opened = (System.nanoTime() - start) / 1e9;
		Snapshot snapshot = live.snapshot().orElseThrow();
		if (!snapshot.problems().isEmpty()) {
			throw new IllegalStateException("the texts are wrong: " + snapshot.problems().get(0));
		}
		List<Double> problems = new ArrayList<>();
		List<Double> flaws = new ArrayList<>();
		List<Double> proposals = new ArrayList<>();
		List<String> files = texts.keySet().stream().filter(file -> !file.equals("families.bay")).toList();
		for (int i = 0; i < WARM + EDITS; i++) {
			edit(live, files.get(i % files.size()), texts.get(files.get(i % files.size())), i, problems, flaws, proposals);
		}
		System.out.println(String.format(Locale.ROOT, "| %d | %d | %.1f s | %s | %s | %s |", snapshot.rules().rules().size(),
				texts.size(), opened, say(problems), say(flaws), say(proposals)));
		live.close();
	}

	/** Types one more sign into a rule; asks for proposals while it is not whole. */
	private void edit(LiveProject live, String file, String text, int number, List<Double> problems, List<Double> flaws,
			List<Double> proposals) throws InterruptedException {
		List<Integer> places = new ArrayList<>();
		for (int at = text.indexOf("  given "); at >= 0; at = text.indexOf("  given ", at + 1)) {
			places.add(at + "  given ".length());
		}
		int at = places.get(number * 97 % places.size());
		String part = text.substring(0, at) + "topic" + number % 20 + "_si, " + text.substring(at);
		long asked = System.nanoTime();
		live.edit(file, part);
		int found = live.read(file, services -> services.complete(file, at + part.indexOf(',', at) - at)).size();
		double proposed = (System.nanoTime() - asked) / 1e6;
		if (found == 0) {
			throw new IllegalStateException("nothing was proposed in " + file);
		}
		live.awaitIdle(LONGEST);
		long typed = System.nanoTime();
		live.edit(file, text.substring(0, at) + "topic" + number % 20 + "_sign, " + text.substring(at));
		live.awaitIdle(LONGEST);
		if (number >= WARM) {
			proposals.add(proposed);
			problems.add((problemsAt.get() - typed) / 1e6);
			flaws.add((flawsAt.get() - typed) / 1e6);
		}
	}

	private static String say(List<Double> times) {
		Collections.sort(times);
		return String.format(Locale.ROOT, "%.0f ms (%.0f ms)", times.get(times.size() / 2), times.get(times.size() * 9 / 10));
	}
}
