package org.baywright.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.InputStream;

import org.fhir.ucum.Decimal;
import org.fhir.ucum.UcumEssenceService;
import org.fhir.ucum.UcumService;
import org.junit.jupiter.api.Test;

class BuildSmokeTest {

	@Test
	void unitLibraryFindsItsDefinitions() throws Exception {
		UcumService units;
		try (InputStream essence = UcumEssenceService.class.getResourceAsStream("/ucum-essence.xml")) {
			units = new UcumEssenceService(essence);
		}
		assertEquals("250", units.convert(new Decimal("2.5"), "bar", "kPa").asDecimal());
		assertFalse(units.isComparable("V", "Ohm"));
	}
}
