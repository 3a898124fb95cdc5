package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

import org.baywright.model.Part;
import org.baywright.model.Picture;
import org.baywright.model.Repair;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures in packs: just those that the rules show, as they are, and known by their hashes. */
class PicturesTest {

	private static final byte[] PNG = png(60);
	private static final byte[] JPEG = { (byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xC0, 0, 8, 8, 0, 17, 0, 31, 1, (byte) 0xFF, (byte) 0xD9 };

	/** Returns a PNG file of 31 by 17 points whose content is nothing; with as many bytes as asked for. */
	private static byte[] png(int size) {
		byte[] png = Arrays.copyOf(new byte[] { (byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n', 0, 0, 0, 13, 'I', 'H', 'D', 'R', 0, 0, 0, 31, 0, 0, 0, 17 }, size);
		System.arraycopy(new byte[] { 'I', 'E', 'N', 'D', (byte) 0xAE, 0x42, 0x60, (byte) 0x82 }, 0, png, size - 8, 8);
		return png;
	}

	private static RuleBase rules() {
		RuleBase.Builder base = new Tarn().builder();
		base.parts.replaceAll(part -> new Part(part.name(), part.title(), part.place(),
				List.of(new Picture("pictures/seat.png", "Under the \"seat\"", new Span(part.span().file(), 3, 1, 3, 1, 0, 0))), part.hazards(), part.faults(), part.span()));
		base.repairs.replaceAll(repair -> new Repair(repair.name(), repair.title(), repair.scope(), repair.fixes(), repair.place(),
				List.of(new Picture("Clamp.JPG", "The clamp", Span.NONE)), repair.steps(), repair.cautions(), repair.tools(), repair.takes(), repair.cost(), repair.skill(),
				repair.notices(), repair.changesForGood(), repair.verified(), repair.verify(), repair.span()));
		return base.build();
	}

	private static PackContents contents(Map<String, byte[]> pictures) {
		PackContents plain = Tarn.contents(rules());
		return new PackContents(plain.rules(), plain.report(), plain.problems(), plain.tool(), new TreeMap<>(pictures), plain.draft());
	}

	private static byte[] pack() throws PackException {
		return PackWriter.bytes(contents(Map.of("pictures/seat.png", PNG, "Clamp.JPG", JPEG)));
	}

	@Test
	void aPackHoldsWhatItsRulesShowAsItIs() throws PackException {
		Map<String, byte[]> entries = Archive.read(pack());
		assertEquals(Set.of("manifest.json", "rules.json", "rules.html", "pictures/seat.png", "Clamp.JPG"), entries.keySet());
		assertArrayEquals(PNG, entries.get("pictures/seat.png"));
		assertArrayEquals(pack(), pack());
		Pack read = PackReader.read(pack());
		assertEquals(List.of("pictures/seat.png", "pictures/seat.png", "Clamp.JPG"), Picture.of(read.rules()).stream().map(Picture::file).toList());
		assertEquals(Sha256.of(JPEG), read.manifest().entries().get("Clamp.JPG").sha256());
		Verification verification = PackVerifier.verify(pack());
		assertTrue(verification.isPassed(), verification.toString());
		assertTrue(verification.results().stream().anyMatch(result -> result.message().equals("Every picture that the rules show is there, and no other.")));
	}

	@Test
	void theSheetShowsEachOnceAndSaysWhatItShows() throws PackException {
		String sheet = PackReader.read(pack()).sheet();
		String data = "data:image/png;base64," + Base64.getEncoder().encodeToString(PNG);
		assertEquals(1, sheet.split(data, -1).length - 1);
		assertTrue(sheet.contains("\" alt=\"Under the &quot;seat&quot;\""), sheet);
		assertTrue(sheet.contains("href=\"#picture-pictures/seat.png\""), sheet);
		assertTrue(sheet.contains("data:image/jpeg;base64,"), sheet);
		assertFalse(PackReader.read(PackWriter.bytes(Tarn.contents())).sheet().contains("<img"));
	}

	@Test
	void aPackIsNotMadeOfPicturesThatAreNotRight() {
		refused(Map.of("pictures/seat.png", PNG), "The picture Clamp.JPG is missing, which the rules show.");
		refused(Map.of("pictures/seat.png", JPEG, "Clamp.JPG", JPEG), "`pictures/seat.png` is a JPEG file, which its ending does not say. Save it as");
		refused(Map.of("pictures/seat.png", "<svg onload=\"x\"/>".getBytes(StandardCharsets.UTF_8), "Clamp.JPG", JPEG), "`pictures/seat.png` is no picture that can be shown");
		refused(Map.of("pictures/seat.png", png(1_000_001), "Clamp.JPG", JPEG), "`pictures/seat.png` has 1.1 MB; a picture may have at most 1 MB.");
		refused(Map.of("pictures/seat.png", PNG, "Clamp.JPG", JPEG, "more.png", PNG), "The picture more.png does not belong there: no rule shows it.");
	}

	private static void refused(Map<String, byte[]> pictures, String message) {
		PackException refused = assertThrows(PackException.class, () -> PackWriter.bytes(contents(pictures)));
		assertTrue(refused.getMessage().startsWith(message), refused.getMessage());
	}

	@Test
	void whatWasForgedIsFound() throws PackException {
		Map<String, byte[]> entries = new TreeMap<>(Archive.read(pack()));
		forged(entries, "Clamp.JPG", Arrays.copyOf(JPEG, JPEG.length + 1), "Clamp.JPG is not what the manifest says: the pack was changed or is damaged.");
		forged(entries, "more.png", PNG, "The pack holds more.png, which the manifest does not name.");
		forged(entries, "Clamp.JPG", null, "The pack lacks Clamp.JPG, which the manifest names.");
		forged(entries, "../up.png", PNG, "The pack holds an entry that does not belong there: ../up.png.");
		forged(entries, "a.svg", PNG, "The pack holds an entry that does not belong there: a.svg.");
	}

	private static void forged(Map<String, byte[]> entries, String name, byte[] content, String message) {
		Map<String, byte[]> changed = new TreeMap<>(entries);
		if (content == null) {
			changed.remove(name);
		} else {
			changed.put(name, content);
		}
		byte[] pack = Archive.write(changed);
		assertEquals(message, assertThrows(PackException.class, () -> PackReader.read(pack)).getMessage());
		assertFalse(PackVerifier.verify(pack).isPassed());
	}

	@Test
	void theyAreReadFromTheFolderOfTheProject(@TempDir Path folder) throws IOException, PackException {
		assertEquals("There is no file `Clamp.JPG` in the project that can be read. Correct the path, or copy the picture there.",
				assertThrows(PackException.class, () -> Pictures.read(Optional.of(folder), rules())).getMessage());
		Files.createDirectories(folder.resolve("pictures"));
		Files.write(folder.resolve("Clamp.JPG"), JPEG);
		Files.write(folder.resolve("pictures/seat.png"), PNG);
		Files.write(folder.resolve("pictures/nobody.png"), PNG);
		assertEquals(Set.of("Clamp.JPG", "pictures/seat.png"), Pictures.read(Optional.of(folder), rules()).keySet());
		assertEquals(Set.of(), Pictures.read(Optional.empty(), Tarn.rules()).keySet());
		assertThrows(PackException.class, () -> Pictures.read(Optional.empty(), rules()));
	}
}
