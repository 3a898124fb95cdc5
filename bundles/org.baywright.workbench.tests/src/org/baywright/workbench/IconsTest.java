package org.baywright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;

/** Icons are seen on the grounds of both themes: contrast as of WCAG 2.1, 1.4.11 (non-text contrast, 3:1). */
class IconsTest {

	private static final Pattern STROKE = Pattern.compile("stroke=\"(#[0-9a-f]{6})\"");
	/** Strokes that lie on a shape of another colour, never on the ground itself. */
	private static final Set<String> ON_SHAPES = Set.of("#7a3e00");
	/** What the toolkit's own theme paints tool bars with, light and dark. */
	private static final List<String> GROUNDS = List.of("#f6f5f4", "#353535");

	@Test
	void strokesStandOutOnBothGrounds() throws IOException {
		List<String> faint = new ArrayList<>();
		int strokes = 0;
		try (Stream<Path> files = Files.list(sources())) {
			for (Path file : files.filter(each -> each.toString().endsWith(".svg")).sorted().toList()) {
				Matcher stroke = STROKE.matcher(Files.readString(file));
				while (stroke.find()) {
					strokes++;
					for (String ground : GROUNDS) {
						if (!ON_SHAPES.contains(stroke.group(1)) && contrast(stroke.group(1), ground) < 3) {
							faint.add(file.getFileName() + " " + stroke.group(1) + " on " + ground);
						}
					}
				}
			}
		}
		assertTrue(strokes > 40, () -> "the icons were not found");
		assertEquals(List.of(), faint);
	}

	private static Path sources() {
		for (Path folder = Path.of("").toAbsolutePath(); folder != null; folder = folder.getParent()) {
			Path icons = folder.resolve("bundles/org.baywright.workbench/icons/src");
			if (Files.isDirectory(icons)) {
				return icons;
			}
		}
		throw new AssertionError("the tests must run in the source tree");
	}

	private static double contrast(String one, String other) {
		double first = luminance(one) + 0.05;
		double second = luminance(other) + 0.05;
		return Math.max(first, second) / Math.min(first, second);
	}

	private static double luminance(String colour) {
		double[] parts = new double[3];
		for (int i = 0; i < 3; i++) {
			double part = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
			parts[i] = part <= 0.03928 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
		}
		return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
	}
}
