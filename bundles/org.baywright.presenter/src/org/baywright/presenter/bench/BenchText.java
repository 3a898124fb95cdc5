package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

import org.baywright.model.Meaning;
import org.baywright.model.words.Telling;
import org.baywright.presenter.Link;
import org.baywright.presenter.Say;

/** Puts into paragraphs what the bench tells beside its question: what to do, why, and what follows. */
public final class BenchText {

	/** Longer lists of rules are cut; {@link Shown} has them all. */
	private static final int MOST = 60;

	private final List<Paragraph> told = new ArrayList<>();

	private BenchText() {
	}

	/** Returns everything but what each rule says. */
	public static List<Paragraph> of(Bench bench, Shown shown) {
		BenchText text = new BenchText();
		text.told.addAll(first(shown));
		if (isAfter(shown)) {
			text.told.addAll(mending(bench, shown.mending().get()));
		} else {
			shown.lead().first().ifPresent(todo -> text.told.addAll(doing(todo)));
			text.told.addAll(instead(shown.lead()));
			text.told.addAll(standing(shown));
		}
		text.told.addAll(verdicts(shown.verdicts()));
		text.told.addAll(found(bench));
		return text.told;
	}

	/** Returns what was entered. */
	public static List<Paragraph> found(Bench bench) {
		BenchText text = new BenchText();
		if (!bench.lines().isEmpty()) {
			text.heading("Found so far");
			bench.lines().forEach(line -> text.told.add(Paragraph.item(line.title() + ": " + line.value(), ways -> ways.enter(line.variable()))));
		}
		Done done = bench.now().done();
		text.fact("Identification number", done.vin());
		text.fact("Said to take", done.minutes().map(Telling::minutes).orElse(""));
		text.fact("Said to cost", done.cost().map(Meaning::number).orElse(""));
		return text.told;
	}

	/** Returns whether there is an end in sight, so that it is told what follows and not what is found. */
	public static boolean isAfter(Shown shown) {
		return shown.mending().filter(mending -> mending.stage() != Mending.Stage.FINDING || mending.referral().isDue()).isPresent();
	}

	/** Returns what comes before anything else: what signs ask for, and what cannot be. */
	public static List<Paragraph> first(Shown shown) {
		BenchText text = new BenchText();
		text.told.addAll(precautions(shown));
		text.links("Take care", shown.warnings());
		return text.told;
	}

	/** Returns what signs ask for. */
	public static List<Paragraph> precautions(Shown shown) {
		BenchText text = new BenchText();
		text.links("Before anything else", shown.precautions());
		return text.told;
	}

	/** Returns how the next step is done and why it is the next, with its cautions first. */
	public static List<Paragraph> doing(Lead.Todo todo) {
		BenchText text = new BenchText();
		text.doing(new Doing(todo.exception(), todo.cautions(), todo.how(), todo.pictures()));
		text.items("Why this", todo.why());
		return text.told;
	}

	/** Returns how something is found out, with its cautions first. */
	public static List<Paragraph> doing(Bench bench, Subject subject) {
		BenchText text = new BenchText();
		text.doing(Doing.of(bench.base(), bench.now().readings(), subject.variable()));
		return text.told;
	}

	/** Returns what to say where finding something out needs something of the vehicle although something else comes first; the empty text for nothing. */
	public static String exception(Bench bench, Subject subject) {
		return Doing.of(bench.base(), bench.now().readings(), subject.variable()).exception();
	}

	private void doing(Doing doing) {
		line(doing.exception());
		cautions(doing.cautions());
		items("How", doing.how());
		doing.pictures().forEach(this::add);
	}

	/** Returns the next best steps, and what else is to be said of the next. */
	public static List<Paragraph> instead(Lead lead) {
		BenchText text = new BenchText();
		if (!lead.others().isEmpty()) {
			text.heading("Or instead");
			lead.others().forEach(other -> text.told.add(Paragraph.item(other.title() + " (" + other.expected() + ")", ways -> ways.enter(other.variable()))));
		}
		text.line(lead.note());
		return text.told;
	}

	/** Returns where finding stands. */
	public static List<Paragraph> standing(Shown shown) {
		BenchText text = new BenchText();
		// what is asked for says all else
		if (!shown.advice().clashes().isEmpty() || shown.mending().isEmpty() || shown.headline().equals(Sayer.NO_COMPLAINT)) {
			text.heading(shown.headline());
		}
		shown.mending().ifPresent(mending -> text.inVain(mending));
		return text.told;
	}

	/** Returns what is known of the faults, with the rules that say so. */
	public static List<Paragraph> verdicts(List<Shown.VerdictLine> verdicts) {
		BenchText text = new BenchText();
		if (!verdicts.isEmpty()) {
			text.heading("What is known of the faults");
			verdicts.forEach(verdict -> {
				text.line(verdict.text());
				verdict.rules().forEach(text::add);
			});
		}
		return text.told;
	}

	/** Returns what each rule says, waits for or lacks. */
	public static List<Paragraph> rules(Shown shown) {
		BenchText text = new BenchText();
		text.rules("Rules that applied", shown.fired());
		text.rules("Rules that wait", shown.open());
		text.rules("Rules that could not be decided", shown.unsure());
		text.rules("Rules that can no longer apply", shown.never());
		return text.told;
	}

	// ---- after the cause is known ------------------------------------------------------------------------------

	private static List<Paragraph> mending(Bench bench, Mending mending) {
		BenchText text = new BenchText();
		text.told.addAll(causes(mending));
		text.told.addAll(repairs(bench, mending));
		mending.work().ifPresent(work -> text.told.addAll(work(bench, work)));
		text.told.addAll(left(mending));
		return text.told;
	}

	/** Returns the repairs with what each takes, where there are several. */
	public static List<Paragraph> repairs(Bench bench, Mending mending) {
		BenchText text = new BenchText();
		List<Mending.Offer> offers = mending.causes().stream().flatMap(cause -> cause.repairs().stream()).toList();
		if (offers.size() > 1) {
			text.heading("Repairs");
			offers.forEach(offer -> text.told.add(Paragraph.item(of(offer), ways -> ways.set(bench.repair(offer.repair())))));
		}
		return text.told;
	}

	private static String of(Mending.Offer offer) {
		return offer.title() + (offer.effort().isEmpty() ? "" : " (" + offer.effort() + ")") + (offer.only().isEmpty() ? "" : ", " + offer.only());
	}

	/** Returns where the job stands after finding, and what the cause is. */
	public static List<Paragraph> causes(Mending mending) {
		BenchText text = new BenchText();
		text.heading(mending.headline());
		text.inVain(mending);
		for (Mending.Cause cause : mending.causes()) {
			text.line(cause.title());
			cause.rules().forEach(text::add);
			text.line(cause.note());
		}
		return text.told;
	}

	/** Returns what was not tried, and what the job has taken so far. */
	public static List<Paragraph> left(Mending mending) {
		BenchText text = new BenchText();
		if (mending.referral().isDue()) {
			text.fact("Not tried", String.join(", ", mending.referral().notTried()));
		}
		String minutes = Telling.minutes(mending.spent().minutes());
		text.line("So far: " + (minutes.isEmpty() ? "0 min" : minutes) + (mending.spent().cost().signum() == 0 ? "" : ", cost " + Meaning.number(mending.spent().cost())));
		return text.told;
	}

	/** Returns a repair with its cautions, steps, notices and verification. */
	public static List<Paragraph> work(Bench bench, Work work) {
		BenchText text = new BenchText();
		text.cautions(work.cautions());
		text.heading("Repair: " + work.title());
		text.fact("Where", work.place());
		text.fact("Needs", String.join(", ", work.tools()));
		text.fact("Takes", Telling.minutes(work.minutes()) + (work.cost().signum() == 0 ? "" : ", cost " + Meaning.number(work.cost())));
		text.fact("Who may do it", work.who());
		work.pictures().forEach(text::add);
		for (int i = 0; i < work.steps().size(); i++) {
			text.tick(bench, work, Progress.Tick.STEP, i, work.steps().get(i).done(), work.steps().get(i).text());
		}
		if (!work.notices().isEmpty()) {
			text.heading("Who must know");
		}
		for (int i = 0; i < work.notices().size(); i++) {
			Work.Told notice = work.notices().get(i);
			text.tick(bench, work, Progress.Tick.TOLD, i, notice.done(),
					"The " + Say.lower(notice.whom()) + ": " + notice.text() + (notice.why().isEmpty() ? "" : " Why: " + notice.why()));
		}
		text.items("Changed for good", work.changes());
		if (!work.checks().isEmpty()) {
			text.heading("Verification");
			work.checks().forEach(check -> text.check(bench, work, check));
		}
		return text.told;
	}

	private void check(Bench bench, Work work, Check check) {
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
		told.add(Paragraph.item(mark + check.text() + " Expected: " + check.expected() + read, ways -> ways.ask(Ask.of(work, check))));
		line(check.note());
	}

	private void tick(Bench bench, Work work, Progress.Tick what, int number, boolean done, String text) {
		told.add(Paragraph.item(box(done) + text, ways -> ways.set(bench.tick(work.repair(), what, number))));
	}

	private static String box(boolean done) {
		return done ? "\u2611 " : "\u2610 ";
	}

	// ---- paragraphs --------------------------------------------------------------------------------------------

	private void heading(String text) {
		told.add(Paragraph.heading(text));
	}

	private void line(String text) {
		if (!text.isEmpty()) {
			told.add(Paragraph.line(text));
		}
	}

	private void add(Link link) {
		told.add(Paragraph.item(link));
	}

	private void items(String title, List<String> lines) {
		if (!lines.isEmpty()) {
			heading(title);
			lines.forEach(line -> told.add(Paragraph.item(line)));
		}
	}

	private void links(String title, List<Link> links) {
		if (!links.isEmpty()) {
			heading(title);
			links.forEach(this::add);
		}
	}

	private void fact(String label, String what) {
		line(what.isEmpty() ? "" : label + ": " + what);
	}

	private void inVain(Mending mending) {
		// what is done again in vain is told once
		mending.inVain().stream().flatMap(done -> Stream.of(done.text(), done.outdated())).distinct().forEach(this::line);
	}

	private void cautions(List<Caution> cautions) {
		for (Caution caution : cautions) {
			heading("Caution: " + caution.title());
			Stream.of(caution.cautions().stream(), caution.licensed().stream(), caution.references().stream().map(reference -> "See: " + reference))
					.flatMap(lines -> lines).forEach(line -> told.add(Paragraph.item(line)));
		}
	}

	private void rules(String title, List<Shown.RuleLine> rules) {
		if (!rules.isEmpty()) {
			heading(title + " (" + rules.size() + ")");
			rules.stream().limit(MOST).forEach(rule -> {
				add(new Link(rule.title(), rule.span()));
				rule.lines().forEach(line -> told.add(Paragraph.detail(line)));
			});
			line(rules.size() > MOST ? "\u2026" : "");
		}
	}
}
