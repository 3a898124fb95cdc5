package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Listener;
import org.baywright.model.Family;
import org.baywright.model.Notice;
import org.baywright.model.Preparation;
import org.baywright.model.RuleBase;
import org.baywright.pack.Verification.Aspect;
import org.baywright.pack.Verification.Outcome;
import org.baywright.pack.Verification.Result;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.Test;

/** A pack that was written in format 1.0 still means what it meant. */
class OldFormatTest {

	private static byte[] pack() throws IOException {
		return Files.readAllBytes(Path.of("packs/van-1.0.baypack"));
	}

	@Test
	void isReadAsItWasMeant() throws IOException, PackException {
		RuleBase rules = PackReader.read(pack()).rules();
		assertEquals(List.of(Family.Kind.BASE, Family.Kind.VEHICLES), rules.families().stream().map(Family::kind).toList());
		assertEquals(List.of(new Preparation.Do("Wait.")), rules.test("volts").orElseThrow().prepare());
		assertEquals(List.of(new Notice(Notice.Whom.CUSTOMER, "Drive more.", "")), rules.repair("charge").orElseThrow().notices());
		assertEquals(List.of("The radio is silent."), rules.repair("charge").orElseThrow().changesForGood());
		assertEquals(List.of(), rules.sign("dead").orElseThrow().precautions());
		assertEquals(List.of(), rules.chains());
		assertEquals(Optional.empty(), rules.workshop());
	}

	@Test
	void nothingNewHidesBehindAnOldVersion() throws IOException, PackException {
		for (String added : List.of("\"chains\":[],\"project\":", "\"workshop\":{},\"project\":", "\"precautions\":[],\"name\":\"dead\"", "\"seenWith\":\"volts\",\"name\":\"volts\"")) {
			String from = added.substring(added.indexOf(',') + 1);
			PackException refused = assertThrows(PackException.class, () -> PackReader.read(PackReaderTest.forged(pack(), Archive.RULES, from, added)));
			assertTrue(refused.getMessage().contains("does not belong there"), refused.getMessage());
		}
		byte[] renamed = PackReaderTest.forged(pack(), Archive.MANIFEST, "\"findings\":", "\"flaws\":");
		PackException unlike = assertThrows(PackException.class,
				() -> PackReader.read(PackReaderTest.forged(renamed, Archive.MANIFEST, "\"version\":\"1.0\"", "\"version\":\"2.0\"")));
		assertTrue(unlike.getMessage().contains("the rules have 1.0"), unlike.getMessage());
	}

	@Test
	void isRightButForWhatCannotBeCompared() throws IOException, PackException {
		Verification verification = PackVerifier.verify(pack());
		assertTrue(verification.isPassed(), verification::toString);
		assertEquals(List.of(Aspect.SHEET), verification.results().stream().filter(result -> result.outcome() == Outcome.OPEN)
				.map(Result::aspect).toList());
		Result proved = PackVerifier.prove(PackReader.read(pack()), Listener.NONE);
		// there are checks now that its Baywright did not know
		assertEquals(Outcome.OPEN, proved.outcome(), proved.message());
	}
}
