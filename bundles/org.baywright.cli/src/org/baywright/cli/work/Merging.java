package org.baywright.cli.work;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

import org.baywright.language.merge.Conflict;
import org.baywright.language.merge.Merged;
import org.baywright.language.merge.ProjectMerge;
import org.baywright.pack.WholeFile;

/** Merges one rule file for Git. */
public final class Merging {

	private Merging() {
	}

	/**
	 * Merges two files that came of a third; the result takes the place of ours, as a whole or not at all.
	 *
	 * @param name what the file is called
	 * @return what has to be chosen, in lines; empty if both changes are in the file
	 * @throws IOException if a file cannot be read or written
	 */
	public static List<String> of(Path base, Path ours, Path theirs, String name) throws IOException {
		byte[] before = Files.readAllBytes(base);
		byte[] our = Files.readAllBytes(ours);
		byte[] their = Files.readAllBytes(theirs);
		try {
			Merged merged = ProjectMerge.of(Map.of(name, text(before)), Map.of(name, text(our)), Map.of(name, text(their)));
			byte[] result = merged.texts().getOrDefault(name, "").getBytes(StandardCharsets.UTF_8);
			if (!Arrays.equals(result, our)) {
				WholeFile.writeRules(ours, result);
			}
			return told(merged.conflicts());
		} catch (CharacterCodingException e) {
			return whole(name, ours, before, our, their);
		}
	}

	private static String text(byte[] bytes) throws CharacterCodingException {
		return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
	}

	private static List<String> told(List<Conflict> conflicts) {
		List<String> told = new ArrayList<>();
		for (Conflict conflict : conflicts) {
			told.add(conflict.id() + " (" + conflict.file() + ") was changed on both sides; ours stands in the file:");
			conflict.told("ours", "theirs").forEach(line -> told.add("  " + line));
		}
		if (!conflicts.isEmpty()) {
			told.add("Change the file where theirs is right, and tell Git: git add " + conflicts.get(0).file());
		}
		return told;
	}

	/** What is no text is taken from the side that changed it. */
	private static List<String> whole(String name, Path target, byte[] before, byte[] our, byte[] their) throws IOException {
		if (Arrays.equals(before, our)) {
			WholeFile.writeRules(target, their);
		} else if (!Arrays.equals(before, their) && !Arrays.equals(our, their)) {
			return List.of(name + " holds bytes that are no text in UTF-8, and both sides changed it; ours stays. Put in what is right of theirs, and tell Git: git add " + name);
		}
		return List.of();
	}
}
