package org.baywright.language.workspace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.testing.Meaning;
import org.baywright.language.testing.Samples;
import org.baywright.model.Problem;
import org.baywright.model.Rule;
import org.baywright.model.Severity;
import org.baywright.model.ValueSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RuleProjectTest {

	@TempDir
	Path folder;

	private void write(String file, String text) throws IOException {
		Path path = folder.resolve(file);
		Files.createDirectories(path.getParent());
		Files.writeString(path, text, StandardCharsets.UTF_8);
	}

	private static Rule rule(Snapshot snapshot, String name) {
		return snapshot.rules().rule(name).orElseThrow();
	}

	@Test
	void readsAFolderAtAnyDepthInTheOrderOfThePaths() throws IOException {
		write("b.bay", "sign b");
		write("a/z.bay", "sign z");
		write("a.bay", "sign a");
		write("notes.txt", "sign no");
		write(".hidden/h.bay", "sign hidden");
		write("target/t.bay", "sign built");
		write(".bay", "sign nameless");
		write(".c.bay", "sign dotted");
		write("D.BAY", "sign capital");
		RuleProject project = RuleProject.open(folder);
		assertEquals(List.of("D.BAY", "a.bay", "a/z.bay", "b.bay"), project.files());
		for (String file : List.of("D.BAY", "a/z.bay")) {
			assertTrue(RuleProject.isRuleFile(file), file);
		}
		for (String file : List.of("notes.txt", ".hidden/h.bay", "target/t.bay", ".bay", "a/.c.bay", "bay")) {
			assertFalse(RuleProject.isRuleFile(file), file);
		}
		assertEquals(List.of("capital", "a", "z", "b"), project.snapshot().rules().signs().stream().map(sign -> sign.name()).toList());
		assertEquals(folder.getFileName().toString(), project.name());
	}

	/** Each is told at its place; whoever does what is advised is rid of it, and nothing new is there. */
	@Test
	void picturesAreLookedAtWhereTheyLie() throws IOException {
		byte[] jpeg = { (byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xC0, 0, 8, 8, 0, 17, 0, 31, 1, (byte) 0xFF, (byte) 0xD9 };
		write("a.bay", "part p { picture \"pictures/p.png\" \"P\" fault f }\ntest t { results a, b picture \"t.jpg\" \"T\" picture \"pictures/p.png\" \"P again\" }\n");
		RuleProject project = RuleProject.open(folder);
		assertEquals(List.of("picture-missing 1", "picture-missing 2", "picture-missing 2"), pictureProblems(project));
		Files.createDirectories(folder.resolve("pictures"));
		for (Object[] step : new Object[][] { { jpeg, "picture-type" }, { "<svg/>".getBytes(StandardCharsets.UTF_8), "picture-type" }, { new byte[0], "picture-type" }, { java.util.Arrays.copyOf(png(80), 60), "picture-type" },
				{ png(1_000_001), "picture-too-large" } }) {
			Files.write(folder.resolve("pictures/p.png"), (byte[]) step[0]);
			Files.write(folder.resolve("t.jpg"), jpeg);
			project.reload("pictures/p.png");
			assertEquals(List.of(step[1] + " 1", step[1] + " 2"), pictureProblems(project));
		}
		Files.write(folder.resolve("pictures/p.png"), png(1_000_000));
		project.reload("pictures/p.png");
		assertEquals(List.of(), pictureProblems(project));
		assertEquals(List.of("a.bay"), project.files());
		Files.delete(folder.resolve("t.jpg"));
		Path outside = Files.write(folder.resolveSibling(folder.getFileName() + "-outside.jpg"), jpeg);
		Files.createSymbolicLink(folder.resolve("t.jpg"), outside);
		project.reload("t.jpg");
		assertEquals(List.of("picture-outside 2"), pictureProblems(project));
		Files.delete(outside);
	}

	@Test
	void allPicturesTogetherHaveALimit() throws IOException {
		byte[] png = png(1_000_000);
		StringBuilder text = new StringBuilder();
		for (int i = 10; i < 27; i++) {
			Files.write(folder.resolve("p" + i + ".png"), png);
			text.append("part p" + i + " { picture \"p" + i + ".png\" \"P\" fault f }\n");
		}
		write("a.bay", text.toString());
		RuleProject project = RuleProject.open(folder);
		assertEquals(List.of("picture-too-large 17"), pictureProblems(project));
		assertEquals("With this one the pictures of the project have 17 MB; together they may have at most 16 MB.", project.snapshot().problems().get(0).message());
	}

	/** Returns a PNG file of 31 by 17 points whose content is nothing; with as many bytes as asked for. */
	private static byte[] png(int size) {
		byte[] png = java.util.Arrays.copyOf(new byte[] { (byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n', 0, 0, 0, 13, 'I', 'H', 'D', 'R', 0, 0, 0, 31, 0, 0, 0, 17 }, size);
		System.arraycopy(new byte[] { 'I', 'E', 'N', 'D', (byte) 0xAE, 0x42, 0x60, (byte) 0x82 }, 0, png, size - 8, 8);
		return png;
	}

	private static List<String> pictureProblems(RuleProject project) {
		return project.snapshot().problems().stream().map(problem -> problem.id() + " " + problem.span().line()).toList();
	}

	@Test
	void readsOneFileAsAProject() throws IOException {
		write("a.bay", "sign a");
		write("b.bay", "sign b");
		RuleProject project = RuleProject.open(folder.resolve("a.bay"));
		assertEquals("a", project.name());
		write("D.BAY", "sign d");
		assertEquals("D", RuleProject.open(folder.resolve("D.BAY")).name());
		assertEquals(List.of("a.bay"), project.files());
	}

	@Test
	void refusesWhatIsNotThere() {
		assertThrows(NoSuchFileException.class, () -> RuleProject.open(folder.resolve("nowhere")));
	}

	@Test
	void anEmptyFolderIsAProjectWithoutRules() throws IOException {
		Snapshot snapshot = RuleProject.open(folder).snapshot();
		assertEquals("", Meaning.of(snapshot.rules()));
		assertEquals(List.of(), snapshot.problems());
	}

	@Test
	void bytesThatAreNoTextAreReportedWhereTheyStand() throws IOException {
		byte[] text = "sign a\nsign b \"x\"\n".getBytes(StandardCharsets.UTF_8);
		text[15] = (byte) 0xE9; // the x, as an older encoding writes an e with an accent
		Files.write(folder.resolve("a.bay"), text);
		Snapshot snapshot = RuleProject.open(folder).snapshot();
		assertEquals(1, snapshot.problems().size());
		Problem problem = snapshot.problems().get(0);
		assertEquals("not-utf8", problem.id());
		assertEquals("a.bay:2:9", problem.span().toString());
		assertEquals(2, snapshot.rules().signs().size());
	}

	@Test
	void bytesCutOffAtTheEndAreReportedToo() throws IOException {
		Files.write(folder.resolve("a.bay"), new byte[] { 's', 'i', 'g', 'n', ' ', 'a', ' ', '/', '/', (byte) 0xC3 });
		assertEquals(List.of("not-utf8"),
				RuleProject.open(folder).snapshot().problems().stream().map(Problem::id).toList());
	}

	@Test
	void aByteOrderMarkIsNoPartOfTheText() throws IOException {
		write("a.bay", "\uFEFFsign a");
		Snapshot snapshot = RuleProject.open(folder).snapshot();
		assertEquals(List.of(), snapshot.problems());
		assertEquals("a.bay:1:6", snapshot.rules().signs().get(0).span().toString());
	}

	@Test
	void linesMayEndInAnyWay() throws IOException {
		write("a.bay", "sign a\r\nsign b\rsign c\nsign d");
		assertEquals(List.of("a.bay:1:6", "a.bay:2:6", "a.bay:3:6", "a.bay:4:6"), RuleProject.open(folder).snapshot().rules()
				.signs().stream().map(sign -> sign.span().toString()).toList());
	}

	@Test
	void aSpanTellsLinesColumnsAndCharacters() {
		RuleProject project = RuleProject.inMemory("one");
		project.update("a.bay", "\n  sign a_sign \"x\"");
		assertEquals(new org.baywright.model.Span("a.bay", 2, 8, 2, 14, 8, 6),
				project.snapshot().rules().signs().get(0).span());
	}

	@Test
	void tellsTheListenerHowFarItIs() throws IOException {
		write("a.bay", "sign a");
		write("b.bay", "sign b");
		List<String> heard = new ArrayList<>();
		RuleProject.open(folder, new LoadListener() {
			@Override
			public void fileRead(String file, int done, int total) {
				heard.add(file + " " + done + "/" + total);
			}
		});
		assertEquals(List.of("a.bay 1/2", "b.bay 2/2"), heard);
	}

	@Test
	void readingCanBeCancelled() throws IOException {
		write("a.bay", "sign a");
		assertThrows(CancellationException.class, () -> RuleProject.open(folder, new LoadListener() {
			@Override
			public boolean isCancelled() {
				return true;
			}
		}));
	}

	@Test
	void aSnapshotDoesNotChange() {
		RuleProject project = RuleProject.inMemory("one");
		project.update("a.bay", "sign a");
		Snapshot before = project.snapshot();
		assertSame(before, project.snapshot());
		project.update("a.bay", "sign a");
		assertSame(before, project.snapshot());
		project.update("a.bay", "sign b");
		assertEquals("a", before.rules().signs().get(0).name());
		assertEquals("b", project.snapshot().rules().signs().get(0).name());
		assertTrue(project.snapshot().version() > before.version());
		assertThrows(UnsupportedOperationException.class, () -> before.sources().clear());
	}

	@Test
	void aTextThatCannotBeReadLeavesTheOldOne() {
		RuleProject project = RuleProject.inMemory("test");
		project.update("a.bay", "sign a\n");
		assertThrows(NullPointerException.class, () -> project.update("a.bay", null));
		assertEquals("sign a\n", project.source("a.bay").orElseThrow().text());
		project.update("a.bay", "sign b\n");
		assertEquals(List.of(), project.snapshot().problems());
	}

	@Test
	void theUnitOfATestReachesRulesInOtherFiles() {
		RuleProject project = Samples.tarnInMemory();
		Snapshot before = project.snapshot();
		String findings = before.sources().get("findings.bay");
		project.update("findings.bay", findings.replaceFirst("measures V 0 .. 18 step 0.1", "measures mV 0 .. 18000 step 100"));
		Snapshot after = project.snapshot();
		assertEquals(List.of(), after.problems());
		assertEquals("12400", low(rule(after, "flat_battery")));
		assertEquals("12.4", low(rule(before, "flat_battery")));
	}

	private static String low(Rule rule) {
		ValueSet.Band met = (ValueSet.Band) rule.outcomes().get(0).values().orElseThrow();
		return met.low().orElseThrow().toPlainString();
	}

	@Test
	void anEditTranslatesOnlyWhatItReaches() {
		RuleProject project = Samples.tarnInMemory();
		Snapshot before = project.snapshot();
		String findings = before.sources().get("findings.bay");

		// a blank line moves every test but changes no meaning
		project.update("findings.bay", "\n" + findings);
		Snapshot moved = project.snapshot();
		assertSame(rule(before, "flat_battery"), rule(moved, "flat_battery"));
		assertNotSame(before.rules().test("rest_voltage").orElseThrow(), moved.rules().test("rest_voltage").orElseThrow());

		// the lift's test matters to the lift's rules only
		project.update("findings.bay", findings.replace("measures V 0 .. 30", "measures V 0 .. 32"));
		Snapshot lift = project.snapshot();
		assertSame(rule(before, "flat_battery"), rule(lift, "flat_battery"));
		assertNotSame(rule(before, "lift_silent"), rule(lift, "lift_silent"));
	}

	@Test
	void aNameThatGoesLeavesAProblemAndTakesItAwayWhenItComesBack() {
		RuleProject project = Samples.tarnInMemory();
		String findings = project.snapshot().sources().get("findings.bay");
		project.remove("findings.bay");
		Snapshot without = project.snapshot();
		assertTrue(without.dropped().contains("rule flat_battery"));
		assertTrue(without.problems().stream().anyMatch(problem -> problem.message().contains("`rest_voltage`")));
		assertFalse(without.sources().containsKey("findings.bay"));
		project.update("findings.bay", findings);
		assertEquals(List.of(), project.snapshot().problems());
		assertEquals(List.of(), project.snapshot().dropped());
	}

	private static final String CHAIN = """
			family tarn { trait engine : diesel, petrol }
			sign no_crank
			part battery { fault flat fault worn }
			part sensor { fault wrong }
			test rest { measures V 0 .. 18 step 0.1 }
			test load { results pass, fail }
			test difference { measures V 0 .. 5 step 0.1 }
			law "Flat cannot crank" : when rest below 9 V then no_crank
			rule at_rest { given no_crank run rest on below 12 V : confirms battery.flat on at_least 12 V : clears battery.flat }
			rule under_load { given battery.flat cleared run load on fail : confirms battery.worn on pass : clears battery.worn }
			rule compared { given battery.worn cleared run difference on above 1 V : confirms sensor.wrong on at_most 1 V : proves nothing }
			rule rest_of_it { given no_crank unexplained then refers "the electrician" }
			rule cranks { given no_crank absent, rest below 8 V then clears battery.flat }
			rule worn_out { given rest below 8 V run load on fail : confirms battery.flat }
			repair charge { fixes battery.flat, battery.worn, sensor.wrong steps "Do." verify { repeat what confirmed } }
			job "One" { on tarn with engine diesel found no_crank, rest 13 V, load fail was battery.worn }
			""";

	/** What is told of a text, each as its check, in the order of the text. */
	private static List<String> told(String text) {
		RuleProject project = RuleProject.inMemory("chain");
		project.update("chain.bay", text);
		Snapshot snapshot = project.snapshot();
		List<String> told = new ArrayList<>();
		snapshot.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).forEach(problem -> told.add(problem.id()));
		new Analysis().check(snapshot.rules(), Listener.NONE).flaws().forEach(flaw -> told.add(flaw.check()));
		return told;
	}

	@Test
	void aWrongUnitIsToldAloneWithoutWhatFollowsFromIt() {
		String right = CHAIN.replace("rule worn_out", "// ");
		assertEquals(List.of("dead-rule"), told(right), "rule cranks can never apply by the law");
		assertEquals(List.of("unit-mismatch", "dead-rule"), told(right.replace("on at_least 12 V", "on at_least 12 Ohm")));
		assertEquals(List.of("unknown-unit"), told(right.replace("measures V 0 .. 18", "measures Volts 0 .. 18")));
	}

	@Test
	void whatALawForbidsThatIsLeftOutIsNotTold() {
		String right = CHAIN.replace("rule under_load", "// ").replace("rule compared", "// ");
		String wrong = right.replace("rest below 9 V", "rest below 9 Ohm");
		assertEquals(false, told(right).contains("contradiction"), told(right).toString());
		assertEquals(false, told(wrong).contains("contradiction"), told(wrong).toString());
		assertEquals(true, told(right.replace("law \"Flat", "// ")).contains("contradiction"));
	}

	@Test
	void aBetterNameElsewhereImprovesTheAdvice() {
		RuleProject project = RuleProject.inMemory("one");
		project.update("a.bay", "rule r { given lamp_drak then proves nothing }");
		assertEquals("Define it, or correct the name.", advice(project));
		project.update("b.bay", "sign lamp_dark");
		assertEquals("Did you mean `lamp_dark`?", advice(project));
	}

	private static String advice(RuleProject project) {
		return project.snapshot().problems().stream().filter(problem -> problem.id().equals("unknown-name")).findFirst()
				.orElseThrow().advice();
	}

	@Test
	void theFirstOfTwoNamesHolds() {
		RuleProject project = RuleProject.inMemory("one");
		project.update("b.bay", "sign s \"first\"");
		project.update("c.bay", "sign s \"second\"");
		assertEquals("first", project.snapshot().rules().sign("s").orElseThrow().title());
		assertEquals("c.bay:1:6", project.snapshot().problems().get(0).span().toString());
		project.update("a.bay", "test s { results x, y }");
		assertEquals(List.of("b.bay:1:6", "c.bay:1:6"),
				project.snapshot().problems().stream().map(problem -> problem.span().toString()).toList());
	}

	@Test
	void filesAreReadAgainFromDisk() throws IOException {
		write("a.bay", "sign a");
		write("b.bay", "sign b");
		RuleProject project = RuleProject.open(folder);
		write("a.bay", "sign c");
		Files.delete(folder.resolve("b.bay"));
		project.reload("a.bay");
		project.reload("b.bay");
		assertEquals(List.of("a.bay"), project.files());
		assertEquals("c", project.snapshot().rules().signs().get(0).name());
	}
}
