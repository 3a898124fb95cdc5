package org.baywright.workbench.view.bench;

import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;

import org.baywright.analysis.Variable;
import org.baywright.model.Meaning;
import org.baywright.model.Span;
import org.baywright.model.words.Telling;
import org.baywright.presenter.Link;
import org.baywright.presenter.bench.Ask;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Caution;
import org.baywright.presenter.bench.Check;
import org.baywright.presenter.bench.Lead;
import org.baywright.presenter.bench.Mending;
import org.baywright.presenter.bench.Progress;
import org.baywright.presenter.bench.Shown;
import org.baywright.presenter.bench.Spent;
import org.baywright.presenter.bench.Work;
import org.baywright.workbench.view.Details;
import org.eclipse.osgi.util.NLS;

/** Tells on the bench what to do, why, and what follows. */
final class Teller {

	/** Longer lists are cut in the view; the presenter has them all. */
	private static final int MOST = 60;

	private final Details details;
	private final Consumer<Variable> choose;
	private final Consumer<Ask> ask;
	private final Consumer<Bench> set;
	private final Runnable again;
	private boolean rulesShown;

	/**
	 * @param choose hears what the user wants to enter
	 * @param ask hears what the user wants to read in the verification
	 * @param set gets the bench after a tick
	 * @param again tells all of it again
	 */
	Teller(Details details, Consumer<Variable> choose, Consumer<Ask> ask, Consumer<Bench> set, Runnable again) {
		this.details = details;
		this.choose = choose;
		this.ask = ask;
		this.set = set;
		this.again = again;
	}

	void tell(Bench bench, Shown shown) {
		details.begin();
		links(BenchMessages.First, shown.precautions());
		links(BenchMessages.Warnings, shown.warnings());
		boolean after = shown.mending().filter(mending -> mending.stage() != Mending.Stage.FINDING || mending.referral().isDue()).isPresent();
		if (after) {
			tell(bench, shown.mending().get());
		} else {
			tell(shown.lead());
			// what is to be done says that the cause is not found
			boolean leads = shown.lead().asksComplaint() || shown.lead().first().isPresent();
			if (!leads) {
				details.heading(shown.headline());
			}
			shown.mending().ifPresent(mending -> mending.inVain().forEach(inVain -> details.line(inVain.text())));
		}
		if (!shown.verdicts().isEmpty()) {
			details.heading(BenchMessages.Verdicts);
			shown.verdicts().forEach(verdict -> {
				details.line(verdict.text());
				verdict.rules().forEach(details::link);
			});
		}
		tellRules(shown);
		details.end();
	}

	private void links(String title, List<Link> links) {
		if (!links.isEmpty()) {
			details.heading(title);
			links.forEach(details::link);
		}
	}

	private void plain(String title, List<String> lines) {
		links(title, lines.stream().map(line -> new Link(line, Span.NONE)).toList());
	}

	// ---- the next step -----------------------------------------------------------------------------------------

	private void tell(Lead lead) {
		lead.first().ifPresent(todo -> {
			tell(todo.cautions());
			plain(BenchMessages.How, todo.how());
			todo.pictures().forEach(details::link);
			plain(BenchMessages.Why, todo.why());
		});
		if (!lead.others().isEmpty()) {
			details.heading(BenchMessages.Instead);
			lead.others().forEach(other -> details.link(other.title() + " (" + other.expected() + ")", () -> choose.accept(other.variable())));
		}
		details.line(lead.note());
	}

	private void tell(List<Caution> cautions) {
		for (Caution caution : cautions) {
			details.heading(BenchMessages.CautionsFirst + ": " + caution.title());
			caution.cautions().forEach(line -> details.link(new Link(line, Span.NONE)));
			caution.licensed().forEach(line -> details.link(new Link(line, Span.NONE)));
			caution.references().forEach(line -> details.link(new Link(line, Span.NONE)));
		}
	}

	// ---- after the cause is known ------------------------------------------------------------------------------

	private void tell(Bench bench, Mending mending) {
		details.heading(mending.headline());
		mending.inVain().forEach(inVain -> details.line(inVain.text()));
		for (Mending.Cause cause : mending.causes()) {
			details.line(cause.title());
			cause.rules().forEach(details::link);
			details.line(cause.note());
		}
		List<Mending.Offer> offers = mending.causes().stream().flatMap(cause -> cause.repairs().stream()).toList();
		if (offers.size() > 1) {
			details.heading(BenchMessages.Repairs);
			offers.forEach(offer -> details.link(offer.title() + (offer.effort().isEmpty() ? "" : " (" + offer.effort() + ")") + (offer.only().isEmpty() ? "" : ", " + offer.only()),
					() -> set.accept(bench.repair(offer.repair()))));
		}
		mending.work().ifPresent(work -> tell(bench, work));
		if (mending.referral().isDue() && !mending.referral().notTried().isEmpty()) {
			details.line(NLS.bind(BenchMessages.NotTried, String.join(", ", mending.referral().notTried())));
		}
		details.line(NLS.bind(BenchMessages.SoFar, spent(mending.spent())));
	}

	private static String spent(Spent spent) {
		String minutes = Telling.minutes(spent.minutes());
		return (minutes.isEmpty() ? "0 min" : minutes) + (spent.cost().signum() == 0 ? "" : ", cost " + Meaning.number(spent.cost()));
	}

	private void tell(Bench bench, Work work) {
		tell(work.cautions());
		details.heading(NLS.bind(BenchMessages.Steps, work.title()));
		fact(BenchMessages.Where, work.place());
		fact(BenchMessages.Needs, String.join(", ", work.tools()));
		fact(BenchMessages.Takes, Telling.minutes(work.minutes()) + (work.cost().signum() == 0 ? "" : ", cost " + Meaning.number(work.cost())));
		fact(BenchMessages.Who, work.who());
		work.pictures().forEach(details::link);
		for (int i = 0; i < work.steps().size(); i++) {
			tick(bench, work, Progress.Tick.STEP, i, work.steps().get(i).done(), work.steps().get(i).text());
		}
		if (!work.notices().isEmpty()) {
			details.heading(BenchMessages.Tell);
		}
		for (int i = 0; i < work.notices().size(); i++) {
			Work.Told told = work.notices().get(i);
			String whom = told.whom().name().toLowerCase(Locale.ROOT);
			tick(bench, work, Progress.Tick.TOLD, i, told.done(), "The " + whom + ": " + told.text() + (told.why().isEmpty() ? "" : " Why: " + told.why()));
		}
		plain(BenchMessages.Changes, work.changes());
		if (!work.checks().isEmpty()) {
			details.heading(BenchMessages.Verification);
			work.checks().forEach(check -> tell(bench, work, check));
		}
	}

	private void fact(String label, String what) {
		if (!what.isEmpty()) {
			details.line(NLS.bind(label, what));
		}
	}

	private void tick(Bench bench, Work work, Progress.Tick what, int number, boolean done, String text) {
		details.link(box(done) + text, () -> set.accept(bench.tick(work.repair(), what, number)));
	}

	private static String box(boolean done) {
		return done ? "\u2611 " : "\u2610 ";
	}

	private void tell(Bench bench, Work work, Check check) {
		if (check.subject().isEmpty()) {
			tick(bench, work, Progress.Tick.CHECK, check.at().step(), check.ticked(), check.text());
			return;
		}
		String mark = switch (check.verdict()) {
		case OPEN -> box(false);
		case AS_EXPECTED -> box(true);
		case NOT_AS_EXPECTED -> "\u2612 ";
		};
		String read = check.said().isEmpty() ? "" : "; read: " + check.said();
		details.link(mark + check.text() + " Expected: " + check.expected() + read, () -> ask.accept(Ask.of(work, check)));
		details.line(check.note());
	}

	// ---- the rules ---------------------------------------------------------------------------------------------

	private void tellRules(Shown shown) {
		if (shown.fired().size() + shown.open().size() + shown.unsure().size() + shown.never().size() == 0) {
			return;
		}
		details.line(" ");
		details.link(rulesShown ? BenchMessages.RulesShown : BenchMessages.Rules, () -> {
			rulesShown = !rulesShown;
			again.run();
		});
		if (rulesShown) {
			tell(BenchMessages.Fired, shown.fired());
			tell(BenchMessages.Waiting, shown.open());
			tell(BenchMessages.Unsure, shown.unsure());
			tell(BenchMessages.Never, shown.never());
		}
	}

	private void tell(String title, List<Shown.RuleLine> rules) {
		if (!rules.isEmpty()) {
			details.heading(NLS.bind(title, rules.size()));
			rules.stream().limit(MOST).forEach(rule -> {
				details.link(new Link(rule.title(), rule.span()));
				rule.lines().forEach(details::link);
			});
			if (rules.size() > MOST) {
				details.line("\u2026");
			}
		}
	}
}
