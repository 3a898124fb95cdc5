package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TimeZone;
import java.util.stream.Stream;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Report;
import org.baywright.model.Acceptance;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Sign;
import org.baywright.model.Span;
import org.baywright.pack.manifest.PackException;
import org.baywright.pack.manifest.PackManifest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PackWriterTest {

	private static final Span PLACE = new Span("power/battery.bay", 7, 3, 7, 9, 100, 6);

	static Flaw flaw(String id, Severity severity) {
		return new Flaw(id, id.substring(0, id.indexOf(':')), severity, PLACE, "One plain sentence.", List.of(),
				new Evidence.Text(), List.of("Tarn T3", "Lamp: dark"), "0123abcd", List.of(), Optional.empty());
	}

	/** A report that no check made, so that the bytes of its pack do not change when a check does. */
	static PackContents fixed(Flaw... flaws) {
		return new PackContents(Tarn.rules(), new Report(List.of(flaws), List.of(), List.of("gap", "circle"), 1, 1),
				List.of(), "9.9.9");
	}

	@Test
	void refusesWhileAnErrorStandsAndNamesIt() {
		Flaw error = flaw("contradiction:flat", Severity.ERROR);
		PackRefused refused = assertThrows(PackRefused.class,
				() -> PackWriter.bytes(fixed(flaw("gap:x", Severity.WARNING), error)));
		assertEquals(List.of(error), refused.flaws());
		assertEquals("No pack was made, since an error stands.", refused.getMessage());
	}

	@Test
	void refusesWhileTheTextIsWrong() {
		Problem wrong = new Problem(ProblemKind.UNKNOWN_NAME, PLACE, "There is no sign no_cranc.", "");
		PackContents contents = new PackContents(Tarn.rules(), fixed().report(), List.of(wrong, wrong), "9.9.9");
		PackRefused refused = assertThrows(PackRefused.class, () -> PackWriter.bytes(contents));
		assertEquals(List.of(wrong, wrong), refused.problems());
		assertEquals("No pack was made, since 2 errors stand.", refused.getMessage());
	}

	@Test
	void refusesANameThatStandsForTwo() {
		RuleBase.Builder base = new Tarn().builder();
		base.signs.add(base.signs.get(1));
		PackContents contents = new PackContents(base.build(), fixed().report(), List.of(), "9.9.9");
		PackException wrong = assertThrows(PackException.class, () -> PackWriter.bytes(contents));
		assertEquals("The rules define sign stalls twice.", wrong.getMessage());
	}

	@Test
	void carriesWhatStandsWithTheAuthorsReason() throws PackException {
		Flaw open = flaw("gap:x", Severity.WARNING);
		Flaw accepted = flaw("gap:y", Severity.WARNING)
				.accept(new Acceptance("gap:y@0123abcd", "It is on order.", Optional.of("A. Author"), Optional.empty(), PLACE));
		Flaw note = flaw("gap:z", Severity.NOTE);
		PackManifest manifest = PackReader.read(PackWriter.bytes(fixed(open, accepted, note))).manifest();
		assertEquals(List.of("gap:x"), manifest.openFlaws().stream().map(PackManifest.Standing::id).toList());
		assertEquals("It is on order.", manifest.acceptedFlaws().get(0).accepted().orElseThrow().reason());
		assertEquals(3, manifest.flaws().size());
		assertEquals(Optional.of("power/battery.bay:7"), manifest.flaws().get(0).at());
		assertEquals(List.of("circle", "gap"), manifest.checks());
		assertEquals(3, manifest.count("rules"));
	}

	@Test
	void bytesDoNotDependOnTimeZoneLocaleOrFileOrder() throws PackException {
		PackContents contents = Tarn.contents();
		byte[] expected = PackWriter.bytes(contents);
		TimeZone zone = TimeZone.getDefault();
		Locale locale = Locale.getDefault();
		try {
			for (String[] other : new String[][] { { "Pacific/Kiritimati", "tr-TR" }, { "America/St_Johns", "ar-EG-u-nu-arab" },
					{ "UTC", "th-TH-u-ca-buddhist-nu-thai" } }) {
				TimeZone.setDefault(TimeZone.getTimeZone(other[0]));
				Locale.setDefault(Locale.forLanguageTag(other[1]));
				assertArrayEquals(expected, PackWriter.bytes(Tarn.contents()), other[1]);
			}
		} finally {
			TimeZone.setDefault(zone);
			Locale.setDefault(locale);
		}
		for (int seed = 0; seed < 5; seed++) {
			RuleBase shuffled = shuffled(seed);
			assertArrayEquals(expected,
					PackWriter.bytes(new PackContents(shuffled, contents.report(), contents.problems(), contents.tool(), contents.pictures(), true)));
		}
	}

	/** Returns the rules as if the files, and what is in them, had been read in another order. */
	private static RuleBase shuffled(int seed) {
		RuleBase.Builder base = new Tarn().builder();
		Random random = new Random(seed);
		for (List<?> list : List.of(base.families, base.states, base.tools, base.hazards, base.modules, base.codes, base.signs,
				base.parts, base.exclusives, base.tests, base.laws, base.rules, base.repairs, base.cases, base.reviews,
				base.acceptances)) {
			Collections.shuffle(list, random);
		}
		return base.build();
	}

	/**
	 * The hash stands for the bytes that another machine made on another day. Whoever changes the format, the sheet or the
	 * sample on purpose puts the new hash here.
	 */
	@Test
	void whileTheSignOffIsNotMetOnlyADraftIsMade() throws PackException {
		PackContents draft = Tarn.contents();
		PackContents contents = new PackContents(draft.rules(), draft.report(), draft.problems(), draft.tool());
		PackRefused refused = assertThrows(PackRefused.class, () -> PackWriter.bytes(contents));
		assertEquals("No pack was made, since the sign-off is not met: 2 breaches.", refused.getMessage());
		assertTrue(refused.isForSignOff());
		assertEquals(draft.report().breaches(), refused.flaws());
		PackManifest manifest = PackReader.read(PackWriter.bytes(draft)).manifest();
		assertTrue(manifest.isDraft());
		assertEquals(Optional.of(new PackManifest.SignOff(1, true, List.of(new PackManifest.OfHazard(draft.rules().hazards().get(0).name(), "electrician")), false)),
				manifest.signOff());
		assertEquals(List.of("flat", "lamp"), manifest.reviewed().stream().map(PackManifest.Reviewed::rule).toList());
		assertEquals(List.of("B. Peer agrees true", "C. Peer objects false"), manifest.reviewed().stream().flatMap(rule -> rule.opinions().stream())
				.map(said -> said.reviewer() + (said.agrees() ? " agrees " : " objects ") + said.stands()).toList());
	}

	@Test
	void bytesAreThoseOfAnotherDayAndMachine() throws PackException {
		assertEquals("414f98b302a6bca0ae9632481f8ea3fd457d91b0283a22f3bddd42a42b4f4938", Sha256.of(PackWriter.bytes(fixed(flaw("gap:x", Severity.WARNING)))));
	}

	@Test
	void theArchiveHoldsNothingOfTheMachine() throws PackException {
		byte[] pack = PackWriter.bytes(fixed());
		ByteBuffer zip = ByteBuffer.wrap(pack).order(ByteOrder.LITTLE_ENDIAN);
		int end = pack.length - 22; // APPNOTE.TXT 4.3.16: the end record is 22 bytes long without a comment
		assertEquals(0x06054b50, zip.getInt(end));
		assertEquals(3, zip.getShort(end + 10));
		int at = zip.getInt(end + 16);
		for (String name : Archive.ENTRIES) {
			assertEquals(0x02014b50, zip.getInt(at)); // 4.3.12: central directory
			assertEquals(0, zip.get(at + 5), "made on: none in particular");
			assertEquals(0, zip.getShort(at + 10), "method: stored");
			assertEquals(0, zip.getShort(at + 12), "time");
			assertEquals(2 << 5 | 1, zip.getShort(at + 14), "date: 1980-02-01");
			assertEquals(0, zip.getShort(at + 30), "extra field");
			assertEquals(0, zip.getShort(at + 32), "comment");
			assertEquals(0, zip.getInt(at + 38), "attributes");
			int length = zip.getShort(at + 28);
			assertEquals(name, new String(pack, at + 46, length, StandardCharsets.US_ASCII));
			at += 46 + length;
		}
		assertEquals(end, at);
	}

	@Test
	void theManifestHoldsNoTimeAndNoPath() throws PackException {
		Map<String, byte[]> entries = Archive.read(PackWriter.bytes(fixed(flaw("gap:x", Severity.WARNING))));
		for (byte[] content : entries.values()) {
			String text = new String(content, StandardCharsets.UTF_8);
			for (String word : List.of(System.getProperty("user.dir"), System.getProperty("java.io.tmpdir") + "/",
					System.getProperty("java.version"))) {
				assertFalse(text.contains(word), word);
			}
		}
		assertFalse(new String(entries.get(Archive.MANIFEST), StandardCharsets.UTF_8).matches("(?s).*\\d\\d:\\d\\d.*"));
	}

	@Test
	void writesTheFileAsAWhole(@TempDir Path folder) throws PackException, IOException {
		Path target = folder.resolve("new/folder/tarn.baypack");
		PackWriter.write(fixed(), target);
		assertArrayEquals(PackWriter.bytes(fixed()), Files.readAllBytes(target));
		Files.writeString(target, "old");
		PackWriter.write(fixed(), target);
		assertArrayEquals(PackWriter.bytes(fixed()), Files.readAllBytes(target));
		assertEquals(List.of("tarn.baypack"), names(target.getParent()));
	}

	@Test
	void leavesTheOldFileWhenItRefuses(@TempDir Path folder) throws IOException {
		Path target = folder.resolve("tarn.baypack");
		Files.writeString(target, "old");
		assertThrows(PackRefused.class, () -> PackWriter.write(fixed(flaw("circle:x", Severity.ERROR)), target));
		assertEquals("old", Files.readString(target));
		assertEquals(List.of("tarn.baypack"), names(folder));
	}

	@Test
	void leavesNothingWhenTheTargetCannotBeReplaced(@TempDir Path folder) throws IOException {
		Path target = folder.resolve("tarn.baypack");
		Files.createDirectories(target.resolve("a folder in the way"));
		assertThrows(IOException.class, () -> PackWriter.write(fixed(), target));
		assertEquals(List.of("tarn.baypack"), names(folder));
	}

	private static List<String> names(Path folder) throws IOException {
		try (Stream<Path> files = Files.list(folder)) {
			return files.map(file -> file.getFileName().toString()).sorted().toList();
		}
	}

	@Test
	void refusesHalfACharacter() {
		RuleBase.Builder base = new Tarn().builder();
		base.signs.add(new Sign("half", "half \uD83D", false, PLACE));
		PackContents contents = new PackContents(base.build(), fixed().report(), List.of(), "9.9.9");
		assertThrows(PackException.class, () -> PackWriter.bytes(contents));
	}
}
