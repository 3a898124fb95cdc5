package org.baywright.presenter;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class WorkingTest {

	@Test
	void saysHowFarItIs() {
		assertEquals("Check the rules\u2026", Working.begun("Check the rules").text());
		assertEquals(0, Working.begun("Check the rules").thousandths());
		assertEquals("Check the rules: 12 of 40 parts", new Working("Check the rules", 12, 40, "part").text());
		assertEquals(300, new Working("Check the rules", 12, 40, "part").thousandths());
		assertEquals("Read the rules: 0 of 1 file", new Working("Read the rules", 0, 1, "file").text());
		assertEquals(1000, new Working("Check the rules", 41, 40, "part").thousandths());
	}
}
