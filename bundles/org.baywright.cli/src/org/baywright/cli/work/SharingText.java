package org.baywright.cli.work;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.language.merge.Change;
import org.baywright.language.merge.Conflict;

/** Puts into lines what sharing tells. */
public final class SharingText {

	private SharingText() {
	}

	/** Returns the day of a moment, where the user is. */
	public static String day(Instant moment) {
		return moment.atZone(ZoneId.systemDefault()).toLocalDate().toString();
	}

	/** Tells what changed, a line for each element. */
	public static void changes(Output out, List<Change> changes) {
		changes.forEach(change -> out.println(Style.safe("  " + how(change.how()) + "  " + change.title() + " (" + change.file() + ")")));
	}

	/** Tells what changed, and what it says now. */
	public static void details(Output out, List<Change> changes) {
		for (Change change : changes) {
			changes(out, List.of(change));
			if (change.how() == Change.How.CHANGED) {
				change.told().forEach(line -> out.println(Style.safe("    " + line)));
			}
		}
	}

	/** Tells what differs between two states of a project, and what it says now. */
	public static void between(Output out, Map<String, String> before, Map<String, String> after) {
		details(out, Change.between(before, after));
	}

	private static String how(Change.How how) {
		return switch (how) {
		case NEW -> "new    ";
		case CHANGED -> "changed";
		case MOVED -> "moved  ";
		case GONE -> "gone   ";
		};
	}

	/**
	 * Tells what has to be chosen, with what both sides say.
	 *
	 * @param ours what our side is called, such as {@code shared}
	 * @param theirs what the other side is called
	 */
	public static void conflicts(Output out, List<Conflict> conflicts, String ours, String theirs) {
		for (Conflict conflict : conflicts) {
			out.println(Style.safe(conflict.id() + " (" + conflict.file() + ") was changed on both sides:"));
			conflict.told(ours, theirs).forEach(line -> out.println(Style.safe("  " + line)));
		}
		if (!conflicts.isEmpty()) {
			out.println(Style.safe("Nothing was changed. Choose for each of them, such as: --choose \"" + conflicts.get(0).id() + "=ours\", which is what is "
					+ ours + ", or =theirs, what is " + theirs + "."));
		}
	}
}
