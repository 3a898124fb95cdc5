package org.baywright.language.workspace;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SortedMap;
import java.util.TreeMap;

/** Sizes and times of rule files, to see cheaply what has changed on the disk. */
public final class FileStamps {

	private FileStamps() {
	}

	/**
	 * Looks at the rule files beneath a folder.
	 *
	 * @return a stamp by relative path, the empty text for a file that is just gone
	 * @throws IOException if the folder cannot be read
	 */
	public static SortedMap<String, String> of(Path folder) throws IOException {
		SortedMap<String, String> stamps = new TreeMap<>();
		for (String file : RuleProject.filesIn(folder)) {
			stamps.put(file, ofFile(folder.resolve(file)));
		}
		return stamps;
	}

	/** Looks at one file; the empty text stands for one that is not there. */
	public static String ofFile(Path file) {
		try {
			return Files.size(file) + " " + Files.getLastModifiedTime(file);
		} catch (IOException e) {
			return "";
		}
	}
}
