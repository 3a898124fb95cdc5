package org.baywright.language.check;

import static org.baywright.language.testing.Peers.told;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.baywright.analysis.check.UnknownQualification;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link UnknownQualification}. */
class UnknownQualificationTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(UnknownQualification.class);
	}

	private static final String HAZARD = "hazard gas { caution \"No flame.\" }";

	@Test
	void theWordsMustBeTheSame() {
		String asked = "sign_off { hazard gas by \"gas\" }";
		assertEquals(List.of(), told(UnknownQualification.class, HAZARD, asked, "reviewer \"M. Sund\" qualified \"acid\", \"gas\""));
		assertEquals(1, told(UnknownQualification.class, HAZARD, asked, "reviewer \"M. Sund\" qualified \"gases\"").size());
		assertEquals(1, told(UnknownQualification.class, HAZARD, asked).size());
		assertEquals(List.of(), told(UnknownQualification.class, HAZARD, "reviewer \"M. Sund\" qualified \"acid\""));
	}

	@Test
	void eachDemandIsTold() {
		assertEquals(2, told(UnknownQualification.class, HAZARD, "sign_off { hazard gas by \"gas\" hazard gas by \"fire\" }").size());
	}
}
