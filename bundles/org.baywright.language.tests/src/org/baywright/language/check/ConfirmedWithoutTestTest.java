package org.baywright.language.check;

import org.baywright.analysis.check.ConfirmedWithoutTest;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link ConfirmedWithoutTest}: common practice, no published source; a code names a circuit, not a part. */
class ConfirmedWithoutTestTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(ConfirmedWithoutTest.class);
	}

	@Test
	void aTestAmongTheConditionsIsATest() {
		MarkedFlaws.check(ConfirmedWithoutTest.class, """
				family osier
				module ecm
				code oil_sensor on ecm = j1939 spn 100 fmi 3
				sign oil_lamp
				part sensor { fault broken }
				test resistance { measures Ohm 0 .. 500 step 1 }
				rule a { given oil_lamp, oil_sensor present, resistance above 200 Ohm then confirms sensor.broken }
				""");
	}

	@Test
	void aTestInOneOfTwoWaysIsNotEnough() {
		MarkedFlaws.check(ConfirmedWithoutTest.class, """
				family osier
				module ecm
				code oil_sensor on ecm = j1939 spn 100 fmi 3
				sign oil_lamp
				part sensor { fault broken fault loose }
				test resistance { measures Ohm 0 .. 500 step 1 }
				rule a { given oil_lamp, (oil_sensor present or resistance above 200 Ohm) then confirms sensor.broken, sensor.loose }
				//                                                                                      ^^^^^^^^^^^^^ warning confirmed-without-test: Rule a confirms sensor.broken (broken) and sensor.loose (loose) without a test; add the test that proves them, or let the rule suspect them.
				//   also: line 7 (fault sensor.loose)
				""");
	}

	@Test
	void aSuspicionNeedsNoTest() {
		MarkedFlaws.check(ConfirmedWithoutTest.class, """
				family osier
				sign oil_lamp
				part sensor { fault broken }
				rule a { given oil_lamp then suspects sensor.broken }
				""");
	}

	@Test
	void notTurnsAndIntoOr() {
		MarkedFlaws.check(ConfirmedWithoutTest.class, """
				family tarn
				sign hot
				part radiator { fault leaking }
				part hose { fault split }
				test level { results full, low }
				rule a { given hot, not (level is full and hot absent) then confirms radiator.leaking }
				//                                                                   ^^^^^^^^^^^^^^^^ warning confirmed-without-test: Rule a confirms radiator.leaking (leaking) without a test; add the test that proves it, or let the rule suspect it.
				rule b { given hot, not (level is full or hot absent) then confirms hose.split }
				""");
	}
}
