package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;

import org.baywright.analysis.Listener;
import org.baywright.pack.Verification.Aspect;
import org.baywright.pack.Verification.Outcome;
import org.baywright.pack.Verification.Result;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PackVerifierTest {

	private static byte[] good;

	@BeforeAll
	static void write() throws PackException {
		good = PackWriter.bytes(Tarn.contents());
	}

	private static List<Aspect> failed(byte[] pack) {
		Verification verification = PackVerifier.verify(pack);
		assertFalse(verification.isPassed());
		assertTrue(verification.pack().isEmpty());
		return verification.results().stream().filter(result -> result.outcome() == Outcome.FAILED).map(Result::aspect).toList();
	}

	@Test
	void aGoodPackPassesInEveryAspect() {
		Verification verification = PackVerifier.verify(good);
		assertTrue(verification.isPassed());
		assertEquals(Arrays.stream(Aspect.values()).filter(aspect -> aspect != Aspect.PROOFS).toList(),
				verification.results().stream().map(Result::aspect).toList());
		assertTrue(verification.results().stream().allMatch(result -> result.outcome() == Outcome.PASSED));
		assertTrue(verification.pack().isPresent());
	}

	@Test
	void saysWhatCouldNotBeLookedAt() {
		Verification verification = PackVerifier.verify(new byte[0]);
		assertEquals(List.of(Outcome.FAILED), verification.results().stream().map(Result::outcome)
				.filter(outcome -> outcome != Outcome.OPEN).toList());
		assertEquals(Aspect.values().length - 1, verification.results().size());
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "CANONICAL|rules.json|\"version\":\"2.0\"|\"version\": \"2.0\"",
			"DERIVED|rules.json|\"stale\":true|\"stale\":false", "DERIVED|rules.json|\"reaches\":[\"t3\"]|\"reaches\":[]",
			"DERIVED|rules.json|\"resolved\":{\"bands\":[{\"high\":\"13\"|\"resolved\":{\"bands\":[{\"high\":\"14\"",
			"DERIVED|manifest.json|\"met\":false|\"met\":true", "DERIVED|manifest.json|\"withoutAuthor\":true|\"withoutAuthor\":false",
			"DERIVED|manifest.json|\"stands\":true|\"stands\":false", "DERIVED|manifest.json|\"tools\":2|\"tools\":3",
			"DERIVED|manifest.json|\"jobsPassed\":1|\"jobsPassed\":7", "DERIVED|manifest.json|\"severity\":\"warning\"|\"severity\":\"error\"", "SHEET|rules.html|Battery too low|Battery too high",
			"RULES|rules.json|\"name\":\"flat\"|\"nome\":\"flat\"",
			"REFERENCES|rules.json|\"fault\":\"lamp.blown\"|\"fault\":\"lamp.gone\"",
			"FINGERPRINT|manifest.json|\"fingerprint\":\"|\"fingerprint\":\"0", "MANIFEST|manifest.json|\"checks\":|\"checkz\":" })
	void findsWhatWasForged(Aspect aspect, String entry, String from, String to) throws PackException {
		assertTrue(failed(PackReaderTest.forged(good, entry, from, to)).contains(aspect));
	}

	@Test
	void findsWhatIsHiddenInTheArchive() throws IOException, PackException {
		assertEquals(List.of(Aspect.PACKING), failed(PackReaderTest.zip(Archive.read(good))));
		byte[] longer = Arrays.copyOf(good, good.length + 1);
		assertEquals(List.of(Aspect.PACKING), failed(longer));
	}

	@Test
	void leavesOpenWhatANewerVersionDecides() throws PackException {
		byte[] newer = PackReaderTest.forged(
				PackReaderTest.forged(good, Archive.RULES, "\"version\":\"2.0\"", "\"version\":\"2.1\""), Archive.MANIFEST,
				"\"version\":\"2.0\"", "\"version\":\"2.1\"");
		Verification verification = PackVerifier.verify(newer);
		assertTrue(verification.isPassed(), verification.toString());
		assertEquals(List.of(Aspect.DERIVED, Aspect.SHEET), verification.results().stream()
				.filter(result -> result.outcome() == Outcome.OPEN).map(Result::aspect).toList());
	}

	@Test
	void provesThatTheManifestSaysWhatTheChecksFind() throws PackException {
		Result result = PackVerifier.prove(PackReader.read(good), Listener.NONE);
		assertEquals(Outcome.PASSED, result.outcome(), result.message());
	}

	@Test
	void findsAManifestThatHidesAFlaw() throws PackException {
		PackContents contents = Tarn.contents();
		PackContents hiding = new PackContents(contents.rules(), new org.baywright.analysis.Report(
				contents.report().flaws().subList(1, contents.report().flaws().size()), contents.report().cases(),
				contents.report().checks(), 1, 1), List.of(), ToolVersion.CURRENT, contents.pictures(), true);
		Result result = PackVerifier.prove(PackReader.read(PackWriter.bytes(hiding)), Listener.NONE);
		assertEquals(Outcome.FAILED, result.outcome());
		assertTrue(result.message().contains(contents.report().flaws().get(0).id()), result.message());
	}

	@Test
	void findsAManifestThatClaimsMoreJobs() throws PackException {
		Pack pack = PackReader.read(PackReaderTest.forged(good, Archive.MANIFEST, "\"jobsPassed\":1", "\"jobsPassed\":7"));
		assertEquals(Outcome.FAILED, PackVerifier.prove(pack, Listener.NONE).outcome());
	}

	@Test
	void doesNotCompareOtherChecks() throws PackException {
		Pack pack = PackReader.read(PackReaderTest.forged(good, Archive.MANIFEST, "\"circle\",", ""));
		assertEquals(Outcome.OPEN, PackVerifier.prove(pack, Listener.NONE).outcome());
	}

	@Test
	void provingCanBeStopped() throws PackException {
		Pack pack = PackReader.read(good);
		assertThrows(CancellationException.class, () -> PackVerifier.prove(pack, new Listener() {
			@Override
			public boolean isCancelled() {
				return true;
			}
		}));
	}
}
