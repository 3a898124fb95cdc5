package org.baywright.presenter.plan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.baywright.model.words.Words;
import org.baywright.pack.manifest.PackException;
import org.baywright.pack.PackWriter;
import org.baywright.pack.ToolVersion;
import org.baywright.pack.sheet.Html;
import org.baywright.presenter.PrintPage;
import org.baywright.presenter.picture.LaidOut;
import org.baywright.presenter.picture.Layout;
import org.baywright.presenter.picture.Svg;
import org.baywright.presenter.picture.TextMetrics;
import org.baywright.presenter.picture.Theme;

/**
 * Writes a plan as a page to print: its tree as a picture or, where that is too large to be read on paper, as numbered steps; where
 * they find no room beneath the cautions, on the other side of the sheet.
 */
final class PlanSheet {

	/** What fits between the margins of A4 and Letter without getting too small to be read, in pixels of the picture. */
	private static final double WIDTH = 960;
	private static final double HEIGHT = 620;
	/** So many lines fit on the page beneath its headings, of so many letters. */
	private static final int LINES = 35;
	private static final int LETTERS = 100;
	/** So many letters is a line shorter for each step before it. */
	private static final int INDENT = 3;
	/** So many digits of the fingerprint are told. */
	private static final int DIGITS = 12;
	/** So many lines fit on a page that holds the tree alone. */
	private static final int OVERLEAF = 48;
	/** With less room than for so many lines beneath what stands before it the tree gets such a page, if it needs more. */
	private static final int LEAST = 14;

	private PlanSheet() {
	}

	static String of(PlanShown plan) {
		Html html = PrintPage.begin(plan.title());
		html.element("h1", plan.title()).open("dl").term("Project", plan.rules().name() + fingerprint(plan) + "; Baywright " + ToolVersion.CURRENT).term("Vehicles", String.join("; ", plan.known()));
		plan.needs().ifPresent(needs -> needs(needs).forEach(html::term));
		html.close().open("p");
		for (String blank : List.of("Date", "Vehicle", "Name")) {
			html.text(blank + " ").element("span", "", "class", "blank").text(" ");
		}
		html.close();
		PrintPage.notice(html, "plan", plan.rules().name());
		plan.cautions().forEach(caution -> caution.write(html));
		html.element("h2", "What to expect").list(plan.facts());
		plan.tree().ifPresent(tree -> tree(html, plan, tree));
		return html.close().close().toString();
	}

	/** In place of a date, as the same rules give the same page. */
	private static String fingerprint(PlanShown plan) {
		try {
			return ", rules " + PackWriter.fingerprint(plan.rules()).substring(0, DIGITS) + " (the beginning of their fingerprint)";
		} catch (PackException e) {
			return ""; // a text holds half a character
		}
	}

	private static Map<String, String> needs(Needs needs) {
		Map<String, String> told = new LinkedHashMap<>();
		told.put("Have at hand", Words.commas(needs.tools()));
		told.put("Who", needs.who());
		return told;
	}

	private static int lines(Collection<String> texts) {
		return texts.stream().mapToInt(text -> 1 + text.length() / LETTERS).sum();
	}

	private static int lines(Twig tree) {
		return PlanText.of(tree).stream().mapToInt(line -> 1 + line.toString().length() / Math.max(INDENT, LETTERS - INDENT * line.depth())).sum();
	}

	private static void tree(Html html, PlanShown plan, Twig tree) {
		int beneath = LINES - lines(plan.facts()) - plan.needs().map(needs -> lines(needs(needs).values())).orElse(0) - plan.cautions().stream().mapToInt(caution -> 3 + lines(caution.cautions()) + caution.licensed().size()).sum();
		// a plan of which most is left out is none: where cautions leave it no room the other side of the sheet has it
		boolean overleaf = beneath < Math.min(lines(tree), LEAST);
		int room = overleaf ? OVERLEAF : beneath;
		html.element("h2", "What to do", "class", overleaf ? "overleaf" : "");
		LaidOut picture = tree.size() > room ? null : Layout.of(plan.picture(), TextMetrics.FIXED, () -> false);
		if (picture != null && picture.width() <= WIDTH && picture.height() <= HEIGHT) {
			String svg = Svg.write(picture, Theme.LIGHT);
			html.raw(svg.substring(svg.indexOf("<svg")));
			if (!plan.leftOut().isEmpty()) {
				html.element("p", plan.leftOut());
			}
			return;
		}
		int least = 1;
		Twig shown = tree;
		while (lines(shown) > room && least < 100) {
			least++;
			shown = without(tree, least / 100.0);
		}
		html.element("p", "The share behind a result is that of all vehicles." + (least > 1 ? " “…”: left out on this page, as no more than " + Figures.of100(least / 100.0) + " vehicles come there. The view Plan tells more." : plan.leftOut().isEmpty() ? "" : " " + plan.leftOut())).open("ol", "class", "plan");
		for (PlanText.Line line : PlanText.of(shown)) {
			html.open("li", "style", "--depth:" + line.depth()).text(line.number().isEmpty() ? "" : line.number() + " " + line.result() + ": ");
			html.element(line.step() ? "strong" : "span", line.what()).close();
		}
		html.close();
	}

	/** Leaves out where no more than a share of the vehicles comes. */
	private static Twig without(Twig twig, double least) {
		List<Twig> after = new ArrayList<>();
		double seldom = 0;
		for (Twig next : twig.after()) {
			if (next.share() > least && !next.result().equals(PlanMaker.ELSE)) {
				after.add(without(next, least));
			} else {
				seldom += next.share();
			}
		}
		if (seldom > 0) {
			after.add(PlanMaker.seldom(after.isEmpty(), seldom));
		}
		return new Twig(twig.kind(), twig.result(), twig.share(), twig.title(), twig.detail(), twig.span(), after);
	}
}
