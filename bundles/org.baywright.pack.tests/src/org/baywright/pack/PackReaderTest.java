package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

import org.baywright.model.Severity;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PackReaderTest {

	private static byte[] good;

	@BeforeAll
	static void write() throws PackException {
		good = PackWriter.bytes(PackWriterTest.fixed(PackWriterTest.flaw("gap:x", Severity.WARNING)));
	}

	static byte[] zip(Map<String, byte[]> entries) throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
			for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
				zip.putNextEntry(new ZipEntry(entry.getKey()));
				zip.write(entry.getValue());
				zip.closeEntry();
			}
		}
		return bytes.toByteArray();
	}

	private static Map<String, byte[]> entries() throws PackException {
		return new LinkedHashMap<>(Archive.read(good));
	}

	/** Returns the pack with a text replaced in an entry, and its hashes put right as somebody would who wants to deceive. */
	static byte[] forged(byte[] pack, String entry, String from, String to) throws PackException {
		Map<String, byte[]> entries = new LinkedHashMap<>(Archive.read(pack));
		String old = new String(entries.get(entry), StandardCharsets.UTF_8);
		assertTrue(old.contains(from), from);
		byte[] changed = old.replace(from, to).getBytes(StandardCharsets.UTF_8);
		String manifest = new String(entries.get(Archive.MANIFEST), StandardCharsets.UTF_8);
		if (!entry.equals(Archive.MANIFEST)) {
			manifest = manifest.replace(Sha256.of(entries.get(entry)), Sha256.of(changed)).replace(
					"\"bytes\":" + entries.get(entry).length + ",", "\"bytes\":" + changed.length + ",");
			entries.put(Archive.MANIFEST, manifest.getBytes(StandardCharsets.UTF_8));
		}
		entries.put(entry, changed);
		return Archive.write(entries);
	}

	private static String refused(byte[] pack) {
		return assertThrows(PackException.class, () -> PackReader.read(pack)).getMessage();
	}

	private static String refused(String entry, String from, String to) throws PackException {
		return refused(forged(good, entry, from, to));
	}

	@Test
	void readsAPack() throws PackException {
		Pack pack = PackReader.read(good);
		assertEquals("tarn – an invented van", pack.manifest().project());
		assertEquals(3, pack.rules().rules().size());
		assertTrue(pack.sheet().startsWith("<!DOCTYPE html>"));
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "PK", "not a zip at all", "PK\u0003\u0004 and then nothing that makes sense" })
	void refusesWhatIsNoPack(String text) {
		assertTrue(refused(text.getBytes(StandardCharsets.UTF_8)).startsWith("The "));
	}

	@Test
	void refusesEveryPackThatEndsTooEarly() {
		for (int missing = 1; missing < good.length - 4; missing += missing < 400 ? 1 : 997) {
			assertEquals("The pack is cut short: the end of the archive is missing. Copy it again.",
					refused(java.util.Arrays.copyOf(good, good.length - missing)), "without the last " + missing);
		}
	}

	@Test
	void findsEveryChangedByteOfAnEntry() throws PackException {
		for (int at = 60; at < good.length - 400; at += 331) {
			byte[] changed = good.clone();
			changed[at] ^= 1;
			assertThrows(PackException.class, () -> PackReader.read(changed), "at " + at);
		}
	}

	@ParameterizedTest
	@ValueSource(strings = { "../evil.sh", "/etc/passwd", "rules.json/../x", "RULES.JSON", "a/", "rules.json\u0000x" })
	void refusesEntriesThatDoNotBelongThere(String name) throws IOException, PackException {
		Map<String, byte[]> entries = entries();
		entries.put(name, new byte[0]);
		assertTrue(refused(zip(entries)).startsWith("The pack holds an entry that does not belong there: "));
	}

	@Test
	void refusesAMissingEntry() throws IOException, PackException {
		Map<String, byte[]> entries = entries();
		entries.remove(Archive.SHEET);
		assertEquals("The pack lacks rules.html; it is damaged or no rule pack.", refused(zip(entries)));
	}

	@Test
	void refusesAnEntryThatIsThereTwice() throws IOException, PackException {
		byte[] pack = zip(Map.of("rules.json", new byte[10], "rules_json", new byte[10]));
		String twice = new String(pack, StandardCharsets.ISO_8859_1).replace("rules_json", "rules.json");
		assertEquals("The pack holds rules.json twice.", refused(twice.getBytes(StandardCharsets.ISO_8859_1)));
	}

	@Test
	void refusesBombs() throws IOException {
		byte[] bomb = zip(Map.of("rules.json", new byte[50_000_000]));
		assertTrue(bomb.length < 100_000);
		PackException refused = assertThrows(PackException.class, () -> Archive.read(bomb, 1_000_000));
		assertEquals("rules.json is larger than any rule pack needs; it is not unpacked.", refused.getMessage());
	}

	@ParameterizedTest
	@CsvSource({ "manifest.json, 3.0", "manifest.json, 12.3", "rules.json, 3.0" })
	void saysWhenABaywrightIsTooOld(String entry, String version) throws PackException {
		assertEquals("The pack has format version " + version + "; this Baywright reads versions up to 2.x."
				+ " Get a newer Baywright to read it.", refused(entry, "\"version\":\"2.0\"", "\"version\":\"" + version + "\""));
	}

	@Test
	void passesOverWhatANewerMinorVersionAdded() throws PackException {
		byte[] newer = forged(forged(good, Archive.RULES, "\"version\":\"2.0\"", "\"version\":\"2.7\",\"zebra\":[0.5]"),
				Archive.MANIFEST, "\"version\":\"2.0\"", "\"version\":\"2.7\",\"zebra\":null");
		assertEquals(3, PackReader.read(newer).rules().rules().size());
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = {
			"\"line\":3|\"line\":\"3\"|should be a whole number, but is a text.",
			"\"line\":3|\"line\":3.5|should be a whole number, but is 3.5.",
			"\"line\":3|\"line\":-3|should be a whole number, but is -3.",
			"\"line\":3|\"line\":0|has line 0; lines are counted from 1.",
			"\"name\":\"flat\"|\"nome\":\"flat\"|rules.json/rules/0 lacks \"name\".",
			"\"name\":\"flat\"|\"name\":null|rules.json/rules/0/name should be a text, but is null.",
			"\"name\":\"flat\"|\"name\":\"flat\",\"new\":1|rules.json/rules/0 has a property that does not belong there: \"new\".",
			"\"step\":\"0.1\"|\"step\":\"0.10\"|is not a decimal number in its shortest form such as \"12.4\": \"0.10\".",
			"\"step\":\"0.1\"|\"step\":\"1e9\"|is not a decimal number",
			"\"step\":\"0.1\"|\"step\":\"-0.1\"|is no range: step must be greater than 0: -0.1.",
			"\"step\":\"0.1\"|\"step\":\"0.000000001\"|is no range: more than 10000000 steps in the range.",
			"\"high\":\"18\"|\"high\":\"-1\"|is no range: range ends before it begins: 0 .. -1.",
			"\"kind\":\"confirms\"|\"kind\":\"proves\"|kind may not be \"proves\".",
			"\"skill\":\"basic\"|\"skill\":\"BASIC\"|skill may not be \"BASIC\".",
			"\"date\":\"2026-03-04\"|\"date\":\"2026-02-30\"|date is not a day such as 2026-03-02: \"2026-02-30\".",
			"\"code\":\"U3003\"|\"code\":\"X3003\"|is no trouble code of SAE J2012 / ISO 15031-6: X3003-16.",
			"\"spn\":168|\"spn\":524288|is no trouble code of SAE J1939-73",
			"\"fault\":\"lamp.blown\"|\"fault\":\"lamp.gone\"|rule lamp speaks of fault lamp.gone, which the rules do not define.",
			"\"value\":\"off\"|\"value\":\"oof\"|family bus speaks of value of state ignition oof, which the rules do not define.",
			"\"format\":\"baywright-rules\"|\"format\":\"x\"|rules.json/format may not be \"x\".",
			"\"project\":\"tarn|\"project\":\"barn|The manifest speaks of project",
			"\"listed\":true|\"listed\":1|should be true or false, but is 1." })
	void saysWhereTheRulesAreWrong(String from, String to, String message) throws PackException {
		String refused = refused(Archive.RULES, from, to);
		assertTrue(refused.contains(message), refused);
	}

	@Test
	void saysWhereTheManifestIsWrong() throws PackException {
		assertTrue(refused(Archive.MANIFEST, "\"jobsPassed\":0,", "").contains("manifest.json lacks \"jobsPassed\""));
		assertTrue(refused(Archive.MANIFEST, "\"severity\":\"warning\"", "\"severity\":\"bad\"").contains("/flaws/0/severity"));
		assertEquals("The pack's fingerprint is not that of its rules: the manifest was changed.",
				refused(Archive.MANIFEST, "\"fingerprint\":\"", "\"fingerprint\":\"0"));
	}

	@Test
	void readsAFile(@TempDir Path folder) throws IOException, PackException {
		Path file = Files.write(folder.resolve("x.baypack"), good);
		assertEquals(3, PackReader.read(file).rules().rules().size());
		assertThrows(IOException.class, () -> PackReader.read(folder.resolve("none.baypack")));
	}
}
