package org.baywright.workbench.view.bench;

import org.baywright.model.Span;
import org.baywright.presenter.Link;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.BenchText;
import org.baywright.presenter.bench.Paragraph;
import org.baywright.presenter.bench.Shown;
import org.baywright.presenter.bench.Subject;
import org.baywright.workbench.view.Details;

/** Tells on the bench what to do, why, and what follows. */
final class Teller {

	private final Details details;
	private final Paragraph.Ways ways;
	private final Runnable again;
	private boolean rulesShown;

	/**
	 * @param ways hears what the user follows
	 * @param again tells all of it again
	 */
	Teller(Details details, Paragraph.Ways ways, Runnable again) {
		this.details = details;
		this.ways = ways;
		this.again = again;
	}

	void tell(Bench bench, Shown shown) {
		details.begin();
		BenchText.of(bench, shown).forEach(this::tell);
		if (shown.fired().size() + shown.open().size() + shown.unsure().size() + shown.never().size() > 0) {
			tellRules(shown);
		}
		details.end();
	}

	/** Tells how something is found out that the user chose instead, with its cautions first, and the way back. */
	void tell(Bench bench, Subject chosen) {
		details.begin();
		BenchText.doing(bench, chosen).forEach(this::tell);
		details.line(" ");
		details.link(BenchMessages.BackToProposed, () -> ways.set(bench));
		BenchText.found(bench).forEach(this::tell);
		details.end();
	}

	private void tell(Paragraph paragraph) {
		switch (paragraph.kind()) {
		case HEADING -> details.heading(paragraph.text());
		case LINE -> details.line(paragraph.text());
		case ITEM, DETAIL -> paragraph.way().ifPresentOrElse(way -> details.link(paragraph.text(), () -> way.accept(ways)),
				() -> details.link(new Link(paragraph.text(), Span.NONE)));
		}
	}

	private void tellRules(Shown shown) {
		details.line(" ");
		details.link(rulesShown ? BenchMessages.RulesShown : BenchMessages.Rules, () -> {
			rulesShown = !rulesShown;
			again.run();
		});
		if (rulesShown) {
			BenchText.rules(shown).forEach(this::tell);
		}
	}
}
