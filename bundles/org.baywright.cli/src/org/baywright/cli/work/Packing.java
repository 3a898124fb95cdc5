package org.baywright.cli.work;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.TreeMap;

import org.baywright.cli.report.Project;
import org.baywright.model.Severity;
import org.baywright.pack.Pack;
import org.baywright.pack.PackContents;
import org.baywright.pack.PackWriter;
import org.baywright.pack.Pictures;
import org.baywright.pack.ToolVersion;
import org.baywright.pack.WholeFile;
import org.baywright.pack.manifest.PackException;

/** Writes the pack of a checked project. */
public final class Packing {

	private Packing() {
	}

	/**
	 * Makes a pack.
	 *
	 * @param draft whether it may be made although the sign-off is not met
	 * @throws PackException if no pack can be made, see {@link PackWriter}
	 */
	public static PackWriter.Made make(Project project, boolean draft) throws PackException {
		return PackWriter.make(new PackContents(project.rules(), project.report(), project.problems(), ToolVersion.CURRENT,
				project.problems().stream().anyMatch(problem -> problem.severity() == Severity.ERROR) ? new TreeMap<>()
						: Pictures.read(project.folder(), project.rules()), draft));
	}

	/**
	 * Writes a pack and its sheet.
	 *
	 * @param target the pack
	 * @param sheet where to write the sheet of the rules
	 * @return the pack as it was written
	 * @throws PackException if no pack can be made, see {@link PackWriter}
	 * @throws IOException if a file cannot be written
	 */
	public static Pack write(Project project, Path target, Path sheet) throws PackException, IOException {
		PackWriter.Made made = make(project, false);
		WholeFile.write(target, made.bytes());
		WholeFile.write(sheet, made.pack().sheet().getBytes(StandardCharsets.UTF_8));
		return made.pack();
	}
}
