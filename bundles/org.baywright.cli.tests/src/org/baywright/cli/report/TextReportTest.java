package org.baywright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;

import org.baywright.cli.TestFiles;
import org.junit.jupiter.api.Test;

class TextReportTest {

	private static String text(Style style, boolean accepted) {
		StringWriter text = new StringWriter();
		Output out = new Output(text);
		TextReport report = new TextReport(out, style, accepted);
		report.write(Sample.project("rules/"));
		report.writeTotals(Sample.project("rules/"));
		out.flush();
		return text.toString();
	}

	/** The golden file is what a person should see; look at it before changing it. */
	@Test
	void tellsEveryShapeOfFlaw() throws IOException {
		assertEquals(Files.readString(TestFiles.own("golden/flaws.txt")), text(Style.PLAIN, true));
	}

	@Test
	void leavesAcceptedFlawsOut() {
		assertTrue(text(Style.PLAIN, true).contains("band-gap"));
		assertFalse(text(Style.PLAIN, false).contains("band-gap"));
	}

	@Test
	void coloursChangeNothingButColours() {
		assertEquals(text(Style.PLAIN, true), text(Style.COLOURED, true).replaceAll("\u001B\\[[0-9;]*m", ""));
	}

	@Test
	void textsFromFilesCannotCommandTheTerminal() {
		assertFalse(text(Style.PLAIN, true).contains("\u001B"));
		assertEquals("a\uFFFD[31mb\uFFFD\tc\uFFFD", Style.safe("a\u001B[31mb\r\tc\u202E"));
	}
}
