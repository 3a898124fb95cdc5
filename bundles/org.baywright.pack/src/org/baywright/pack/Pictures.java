package org.baywright.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;

import org.baywright.model.Picture;
import org.baywright.model.PictureFile;
import org.baywright.model.PictureFile.Wrong;
import org.baywright.model.RuleBase;
import org.baywright.pack.manifest.PackException;

/** The pictures of a pack: those that its rules show, and no others. */
public final class Pictures {


	private Pictures() {
	}

	/**
	 * Reads the pictures that rules show, without those of what the project builds on.
	 *
	 * @param folder the folder of the project; nothing for one that has none
	 * @return their content by their path in the project
	 * @throws PackException if one is not there or unfit; the message says which and why
	 */
	public static SortedMap<String, byte[]> read(Optional<Path> folder, RuleBase all) throws PackException {
		RuleBase rules = Picture.without(all, picture -> picture.span().isElsewhere());
		SortedMap<String, byte[]> pictures = new TreeMap<>();
		for (String file : Picture.files(rules)) {
			if (folder.isEmpty()) {
				throw new PackException("The picture " + file + " cannot be packed: the rules have no folder.");
			}
			require(PictureFile.ofName(file));
			require(PictureFile.look(folder.get(), file));
			try {
				pictures.put(file, Files.readAllBytes(folder.get().resolve(file)));
			} catch (IOException e) {
				throw new PackException("The picture " + file + " cannot be read.", e);
			}
		}
		requireFit(rules, pictures);
		return pictures;
	}

	/** Makes sure that the pictures are those that the rules show, and fit. */
	static void requireFit(RuleBase rules, SortedMap<String, byte[]> pictures) throws PackException {
		SortedSet<String> shown = Picture.files(rules);
		long total = 0;
		for (String file : shown) {
			byte[] content = pictures.get(file);
			if (content == null) {
				throw new PackException("The picture " + file + " is missing, which the rules show.");
			}
			require(PictureFile.ofName(file));
			require(PictureFile.ofContent(file, content, content.length));
			total += content.length;
		}
		if (total > PictureFile.MAX_TOTAL) {
			require(Optional.of(PictureFile.tooMuch(total)));
		}
		for (String file : pictures.keySet()) {
			if (!shown.contains(file)) {
				throw new PackException("The picture " + file + " does not belong there: no rule shows it.");
			}
		}
	}

	private static void require(Optional<Wrong> wrong) throws PackException {
		if (wrong.isPresent()) {
			throw new PackException(wrong.get().message() + " " + wrong.get().advice());
		}
	}

	/** Returns the pictures among the entries of an archive. */
	static SortedMap<String, byte[]> among(java.util.Map<String, byte[]> entries) {
		SortedMap<String, byte[]> pictures = new TreeMap<>(entries);
		Archive.ENTRIES.forEach(pictures::remove);
		return pictures;
	}
}
