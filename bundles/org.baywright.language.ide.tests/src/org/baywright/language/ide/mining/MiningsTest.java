package org.baywright.language.ide.mining;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.model.Meaning;
import org.junit.jupiter.api.Test;

class MiningsTest {

	private static final String CASE = """
			job "Job 1" {
			  on tarn with engine diesel, built 2018
			  found no_crank, lamp dark
			  was battery.flat
			}
			@""";

	private static List<String> say(Cursor cursor, Optional<Report> report) {
		String text = cursor.services().project().source(Cursor.NAMES).orElseThrow().text();
		return cursor.services().minings(Cursor.NAMES, report).stream().map(mining -> text.substring(mining.offset()).split("\\W")[0]
				+ ": " + mining.text() + " " + mining.references()).toList();
	}

	@Test
	void beforeTheFirstCheck() {
		assertEquals(List.of("low_supply: no rule asks for this code []", "no_crank: 1 rule asks for this sign [lamp_dark]",
				"flat: confirmed by no rule, 1 repair [recharge]", "open_cell: confirmed by no rule, no repair []",
				"rest_voltage: no rule uses this test []", "lamp: 1 rule uses this test [lamp_dark]"),
				say(Cursor.in(CASE), Optional.empty()));
	}

	@Test
	void jobsThatFireARule() {
		Cursor cursor = Cursor.in(CASE);
		Report report = new Analysis().check(cursor.services().project().snapshot().rules(), Listener.NONE);
		List<String> said = say(cursor, Optional.of(report));
		assertEquals("lamp_dark: applies in 1 finished job [Job 1]", said.get(said.size() - 1));
	}

	@Test
	void howManyAgreeWithARuleAsItStands() {
		String meaning = Meaning.fingerprint(Cursor.in(CASE).services().project().snapshot().rules().rule("lamp_dark").orElseThrow());
		Cursor cursor = Cursor.in("review lamp_dark by \"A. Peer\" on 2026-03-03 agrees meaning \"" + meaning + "\"\nreview lamp_dark by \"B. Peer\" on 2026-03-04 objects meaning \""
				+ meaning + "\"\n" + CASE);
		Report report = new Analysis().check(cursor.services().project().snapshot().rules(), Listener.NONE);
		List<String> said = say(cursor, Optional.of(report));
		assertEquals("lamp_dark: applies in 1 finished job, 1 agrees with it as it stands, B. Peer objects [Job 1]", said.get(said.size() - 1));
	}
}
