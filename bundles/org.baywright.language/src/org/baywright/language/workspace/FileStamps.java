package org.baywright.language.workspace;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.model.PictureFile;

/** Sizes and times of rule files, to see cheaply what has changed on the disk. */
public final class FileStamps {

	private FileStamps() {
	}

	/**
	 * Looks at the rule files beneath a folder, and at the pictures that they may show.
	 *
	 * @return a stamp by relative path, the empty text for a file that is just gone
	 * @throws IOException if the folder cannot be read
	 */
	public static SortedMap<String, String> of(Path folder) throws IOException {
		return of(folder, Integer.MAX_VALUE);
	}

	static SortedMap<String, String> of(Path folder, int most) throws IOException {
		SortedMap<String, String> stamps = new TreeMap<>();
		for (String file : ProjectFiles.beneath(folder.toAbsolutePath().normalize(), most).files().keySet()) {
			stamps.put(file, ofFile(folder.resolve(file)));
		}
		for (String picture : PictureFile.in(folder)) {
			stamps.put(picture, ofFile(folder.resolve(picture)));
		}
		return stamps;
	}

	/**
	 * Looks at a folder of rules or a rule pack that a project builds on.
	 *
	 * @return what differs when it has changed; the empty text if it is not there or cannot be read
	 */
	public static String ofBuiltOn(Path path) {
		return Grounds.stamp(path);
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
