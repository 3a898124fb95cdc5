package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation;
import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Consultations;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.planner.Proposals;
import org.baywright.presenter.Link;

/**
 * Works out what the rules make of a bench. Keep one instance: it stays prepared for the same rules and family. May be
 * called from any thread, one call at a time.
 */
public final class Consulting {

	private static final Advice NOTHING = new Advice("", List.of(), List.of(), List.of());

	private RuleBase base;
	private String family = "";
	private Consultation consultation;
	private final Leading leading = new Leading();

	/**
	 * Works it out.
	 *
	 * @param listener can stop the work
	 * @throws CancellationException if the listener asked to stop
	 */
	public synchronized Shown show(Bench bench, Listener listener) {
		if (bench.now().family().isEmpty()) {
			return nothing(List.of(), "Choose the vehicle to begin.");
		}
		List<Spoilt> spoilt = Spoilt.of(bench.base(), bench.now().readings());
		List<Reading> counted = counted(bench, spoilt);
		List<Link> precautions = Precautions.of(bench.base(), bench.now().readings());
		Advice advice = prepared(bench).advise(counted, listener);
		if (!advice.trouble().isEmpty()) {
			return nothing(precautions, advice.trouble());
		}
		Mending mending = Mending.of(bench, advice);
		Lead lead = mending.stage() == Mending.Stage.FINDING && advice.clashes().isEmpty() ? leading.lead(bench, counted, Proposals.Care.QUICK, listener::isCancelled) : Lead.NONE;
		return new Sayer(base, family).shown(precautions, spoilt, advice, lead, mending);
	}

	/** Works out what the rules say of a bench, and not what to do next; nothing stops it. */
	public synchronized Advice advice(Bench bench) {
		return bench.now().family().isEmpty() ? NOTHING : prepared(bench).advise(counted(bench, Spoilt.of(bench.base(), bench.now().readings())), Listener.NONE);
	}

	private static List<Reading> counted(Bench bench, List<Spoilt> spoilt) {
		return bench.now().readings().stream().filter(reading -> spoilt.stream().noneMatch(one -> one.reading() == reading)).toList();
	}

	private Consultation prepared(Bench bench) {
		if (consultation == null || base != bench.base() || !family.equals(bench.now().family())) {
			base = bench.base();
			family = bench.now().family();
			consultation = Consultations.of(base, family);
		}
		return consultation;
	}

	/**
	 * A bench on which what follows is noted.
	 *
	 * @param shown what the rules make of it
	 * @param noted what was noted, in sentences
	 */
	public record Followed(Bench bench, Shown shown, List<String> noted) {
		public Followed {
			noted = List.copyOf(noted);
		}
	}

	/**
	 * Works it out, and notes what follows from what was found until something is left to find out.
	 *
	 * @param listener can stop the work
	 * @throws CancellationException if the listener asked to stop
	 */
	public Followed follow(Bench bench, Listener listener) {
		Bench now = bench;
		List<String> noted = new ArrayList<>();
		Shown shown = show(now, listener);
		while (shown.lead().follows().isPresent()) {
			Reading reading = shown.lead().follows().get();
			noted.add(now.quiet().follow(reading).message());
			now = now.follow(reading);
			shown = show(now, listener);
		}
		return new Followed(now, shown, noted);
	}

	private static Shown nothing(List<Link> precautions, String headline) {
		return new Shown(precautions, headline, List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), Lead.NONE, Optional.empty(), NOTHING);
	}
}
