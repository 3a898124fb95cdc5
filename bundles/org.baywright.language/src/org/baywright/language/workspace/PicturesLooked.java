package org.baywright.language.workspace;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.baywright.model.Picture;
import org.baywright.model.PictureFile;
import org.baywright.model.PictureFile.Wrong;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;

/** Looks whether the pictures that rules show are there and fit. */
final class PicturesLooked {

	private PicturesLooked() {
	}

	/** Returns what is wrong with the pictures, at each place that shows one. */
	static List<Problem> at(Path folder, RuleBase rules) {
		List<Problem> problems = new ArrayList<>();
		Map<String, Optional<Wrong>> looked = new HashMap<>();
		long total = 0;
		for (Picture picture : Picture.of(rules)) {
			if (picture.span().isElsewhere()) {
				continue; // looked at and told there
			}
			Optional<Wrong> wrong = looked.get(picture.file());
			if (wrong == null) {
				wrong = PictureFile.look(folder, picture.file());
				if (wrong.isEmpty()) {
					total += size(folder.resolve(picture.file()));
					wrong = total > PictureFile.MAX_TOTAL ? Optional.of(PictureFile.tooMuch(total)) : wrong;
				}
				looked.put(picture.file(), wrong);
			}
			wrong.ifPresent(found -> problems.add(new Problem(found.kind(), picture.span(), found.message(), found.advice())));
		}
		return problems;
	}

	private static long size(Path file) {
		try {
			return Files.size(file);
		} catch (IOException e) {
			return 0; // it is gone since it was looked at, and told at the next change
		}
	}
}
