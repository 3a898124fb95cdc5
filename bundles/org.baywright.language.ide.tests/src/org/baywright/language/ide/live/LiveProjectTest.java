package org.baywright.language.ide.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.ProblemKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LiveProjectTest {

	private static final Duration LONG = Duration.ofSeconds(30);
	private static final String FILE = Cursor.NAMES;

	/** Writes down what it hears. */
	private static final class Heard implements Audience {

		private final List<String> calls = Collections.synchronizedList(new ArrayList<>());
		private volatile long newest;
		private volatile List<String> flaws = List.of();
		private volatile boolean outOfOrder;

		private void call(String call, Snapshot snapshot) {
			outOfOrder |= snapshot.version() < newest;
			newest = snapshot.version();
			calls.add(call);
		}

		@Override
		public void problems(Snapshot snapshot) {
			call("problems " + snapshot.problems().size(), snapshot);
		}

		@Override
		public void flaws(Snapshot snapshot, Report report) {
			call("flaws", snapshot);
			flaws = ids(report);
		}

		@Override
		public void failed(Snapshot snapshot, Throwable failure) {
			call("failed " + failure.getMessage(), snapshot);
			flaws = List.of();
		}
	}

	private static List<String> ids(Report report) {
		return report.flaws().stream().map(Flaw::id).toList();
	}

	private static List<String> fresh(String text) {
		RuleProject project = RuleProject.inMemory("fresh");
		project.update(FILE, text);
		return ids(new Analysis().check(project.snapshot().rules(), Listener.NONE));
	}

	private static RuleProject project() {
		RuleProject project = RuleProject.inMemory("live");
		project.update(FILE, Cursor.COMMON);
		return project;
	}

	private static LiveProject live(Heard heard, Supplier<Checker> checkers) {
		return new LiveProject(new EditorServices(project(), Cursor.CLOCK), Work.onThreads(), heard, checkers);
	}

	@Test
	void problemsFirstThenFlaws() throws InterruptedException {
		Heard heard = new Heard();
		try (LiveProject live = live(heard, Checker::proving)) {
			assertTrue(live.awaitIdle(LONG));
			assertEquals(List.of("problems 0", "flaws"), heard.calls);
			assertEquals(fresh(Cursor.COMMON), heard.flaws);
			live.edit(FILE, Cursor.COMMON.replace("run lamp", "run lam"));
			assertTrue(live.awaitIdle(LONG));
			assertEquals("problems 1", heard.calls.get(2));
			assertTrue(live.report().isPresent());
		}
	}

	/** Nobody says that the other project has changed: it is looked at now and then. */
	@Test
	void aChangeOfWhatIsBuiltOnIsSeen(@org.junit.jupiter.api.io.TempDir java.nio.file.Path shop) throws java.io.IOException, InterruptedException {
		java.nio.file.Path other = java.nio.file.Files.createDirectories(shop.resolve("other")).resolve("o.bay");
		java.nio.file.Files.writeString(other, Cursor.COMMON);
		RuleProject project = RuleProject.unread(java.nio.file.Files.createDirectories(shop.resolve("van")));
		project.update(FILE, "builds_on \"../other\"\nsign lamp_odd \"Odd\"\n");
		Heard heard = new Heard();
		try (LiveProject live = new LiveProject(new EditorServices(project, Cursor.CLOCK), Work.onThreads(), heard, Checker::proving)) {
			assertTrue(live.awaitIdle(LONG));
			assertEquals(List.of("problems 1", "flaws"), List.copyOf(heard.calls));
			java.nio.file.Files.writeString(other, Cursor.COMMON + "sign lamp_odd\n");
			for (int i = 0; i < 200 && heard.calls.size() < 4; i++) {
				Thread.sleep(50);
			}
			assertEquals(List.of("problems 1", "flaws", "problems 2", "flaws"), List.copyOf(heard.calls));
			assertTrue(live.snapshot().orElseThrow().problems().stream().anyMatch(problem -> problem.kind() == ProblemKind.DUPLICATE_NAME));
			java.nio.file.Files.delete(other);
			for (int i = 0; i < 200 && heard.calls.size() < 6; i++) {
				Thread.sleep(50);
			}
			assertEquals(List.of(ProblemKind.BUILDS_ON_MISSING), live.snapshot().orElseThrow().problems().stream().map(problem -> problem.kind()).toList());
		}
		assertTrue(!heard.outOfOrder);
	}

	/** An editor opens a file with another text than the disk's while the folder is read, and asks at once. */
	@Test
	void whatIsOpenedWhileTheFolderIsReadIsNotReplacedByTheDisk(@org.junit.jupiter.api.io.TempDir java.nio.file.Path folder)
			throws java.io.IOException, InterruptedException {
		java.nio.file.Files.writeString(folder.resolve("a.bay"), "sign a \"A\"\n");
		java.nio.file.Files.writeString(folder.resolve("b.bay"), "sign on_disk \"B\"\n");
		List<Work.Task> tasks = new ArrayList<>();
		Work later = (title, task) -> tasks.add(task);
		RuleProject project = RuleProject.unread(folder);
		try (LiveProject live = new LiveProject(new EditorServices(project, Cursor.CLOCK), later, Audience.NONE, Checker::proving)) {
			String opened = "sign opened \"B\"\n";
			live.reload("b.bay");
			AtomicBoolean asked = new AtomicBoolean();
			// the reader is between two files when the editor comes
			live.read("a.bay", services -> true);
			live.reload(List.of("a.bay", "b.bay"));
			Thread reader = new Thread(() -> tasks.get(0).run(new Unwatched()));
			synchronized (project) {
				reader.start();
				while (reader.getState() != Thread.State.BLOCKED) {
					Thread.onSpinWait();
				}
				live.edit("b.bay", opened);
				asked.set(live.read("b.bay", services -> services.project().source("b.bay").orElseThrow().text().equals(opened)));
			}
			reader.join(LONG.toMillis());
			assertTrue(asked.get());
			assertEquals(opened, project.source("b.bay").orElseThrow().text());
		}
	}

	@Test
	void afterAFloodOfEditsTheFlawsAreThoseOfAFreshCheck() throws InterruptedException {
		Heard heard = new Heard();
		try (LiveProject live = live(heard, Checker::proving)) {
			for (int i = 0; i < 500; i++) {
				live.edit(FILE, Cursor.COMMON + "sign s" + i + " \"S\"\n" + "rule r" + i + " { given s" + i);
			}
			String last = Cursor.COMMON.replace("lit  : clears", "lit  : confirms") + "sign smoke \"Smoke\"\n";
			live.edit(FILE, last);
			assertTrue(live.awaitIdle(LONG));
			assertEquals(fresh(last), heard.flaws);
			assertFalse(heard.outOfOrder);
			assertTrue(heard.calls.size() < 500, "what nobody waits for is not read");
		}
	}

	@Test
	void aFailedCheckLeavesNothingStale() throws InterruptedException {
		Heard heard = new Heard();
		AtomicBoolean fails = new AtomicBoolean();
		AtomicInteger made = new AtomicInteger();
		try (LiveProject live = live(heard, () -> {
			made.incrementAndGet();
			Checker proving = Checker.proving();
			return (rules, listener) -> {
				if (fails.get()) {
					throw new IllegalStateException("broken");
				}
				return proving.check(rules, listener);
			};
		})) {
			live.awaitIdle(LONG);
			assertFalse(heard.flaws.isEmpty());
			fails.set(true);
			live.edit(FILE, Cursor.COMMON + "\n");
			live.awaitIdle(LONG);
			assertEquals(List.of(), heard.flaws);
			assertEquals("failed broken", heard.calls.get(heard.calls.size() - 1));
			assertEquals(Optional.empty(), live.report());
			fails.set(false);
			live.checkAgain();
			live.awaitIdle(LONG);
			assertEquals(fresh(Cursor.COMMON), heard.flaws);
			assertEquals(2, made.get(), "what a failed checker remembers is not trusted");
		}
	}

	@Test
	void anEditStopsARunningCheck() throws InterruptedException {
		Heard heard = new Heard();
		CountDownLatch began = new CountDownLatch(1);
		AtomicInteger stopped = new AtomicInteger();
		try (LiveProject live = live(heard, () -> {
			Checker proving = Checker.proving();
			return (rules, listener) -> {
				if (began.getCount() > 0) {
					began.countDown();
					while (!listener.isCancelled()) {
						Thread.onSpinWait();
					}
					stopped.incrementAndGet();
					throw new CancellationException();
				}
				return proving.check(rules, listener);
			};
		})) {
			began.await();
			live.edit(FILE, Cursor.COMMON + "sign smoke\n");
			assertTrue(live.awaitIdle(LONG));
			assertEquals(1, stopped.get());
			assertEquals(List.of("problems 0", "problems 0", "flaws"), heard.calls);
		}
	}

	@Test
	void aCheckThatSomebodyStopsIsToldAsFailed() throws InterruptedException {
		Heard heard = new Heard();
		Work stopping = (title, task) -> Work.onThreads().begin(title, progress -> task.run(new Work.Progress() {
			@Override
			public void done(int done, int total) {
				progress.done(done, total);
			}

			@Override
			public boolean isCancelled() {
				return true;
			}
		}));
		try (LiveProject live = new LiveProject(project(), stopping, heard)) {
			assertTrue(live.awaitIdle(LONG));
			assertEquals(List.of("problems 0", "failed null"), heard.calls);
		}
	}

	@Test
	void aQuestionSeesTheNewestText() throws InterruptedException {
		try (LiveProject live = live(new Heard(), Checker::proving)) {
			for (int i = 0; i < 50; i++) {
				String name = "sign" + i;
				live.edit("new.bay", "sign " + name);
				assertEquals(name, live.read("new.bay", services -> services.outline("new.bay").get(0).label()));
			}
			live.awaitIdle(LONG);
		}
	}

	@Test
	void filesOnDisk(@TempDir Path folder) throws IOException, InterruptedException {
		Files.writeString(folder.resolve("a.bay"), "sign a");
		try (LiveProject live = new LiveProject(RuleProject.open(folder), Work.onThreads(), Audience.NONE)) {
			live.edit("a.bay", "sign b");
			live.awaitIdle(LONG);
			assertEquals("b", live.snapshot().orElseThrow().rules().signs().get(0).name());
			live.reload("a.bay");
			live.awaitIdle(LONG);
			assertEquals("a", live.snapshot().orElseThrow().rules().signs().get(0).name());
			live.remove("a.bay");
			live.awaitIdle(LONG);
			assertEquals(List.of(), live.snapshot().orElseThrow().rules().signs());
		}
	}

	@Test
	void nothingIsToldAfterTheEnd() throws InterruptedException {
		Heard heard = new Heard();
		LiveProject live = live(heard, Checker::proving);
		live.awaitIdle(LONG);
		int calls = heard.calls.size();
		live.close();
		live.edit(FILE, "sign x");
		Thread.sleep(50);
		assertEquals(calls, heard.calls.size());
	}

	/** Edits from several threads while others ask; in the end all agree. */
	@Test
	void manyThreads() throws InterruptedException {
		Heard heard = new Heard();
		RuleProject project = Samples.inMemory(Samples.texts(Samples.project("light-van")));
		List<String> files = project.files();
		try (LiveProject live = new LiveProject(project, Work.onThreads(), heard)) {
			live.awaitIdle(LONG);
			List<String> before = heard.flaws;
			List<Thread> threads = new ArrayList<>();
			List<Throwable> failures = Collections.synchronizedList(new ArrayList<>());
			for (int t = 0; t < 4; t++) {
				int number = t;
				Thread thread = new Thread(() -> {
					String file = files.get(number);
					String text = Samples.texts(Samples.project("light-van")).get(file);
					for (int i = 0; i < 20; i++) {
						live.edit(file, text.substring(0, text.length() * i / 20));
						live.read(file, services -> services.complete(file, 10));
						live.edit(file, text);
					}
				});
				thread.setUncaughtExceptionHandler((where, failure) -> failures.add(failure));
				threads.add(thread);
				thread.start();
			}
			for (Thread thread : threads) {
				thread.join();
			}
			assertTrue(live.awaitIdle(LONG));
			assertEquals(List.of(), failures);
			assertEquals(before, heard.flaws);
			assertFalse(heard.outOfOrder);
		}
	}
}
