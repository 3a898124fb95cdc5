package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.analysis.Variable;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.words.Words;
import org.baywright.model.write.RuleWriter;
import org.baywright.presenter.Say;

/**
 * What was entered on the bench, with the way back. Every command returns a new bench.
 *
 * @param base the rules
 * @param past what was entered before, the latest last
 * @param now what is entered
 * @param future what was undone, the next to redo last
 * @param message what to say of the last command; the empty text for nothing
 */
public record Bench(RuleBase base, List<Vehicle> past, Vehicle now, List<Vehicle> future, String message) {

	/**
	 * One vehicle with what is known of it.
	 *
	 * @param family its family; the empty text before one is chosen
	 * @param readings traits and findings in the order in which they were entered, each thing once
	 * @param done what was done after the cause was found
	 * @param scanned whether all modules were read at once
	 */
	public record Vehicle(String family, List<Reading> readings, Done done, boolean scanned) {
		public Vehicle {
			readings = List.copyOf(readings);
		}

		/** A vehicle on which nothing was done yet. */
		public Vehicle(String family, List<Reading> readings) {
			this(family, readings, Done.NOTHING, false);
		}
	}

	/** One line of what was entered. */
	public record Line(Variable variable, String kind, String title, String value) {
	}

	public Bench {
		past = List.copyOf(past);
		future = List.copyOf(future);
	}

	/** Returns an empty bench; the first family is chosen if there is only one. */
	public static Bench of(RuleBase base) {
		List<Family> families = base.vehicleFamilies();
		String family = families.size() == 1 ? families.get(0).name() : "";
		return new Bench(base, List.of(), new Vehicle(family, List.of()), List.of(), "");
	}

	/** Returns the bench with rules that were changed; what they do not know any more is left out. */
	public Bench with(RuleBase other) {
		boolean known = isKnown(other);
		if (!known) {
			return of(other);
		}
		List<Reading> kept = now.readings().stream().filter(reading -> isKnown(other, reading)).toList();
		Done done = now.done().only(keptRepairs(other), isSame(now.done().chosen(), other), other.fault(now.done().cause()).isPresent());
		if (kept.size() == now.readings().size()) {
			return done.equals(now.done()) ? new Bench(other, past, now, future, message)
					: new Bench(other, List.of(), new Vehicle(now.family(), kept, done, now.scanned()), List.of(), "The rules of the repair have changed; begin it again.");
		}
		List<String> lost = now.readings().stream().filter(reading -> !kept.contains(reading))
				.map(reading -> line(reading).title()).toList();
		return new Bench(other, List.of(), new Vehicle(now.family(), kept, done, now.scanned()), List.of(),
				"Left out, since the rules no longer know it: " + Words.and(lost) + ".");
	}

	/** Returns whether other rules know the family of the vehicle. */
	private boolean isKnown(RuleBase other) {
		return other.family(now.family()).filter(family -> !family.base()).isPresent();
	}

	/** Goes on with rules that are typed on: the job waits while they do not know its vehicle. */
	public Bench turn(RuleBase other) {
		// who types goes through rules that nobody means
		return !now.readings().isEmpty() && !isKnown(other) ? refused("The rules no longer know the vehicle. What was found is kept, and the job goes on when they do.") : with(other);
	}

	private boolean isKnown(RuleBase other, Reading reading) {
		Variable variable = Variable.of(base, reading);
		return new Subjects(other, now.family()).subject(variable).isPresent()
				&& Entry.read(other, now.family(), variable, text(reading)).reading().isPresent();
	}

	private Map<String, Progress> keptRepairs(RuleBase other) {
		Map<String, Progress> kept = new LinkedHashMap<>(now.done().repairs());
		kept.entrySet().removeIf(entry -> !isSame(entry.getKey(), other)
				|| !entry.getValue().read().values().stream().allMatch(reading -> isKnown(other, reading)));
		return kept;
	}

	/** Ticks and readings belong to steps by their numbers: they are worth nothing once a repair says something else. */
	private boolean isSame(String repair, RuleBase other) {
		Optional<String> before = base.repair(repair).map(new RuleWriter(base)::text);
		return before.isPresent() && before.equals(other.repair(repair).map(new RuleWriter(other)::text));
	}

	/** Chooses a family and begins anew. */
	public Bench choose(String family) {
		return family.equals(now.family()) ? this : next(new Vehicle(family, List.of()), "");
	}

	/** Returns what can be entered, by kind and title; nothing before a family is chosen. */
	public List<Subject> subjects() {
		return now.family().isEmpty() ? List.of() : new Subjects(base, now.family()).all();
	}

	/**
	 * Enters a finding or a trait in place of what was entered of it before. {@link #message()} then tells what is wrong,
	 * and nothing has changed, or how the text was understood.
	 *
	 * @param text one of the subject's choices, or a number with or without a unit
	 */
	public Bench enter(Variable variable, String text) {
		Entry entry = Entry.read(base, now.family(), variable, text);
		if (entry.reading().isEmpty()) {
			return refused(entry.message());
		}
		List<Reading> readings = new ArrayList<>(now.readings());
		int at = indexOf(variable);
		Done done = now.done();
		if (at >= 0) {
			done = isDisturbed(at) ? done.again(new Done.Again(readings.get(at), said(readings.get(at)), false)) : done;
			readings.set(at, entry.reading().get());
		} else {
			readings.add(entry.reading().get());
		}
		return next(new Vehicle(now.family(), readings, done, now.scanned()), entry.message());
	}

	/** Returns whether a test that was done later disturbs a finding, so that it is not only corrected when it is entered anew. */
	private boolean isDisturbed(int at) {
		String subject = now.readings().get(at).subject();
		return now.readings().subList(at + 1, now.readings().size()).stream().flatMap(later -> base.test(later.subject()).map(base::doneBy).stream())
				.anyMatch(test -> test.disturbs().contains(subject));
	}

	/** Notes what follows from what was found, as part of the last command, so that both are undone together. */
	public Bench follow(Reading reading) {
		List<Reading> readings = new ArrayList<>(now.readings());
		readings.add(reading);
		Line line = line(reading);
		String told = line.title() + ": " + line.value() + ", as what was found leaves nothing else.";
		return new Bench(base, past, new Vehicle(now.family(), readings, now.done(), now.scanned()), future, (message + " " + told).strip());
	}

	/** Returns the bench with nothing to say of the last command. */
	public Bench quiet() {
		return new Bench(base, past, now, future, "");
	}

	/** Notes that all modules were read at once, so that what they say takes nothing more. */
	public Bench scanned() {
		return next(new Vehicle(now.family(), now.readings(), now.done(), true), "");
	}

	/** Takes a finding or a trait away again. */
	public Bench remove(Variable variable) {
		List<Reading> readings = new ArrayList<>(now.readings());
		readings.removeIf(reading -> Variable.of(base, reading).equals(variable));
		return readings.size() == now.readings().size() ? this : next(new Vehicle(now.family(), readings, now.done(), now.scanned()), "");
	}

	/** Takes everything away but the family. */
	public Bench clear() {
		Vehicle empty = new Vehicle(now.family(), List.of());
		return now.equals(empty) ? this : next(empty, "");
	}

	/** Takes everything away but the family, as the job is kept elsewhere; undone, it would be kept twice. */
	public Bench startOver(String told) {
		return new Bench(base, List.of(), new Vehicle(now.family(), List.of()), List.of(), told);
	}

	// ---- what is done after the cause is found ---------------------------------------------------------------------

	private Bench done(Done done, String told) {
		return next(new Vehicle(now.family(), now.readings(), done, now.scanned()), told);
	}

	/** Returns the same bench, with something to say. */
	Bench refused(String why) {
		return new Bench(base, past, now, future, why);
	}

	/** Chooses a repair. How far others are is kept. */
	public Bench repair(String name) {
		return on(name, now.done()::choose, "");
	}

	private Bench on(String repair, Function<String, Done> command, String told) {
		return base.repair(repair).isEmpty() ? refused("There is no repair " + repair + " in these rules.") : done(command.apply(repair), told);
	}

	/**
	 * Ticks a step of a repair, of its notices or of its verification, or takes the tick away; the repair is chosen then.
	 *
	 * @param repair its name
	 * @param number which, from 0
	 */
	public Bench tick(String repair, Progress.Tick what, int number) {
		return on(repair, name -> now.done().with(name, progress -> progress.tick(what, number)), "");
	}

	/**
	 * Notes what was read in the verification of a repair, which is chosen then. {@link #message()} then tells what is wrong,
	 * and nothing has changed, or how the text was understood.
	 *
	 * @param repair its name
	 * @param at where, as {@link Check#at()} says
	 * @param text one of the choices of the check's subject, or a number with or without a unit; a blank text takes it away
	 */
	public Bench verify(String repair, At at, String text) {
		if (at.variable().isEmpty()) {
			return refused("Nothing is read at this step: tick it.");
		} else if (text.isBlank()) {
			return on(repair, name -> now.done().with(name, progress -> progress.unread(at)), "");
		}
		Entry entry = Entry.read(base, now.family(), at.variable().get(), text);
		Optional<Reading> before = Optional.ofNullable(now.done().progress(repair).read().get(at)).filter(read -> entry.reading().filter(read::equals).isEmpty());
		Done done = before.map(read -> now.done().again(new Done.Again(read, said(read), true))).orElse(now.done());
		return entry.reading().isEmpty() ? refused(entry.message())
				: on(repair, name -> done.with(name, progress -> progress.read(at, entry.reading().get())), entry.message());
	}

	/**
	 * Goes back to finding after a repair that did not put the vehicle right: it is noted as done in vain, and what was read in
	 * its verification takes the place of what was found before. What the faults were confirmed by and was not read again is
	 * taken away, as it was found on what is no longer there.
	 *
	 * @param failed the repair with what was read
	 */
	public Bench backToWork(Work failed) {
		if (failed.outcome() != Work.Outcome.FAILED) {
			return refused("Nothing that was read after the repair is other than expected.");
		}
		List<Reading> before = now.readings().stream().filter(reading -> failed.restsOn().contains(Variable.of(base, reading))).toList();
		List<Reading> kept = now.readings().stream().filter(reading -> !before.contains(reading)).toList();
		Done.InVain inVain = failed.inVain(before.stream().map(reading -> new Done.InVain.Outdated(reading, line(reading).title() + ": " + line(reading).value())).toList());
		List<Reading> readings = new Afterwards(base, kept).with(failed.read());
		String told = Stream.of(inVain.text(), inVain.outdated(), "What was read now stands; go on finding.").filter(text -> !text.isEmpty()).collect(Collectors.joining(" "));
		return next(new Vehicle(now.family(), readings, now.done().inVain(inVain), false), told);
	}

	/**
	 * Says what the cause was, whatever the rules say.
	 *
	 * @param fault its name; the empty text leaves it to the rules again
	 */
	public Bench cause(String fault) {
		return !fault.isEmpty() && base.fault(fault).isEmpty() ? refused("There is no fault " + fault + " in these rules.") : done(now.done().cause(fault), "");
	}

	/**
	 * Hands the job on.
	 *
	 * @param toWhom to whom; the empty text takes it back
	 */
	public Bench refer(String toWhom) {
		String whom = Say.inLine(toWhom);
		return Say.hides(whom) ? refused("Write to whom in letters that show.") : done(now.done().refer(whom), "");
	}

	/**
	 * Says how long the job took. {@link #message()} tells what is wrong with a text, and nothing has changed then.
	 *
	 * @param text minutes, or a number with a unit of time; a blank text leaves it to the rules again
	 */
	public Bench took(String text) {
		Amount amount = Amount.minutes(text);
		return amount.message().isEmpty() ? done(now.done().took(amount.number()), "") : refused(amount.message());
	}

	/**
	 * Says what the job cost. {@link #message()} tells what is wrong with a text, and nothing has changed then.
	 *
	 * @param text a number in the project's own money; a blank text leaves it to the rules again
	 */
	public Bench spent(String text) {
		Amount amount = Amount.money(text);
		return amount.message().isEmpty() ? done(now.done().spent(amount.number()), "") : refused(amount.message());
	}

	/** Records the vehicle's identification number; a blank text takes it away. {@link #message()} tells what is wrong with one. */
	public Bench vin(String number) {
		String vin = number.strip().toUpperCase(Locale.ROOT);
		VinEntry entry = vin.isEmpty() ? new VinEntry(true, "") : VinEntry.of(base, now.family(), vin);
		return entry.isRight() ? done(now.done().vin(vin), entry.message()) : refused(entry.message());
	}

	// ---- back and forth --------------------------------------------------------------------------------------------

	private Bench next(Vehicle vehicle, String told) {
		return vehicle.equals(now) ? new Bench(base, past, now, future, told)
				: new Bench(base, with(past, now), vehicle, List.of(), told);
	}

	public boolean canUndo() {
		return !past.isEmpty();
	}

	public boolean canRedo() {
		return !future.isEmpty();
	}

	/** Goes one step back; does nothing at the beginning. */
	public Bench undo() {
		return !canUndo() ? this
				: new Bench(base, past.subList(0, past.size() - 1), past.get(past.size() - 1), with(future, now), "");
	}

	/** Goes one step forward again; does nothing if nothing was undone. */
	public Bench redo() {
		return !canRedo() ? this
				: new Bench(base, with(past, now), future.get(future.size() - 1), future.subList(0, future.size() - 1), "");
	}

	private static List<Vehicle> with(List<Vehicle> list, Vehicle last) {
		List<Vehicle> longer = new ArrayList<>(list);
		longer.add(last);
		return longer;
	}

	private int indexOf(Variable variable) {
		for (int i = 0; i < now.readings().size(); i++) {
			if (Variable.of(base, now.readings().get(i)).equals(variable)) {
				return i;
			}
		}
		return -1;
	}

	/** Returns what was entered, as a table shows it. */
	public List<Line> lines() {
		return now.readings().stream().map(this::line).toList();
	}

	/** Returns a reading's value in words. */
	String said(Reading reading) {
		return line(reading).value();
	}

	Line line(Reading reading) {
		Variable variable = Variable.of(base, reading);
		Optional<Subject> subject = new Subjects(base, now.family()).subject(variable);
		String text = text(reading);
		String value = subject.stream().flatMap(found -> found.choices().stream()).filter(choice -> choice.text().equals(text))
				.map(Subject.Choice::title).findFirst().orElse(said(reading, text));
		return new Line(variable, subject.map(Subject::kind).orElse(""), subject.map(Subject::title).orElse(variable.name()),
				value);
	}

	private String said(Reading reading, String text) {
		Optional<Domain.Quantity> quantity = domain(reading).filter(Domain.Quantity.class::isInstance).map(Domain.Quantity.class::cast);
		return quantity.map(found -> reading instanceof Reading.Measured measured ? found.sayNumber(measured.value())
				: found.say(found.indexOf(reading))).orElse(text);
	}

	/** Returns the values that the test or trait of a reading can have. */
	Optional<Domain> domain(Reading reading) {
		return base.test(reading.subject()).map(test -> test.domain())
				.or(() -> Optional.ofNullable(base.traitsOf(now.family()).get(reading.subject())).map(trait -> trait.domain()));
	}

	/** Returns a reading's value as {@link #enter} takes it. */
	static String text(Reading reading) {
		if (reading instanceof Reading.SignSeen seen) {
			return seen.present() ? "present" : "absent";
		} else if (reading instanceof Reading.ModuleAsked asked) {
			return asked.answers() ? "answers" : "silent";
		} else if (reading instanceof Reading.CodeRead read) {
			return Say.lower(read.reading());
		}
		return reading instanceof Reading.Measured measured ? measured.value().toPlainString()
				: ((Reading.Named) reading).value();
	}

	/** Returns the vehicle in words. */
	public String vehicle() {
		return now.family().isEmpty() ? "" : new Words(base).family(now.family());
	}
}
