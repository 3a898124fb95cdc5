package org.baywright.presenter.bench;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.IntStream;

import org.baywright.analysis.Variable;
import org.baywright.model.Sign;
import org.baywright.presenter.Say;

/**
 * The one thing that the bench asks for next, from the complaint to the kept job: the window shows it on top, the command line
 * as its question.
 *
 * @param title what to do, or what is asked
 * @param detail what exactly is entered, or what is expected; the empty text for nothing
 * @param subject what is entered; empty where there is only something to do
 * @param button what giving the answer is called
 * @param special what the answer does that the bench alone cannot do
 * @param give makes the bench of the answer; its message tells what is wrong with one
 */
public record Ask(String title, String detail, Optional<Subject> subject, String button, Special special, BiFunction<Bench, String, Bench> give) {

	/** What whoever shows the bench does. */
	public enum Special {
		/** Nothing: the bench takes the answer. */
		NONE,
		/** Keep the job among the finished ones. */
		KEEP,
		/** Draft a rule from the job. */
		DRAFT
	}

	/** Returns the bench with the answer. */
	public Bench answer(Bench bench, String text) {
		return give.apply(bench, text);
	}

	private static final String ENTER = "Enter";
	private static final String DONE = "Done";
	/** The detail of what is done in a verification. */
	public static final String VERIFICATION = "Verification";

	private static Ask todo(String title, String detail, String button, BiFunction<Bench, String, Bench> give) {
		return new Ask(title, detail, Optional.empty(), button, Special.NONE, give);
	}

	private static Ask special(String title, String button, Special special) {
		return new Ask(title, "", Optional.empty(), button, special, (bench, text) -> bench);
	}

	/** Returns what is asked to enter something that the user chose. */
	public static Ask of(Subject subject) {
		return entered(subject.title(), "", subject);
	}

	private static Ask entered(String title, String detail, Subject subject) {
		return new Ask(title, detail, Optional.of(subject), ENTER, Special.NONE, (bench, text) -> bench.enter(subject.variable(), text));
	}

	/** Returns what can be said of a job beside what is found: what is kept of it, and how it ended whatever the rules say. */
	public static List<Ask> ofTheJob(Bench bench) {
		if (bench.now().family().isEmpty()) {
			return List.of();
		}
		List<Subject.Choice> causes = JobRule.faults(bench.base()).stream().map(fault -> new Subject.Choice(fault.name(), fault.title())).toList();
		return List.of(said("What the cause was", "", causes, (now, fault) -> fault.isEmpty() ? now.refused("Choose what the cause was.") : now.cause(fault)),
				said("Refer the job: to whom it is handed on", "to whom, such as another workshop", List.of(), Bench::refer),
				said("Identification number of the vehicle", "17 letters and digits", List.of(), Bench::vin),
				said("Time that the job took", "minutes such as 90, or 1.5 h", List.of(), Bench::took), said("Money that the job cost", "a sum such as 140", List.of(), Bench::spent));
	}

	private static Ask said(String title, String range, List<Subject.Choice> choices, BiFunction<Bench, String, Bench> give) {
		return new Ask(title, "", Optional.of(new Subject(new Variable(Variable.Kind.TRAIT, ""), title, choices, range)), ENTER, Special.NONE, give);
	}

	/** Returns what is asked next; nothing before a vehicle is chosen, and where what was entered cannot be. */
	public static Optional<Ask> of(Bench bench, Shown shown) {
		if (shown.lead().asksComplaint()) {
			return complaint(bench);
		}
		Optional<Ask> next = shown.lead().first().map(Ask::of);
		return next.isPresent() ? next : shown.mending().filter(mending -> shown.advice().clashes().isEmpty()).map(Ask::of);
	}

	/** Returns what is asked before a vehicle is chosen; nothing where there are no families. */
	public static Optional<Ask> vehicle(Bench bench) {
		List<Subject.Choice> families = bench.base().vehicleFamilies().stream().map(family -> new Subject.Choice(family.name(), family.title())).toList();
		Subject which = new Subject(new Variable(Variable.Kind.TRAIT, ""), "Vehicle", families, "");
		return families.isEmpty() ? Optional.empty() : Optional.of(new Ask("Choose the vehicle.", "", Optional.of(which), "Choose", Special.NONE, Bench::choose));
	}

	private static Optional<Ask> complaint(Bench bench) {
		List<Subject.Choice> signs = bench.base().signs().stream().filter(sign -> bench.base().reaches(sign.scope(), bench.now().family()))
				.map((Sign sign) -> new Subject.Choice(sign.name(), sign.title())).toList();
		Subject which = new Subject(new Variable(Variable.Kind.SIGN, ""), "Complaint", signs, "");
		return signs.isEmpty() ? Optional.empty() : Optional.of(new Ask("What is wrong with the vehicle?", "", Optional.of(which), ENTER, Special.NONE,
				(now, sign) -> sign.isEmpty() ? now.refused("Choose what is wrong with the vehicle.") : now.enter(new Variable(Variable.Kind.SIGN, sign), "present")));
	}

	private static Ask of(Lead.Todo todo) {
		if (todo.scan() || todo.asks().isEmpty()) {
			return todo(todo.title(), "", DONE, (bench, text) -> bench.scanned());
		}
		Subject first = todo.asks().get(0);
		return entered(todo.title(), todo.title().endsWith(first.title()) ? "" : first.title(), first);
	}

	private static Ask of(Mending mending) {
		return switch (mending.stage()) {
		case FINDING -> !mending.referral().goesTo().isEmpty() ? todo("Hand the job on to " + mending.referral().goesTo() + ".", "", "Hand it on",
				(bench, text) -> bench.refer(mending.referral().goesTo())) : special("The rules lead no further, and the cause is not found.", "Draft a rule", Special.DRAFT);
		case FAILED -> todo("The repair did not put it right.", mending.work().map(work -> work.inVain(List.of()).text()).orElse(""), "Back to finding",
				(bench, text) -> mending.work().map(bench::backToWork).orElse(bench));
		case VERIFIED, REFERRED -> special(mending.headline(), "Keep the job", Special.KEEP);
		case REPAIR -> mending.work().flatMap(Ask::of).or(() -> repair(mending)).orElse(special(mending.headline(), "Keep the job", Special.KEEP));
		};
	}

	private static Optional<Ask> repair(Mending mending) {
		List<Subject.Choice> repairs = mending.causes().stream().flatMap(cause -> cause.repairs().stream()).map(offer -> new Subject.Choice(offer.repair(), offer.title())).toList();
		Subject which = new Subject(new Variable(Variable.Kind.SIGN, ""), "Repair", repairs, "");
		return repairs.isEmpty() ? Optional.empty() : Optional.of(new Ask("Choose the repair.", "", Optional.of(which), "Choose", Special.NONE,
				(bench, name) -> name.isEmpty() ? bench.refused("Choose a repair.") : bench.repair(name)));
	}

	/** Returns the first thing of a repair that is not done. */
	private static Optional<Ask> of(Work work) {
		Optional<Ask> step = IntStream.range(0, work.steps().size()).filter(number -> !work.steps().get(number).done()).boxed().findFirst()
				.map(number -> todo(work.steps().get(number).text(), "Repair: " + work.title(), DONE, (bench, text) -> bench.tick(work.repair(), Progress.Tick.STEP, number)));
		return step.or(() -> IntStream.range(0, work.notices().size()).filter(number -> !work.notices().get(number).done()).boxed().findFirst()
				.map(number -> told(work, number))).or(() -> work.checks().stream().filter(check -> check.verdict() == Check.Verdict.OPEN).findFirst().map(check -> of(work, check)));
	}

	private static Ask told(Work work, int number) {
		Work.Told told = work.notices().get(number);
		return todo("Tell the " + Say.lower(told.whom()) + ": " + told.text(), told.why(), "Told", (bench, text) -> bench.tick(work.repair(), Progress.Tick.TOLD, number));
	}

	/** Returns what is asked at a line of a verification: to enter what is read there, or that it is done. */
	public static Ask of(Work work, Check check) {
		if (check.subject().isEmpty()) {
			return todo(check.text(), VERIFICATION, DONE, (bench, text) -> bench.tick(work.repair(), Progress.Tick.CHECK, check.at().step()));
		}
		return new Ask(check.text(), "Expected: " + check.expected(), check.subject(), ENTER, Special.NONE, (bench, text) -> bench.verify(work.repair(), check.at(), text));
	}
}
