package org.baywright.cli.report;

import org.baywright.presenter.review.Compared;

/** What a change does, as text for people. */
public final class ComparedText {

	/** So many entries of a list are told, unless somebody asks for more. */
	public static final int MOST = 12;

	private ComparedText() {
	}

	/**
	 * Returns the text, lines ended.
	 *
	 * @param all whether to tell all entries of long lists
	 */
	public static String of(Compared compared, Style style, boolean all) {
		StringBuilder text = new StringBuilder(style.strong(Style.safe(compared.headline()))).append('\n');
		for (Compared.Section section : compared.sections()) {
			text.append('\n').append(style.strong(Style.safe(section.title()))).append('\n');
			int most = all ? section.entries().size() : Math.min(MOST, section.entries().size());
			for (Compared.Entry entry : section.entries().subList(0, most)) {
				text.append("  ").append(Style.safe(entry.text())).append('\n');
				entry.details().forEach(detail -> text.append("    ").append(Style.safe(detail)).append('\n'));
			}
			if (most < section.entries().size()) {
				text.append("  \u2026 and ").append(section.entries().size() - most).append(" more; --all tells them\n");
			}
		}
		return text.append('\n').append(Style.safe(compared.note())).append('\n').toString();
	}
}
