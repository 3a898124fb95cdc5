package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.util.jar.Manifest;

import org.junit.jupiter.api.Test;

class ToolVersionTest {

	@Test
	void isThatOfTheBundle() throws IOException {
		try (InputStream in = new URL(ToolVersion.class.getResource("ToolVersion.class"), "/META-INF/MANIFEST.MF").openStream()) {
			String version = new Manifest(in).getMainAttributes().getValue("Bundle-Version");
			assertEquals(ToolVersion.CURRENT, version.replaceFirst("\\.[^.]*$", ""));
		}
	}
}
