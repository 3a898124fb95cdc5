package org.baywright.language.ide.complete;

import java.util.List;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Symbol;

/** Finds whose values are meant where one is being written. */
final class Owners {

	private Owners() {
	}

	static List<Symbol> at(ProjectIndex index, Frame frame, Trail trail) {
		for (Frame next = frame; next != null; next = next.parent()) {
			switch (next.rule().getName()) {
			case "CyclePart":
				return index.get(Key.of(Kind.STATE, Trail.last(trail, "Cycle", "state")));
			case "StateSetting":
				return index.get(Key.of(Kind.STATE, Trail.last(trail, "StateSetting", "state")));
			case "Atom":
				return index.get(Key.subject(Trail.last(trail, "Atom", "subject")));
			case "Reading":
				return index.get(Key.subject(Trail.last(trail, "Reading", "subject")));
			case "RepeatStep", "VerifyStep":
				return index.get(Key.of(Kind.TEST, Trail.last(trail, "VerifyStep", "test")));
			case "Point":
				return index.get(Key.of(Kind.TEST, Trail.last(trail, "Point", "test")));
			case "Rule":
				return index.get(Key.of(Kind.TEST, Trail.last(trail, "Rule", "tests")));
			default:
				break;
			}
		}
		return List.of();
	}
}
