package org.baywright.cli;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.language.merge.Change;
import org.baywright.language.merge.Conflict;

/** Puts into lines what sharing tells. */
final class SharingText {

	private SharingText() {
	}

	/** Returns the day of a moment, where the user is. */
	static String day(Instant moment) {
		return moment.atZone(ZoneId.systemDefault()).toLocalDate().toString();
	}

	/** Tells what changed, a line for each element. */
	static void changes(Output out, List<Change> changes) {
		changes.forEach(change -> out.println(Style.safe("  " + how(change.how()) + "  " + change.title() + " (" + change.file() + ")")));
	}

	/** Tells what changed, and what it says now. */
	static void details(Output out, List<Change> changes) {
		for (Change change : changes) {
			changes(out, List.of(change));
			if (change.how() == Change.How.CHANGED) {
				change.told().forEach(line -> out.println(Style.safe("    " + line)));
			}
		}
	}

	private static String how(Change.How how) {
		return switch (how) {
		case NEW -> "new    ";
		case CHANGED -> "changed";
		case MOVED -> "moved  ";
		case GONE -> "gone   ";
		};
	}

	/** Tells what has to be chosen, with what both sides say. */
	static void conflicts(Session session, List<Conflict> conflicts, String ours, String theirs) {
		for (Conflict conflict : conflicts) {
			session.err().println(Style.safe(conflict.id() + " (" + conflict.file() + ") was changed on both sides:"));
			conflict.told(ours, theirs).forEach(line -> session.err().println(Style.safe("  " + line)));
		}
		if (!conflicts.isEmpty()) {
			session.err().println(Style.safe("Nothing was changed. Choose for each of them, such as: --choose \"" + conflicts.get(0).id() + "=ours\", which is what is "
					+ ours + ", or =theirs, what is " + theirs + "."));
		}
	}
}
