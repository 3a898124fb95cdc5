package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;

import org.baywright.analysis.check.VerifyWithoutCycle;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/**
 * {@link VerifyWithoutCycle}: common practice; in ISO 14229-1 a cleared code counts as "test not completed since last clear"
 * (bit name seen), status 0x50 after clearing (seen), until the module has tested again.
 */
class VerifyWithoutCycleTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(VerifyWithoutCycle.class);
	}

	@Test
	void clearCycleReadIsFine() {
		MarkedFlaws.check(VerifyWithoutCycle.class, """
				family dunlin
				state ignition : off, on
				module heater answers in ignition on
				module body
				code open on heater = raw "H 13"
				code low on body = raw "B 7"
				sign no_heat
				part element { fault open }
				test resistance { measures Ohm 0 .. 200 step 1  in ignition off }
				rule a { given no_heat run resistance expect 15 Ohm .. 40 Ohm met : proves nothing otherwise : confirms element.open }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify {
				    set ignition on
				    clear heater
				    cycle ignition
				    read heater
				    expect open absent
				  }
				}
				""");
	}

	@Test
	void withoutClearingTheCodeMayBeAbsentAnyway() {
		MarkedFlaws.check(VerifyWithoutCycle.class, """
				family dunlin
				state ignition : off, on
				module heater answers in ignition on
				module body
				code open on heater = raw "H 13"
				code low on body = raw "B 7"
				sign no_heat
				part element { fault open }
				test resistance { measures Ohm 0 .. 200 step 1  in ignition off }
				rule a { given no_heat run resistance expect 15 Ohm .. 40 Ohm met : proves nothing otherwise : confirms element.open }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify {
				    set ignition on
				    cycle ignition
				    read heater
				    expect open absent
				//  ^^^^^^^^^^^^^^^^^^ error verify-without-cycle: That code open is absent proves nothing here: module heater was not cleared before; clear it, cycle, then read it.
				  }
				}
				""");
	}

	@Test
	void clearingAnotherModuleDoesNotCount() {
		MarkedFlaws.check(VerifyWithoutCycle.class, """
				family dunlin
				state ignition : off, on
				module heater answers in ignition on
				module body
				code open on heater = raw "H 13"
				code low on body = raw "B 7"
				sign no_heat
				part element { fault open }
				test resistance { measures Ohm 0 .. 200 step 1  in ignition off }
				rule a { given no_heat run resistance expect 15 Ohm .. 40 Ohm met : proves nothing otherwise : confirms element.open }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify {
				    set ignition on
				    clear body
				    cycle ignition
				    read heater
				    expect open absent
				//  ^^^^^^^^^^^^^^^^^^ error verify-without-cycle: That code open is absent proves nothing here: module heater was not cleared before; clear it, cycle, then read it.
				  }
				}
				""");
	}

	@Test
	void aCycleBeforeTheClearingDoesNotCount() {
		MarkedFlaws.check(VerifyWithoutCycle.class, """
				family dunlin
				state ignition : off, on
				module heater answers in ignition on
				module body
				code open on heater = raw "H 13"
				code low on body = raw "B 7"
				sign no_heat
				part element { fault open }
				test resistance { measures Ohm 0 .. 200 step 1  in ignition off }
				rule a { given no_heat run resistance expect 15 Ohm .. 40 Ohm met : proves nothing otherwise : confirms element.open }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify {
				    set ignition on
				    cycle ignition
				    clear heater
				    read heater
				    expect open absent
				//  ^^^^^^^^^^^^^^^^^^ error verify-without-cycle: That code open is absent proves nothing here: module heater was read before a cycle let it test itself again; write a cycle line, such as "cycle ignition", between clear and read.
				  }
				}
				""");
	}

	@Test
	void aCycleAfterTheReadingDoesNotCount() {
		MarkedFlaws.check(VerifyWithoutCycle.class, """
				family dunlin
				state ignition : off, on
				module heater answers in ignition on
				module body
				code open on heater = raw "H 13"
				code low on body = raw "B 7"
				sign no_heat
				part element { fault open }
				test resistance { measures Ohm 0 .. 200 step 1  in ignition off }
				rule a { given no_heat run resistance expect 15 Ohm .. 40 Ohm met : proves nothing otherwise : confirms element.open }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify {
				    set ignition on
				    clear heater
				    read heater
				    cycle ignition
				    expect open absent
				//  ^^^^^^^^^^^^^^^^^^ error verify-without-cycle: That code open is absent proves nothing here: module heater was read before a cycle let it test itself again; write a cycle line, such as "cycle ignition", between clear and read.
				  }
				}
				""");
	}

	@Test
	void aCodeThatMustComeBackProvesSomethingAtOnce() {
		MarkedFlaws.check(VerifyWithoutCycle.class, """
				family dunlin
				state ignition : off, on
				module heater answers in ignition on
				module body
				code open on heater = raw "H 13"
				code low on body = raw "B 7"
				sign no_heat
				part element { fault open }
				test resistance { measures Ohm 0 .. 200 step 1  in ignition off }
				rule a { given no_heat run resistance expect 15 Ohm .. 40 Ohm met : proves nothing otherwise : confirms element.open }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify {
				    set ignition on
				    clear heater
				    read heater
				    expect open present
				  }
				}
				""");
	}

	// ---- the status byte of ISO 14229-1 (bit names and 0x50 seen, the rest from memory) -------------------------------

	private static final int TEST_FAILED = 1;
	private static final int FAILED_THIS_CYCLE = 2;
	private static final int PENDING = 4;
	private static final int CONFIRMED = 8;
	private static final int NOT_COMPLETED_SINCE_CLEAR = 16;
	private static final int FAILED_SINCE_CLEAR = 32;
	private static final int NOT_COMPLETED_THIS_CYCLE = 64;

	private static int status(int status, String step, boolean mended) {
		int failed = TEST_FAILED | FAILED_THIS_CYCLE | PENDING | CONFIRMED | FAILED_SINCE_CLEAR;
		return switch (step) {
			case "clear heater" -> NOT_COMPLETED_SINCE_CLEAR | NOT_COMPLETED_THIS_CYCLE;
			case "cycle ignition" -> {
				int begun = status & ~FAILED_THIS_CYCLE | NOT_COMPLETED_THIS_CYCLE;
				int tested = begun & ~(NOT_COMPLETED_SINCE_CLEAR | NOT_COMPLETED_THIS_CYCLE);
				yield mended ? tested & ~(TEST_FAILED | PENDING) : tested | failed;
			}
			default -> status;
		};
	}

	/** Absence proves the repair where the byte would be the other way with the fault still there. */
	@Test
	void everyOrderOfStepsIsJudgedAsByTheStatusByte() {
		assertEquals(0x50, status(0x2F, "clear heater", false));
		assertEquals(0x00, status(0x50, "cycle ignition", true));
		assertEquals(0x2F, status(0x50, "cycle ignition", false));
		int proofs = 0;
		List<List<String>> orders = new ArrayList<>(List.of(List.of()));
		for (int i = 0; i < orders.size(); i++) {
			List<String> order = orders.get(i);
			if (order.size() < 4) {
				for (String step : List.of("clear heater", "cycle ignition", "read heater")) {
					List<String> longer = new ArrayList<>(order);
					longer.add(step);
					orders.add(longer);
				}
			}
			int read = order.lastIndexOf("read heater");
			if (read < 0) {
				continue;
			}
			int mended = 0x2F;
			int broken = 0x2F;
			for (String step : order.subList(0, read)) {
				mended = status(mended, step, true);
				broken = status(broken, step, false);
			}
			boolean proves = (mended & CONFIRMED) == 0 && (broken & CONFIRMED) != 0;
			proofs += proves ? 1 : 0;
			String found = proves ? "" : "//  ^^^^^^^^^^^^^^^^^^ error verify-without-cycle: That code open is absent proves nothing here: module heater "
					+ (order.contains("clear heater")
							? "was read before a cycle let it test itself again; write a cycle line, such as \"cycle ignition\", between clear and read.\n"
							: "was not cleared before; clear it, cycle, then read it.\n");
			MarkedFlaws.check(VerifyWithoutCycle.class, """
					family dunlin
					state ignition : off, on
					module heater answers in ignition on
					code open on heater = raw "H 13"
					sign no_heat
					part element { fault open }
					test resistance { measures Ohm 0 .. 200 step 1  in ignition off }
					rule a { given no_heat run resistance expect 15 Ohm .. 40 Ohm met : proves nothing otherwise : confirms element.open }
					repair new_element {
					  fixes element.open
					  steps "Replace it."
					  verify {
					    set ignition on
					    %s
					    expect open absent
					%s  }
					}
					""".formatted(String.join("\n", order), found));
		}
		assertTrue(proofs > 3, "only " + proofs + " orders prove anything");
	}

	@Test
	void allCodesThatOneMissingCycleConcernsAreToldOnce() {
		MarkedFlaws.check(VerifyWithoutCycle.class, """
				family dunlin
				state ignition : off, on
				module heater
				code open on heater = raw "H 13"
				code short on heater = raw "H 14"
				part element { fault open }
				repair new_element {
				  fixes element.open
				  steps "Replace it."
				  verify { clear heater  read heater  expect open absent  expect short absent }
				//                                    ^^^^^^^^^^^^^^^^^^ error verify-without-cycle: That codes open and short are absent proves nothing here: module heater was read before a cycle let it test itself again; write a cycle line, such as "cycle ignition", between clear and read.
				//   also: line 10 (code short)
				}
				""");
	}
}
