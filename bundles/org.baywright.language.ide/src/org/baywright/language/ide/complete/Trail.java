package org.baywright.language.ide.complete;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.baywright.language.conversion.Texts;
import org.baywright.language.ide.text.Word;

/**
 * What was read on the way to a place, last first.
 *
 * @param before what was read before, or null
 * @param spot where in the grammar the word was read
 * @param word the word
 */
record Trail(Trail before, Frame.Spot spot, Word word) {

	/** Returns the last name read at a feature, without {@code ^}, or the empty text. */
	static String last(Trail trail, String rule, String feature) {
		Frame.Spot wanted = new Frame.Spot(rule, feature);
		Trail at = trail;
		while (at != null && !at.spot().equals(wanted)) {
			at = at.before();
		}
		StringBuilder name = new StringBuilder();
		while (at != null && at.spot().equals(wanted)) {
			name.insert(0, at.word().text());
			// words that touch are one name, such as battery.flat
			boolean touches = at.before() != null && at.before().word().end() == at.word().offset();
			at = touches ? at.before() : null;
		}
		return Texts.plainName(name.toString());
	}

	/** Returns all words read at a feature, in the order of the text. */
	static List<String> all(Trail trail, String rule, String feature) {
		Frame.Spot wanted = new Frame.Spot(rule, feature);
		List<String> found = new ArrayList<>();
		for (Trail at = trail; at != null; at = at.before()) {
			if (at.spot().equals(wanted)) {
				found.add(Texts.plainName(at.word().text()));
			}
		}
		Collections.reverse(found);
		return found;
	}
}
