package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Modifier;

import org.junit.jupiter.api.Test;

class BuildSmokeTest {

	@Test
	void mainIsAnEntryPoint() throws Exception {
		assertTrue(Modifier.isStatic(Main.class.getMethod("main", String[].class).getModifiers()));
	}
}
