package org.baywright.presenter.bench;

import java.util.List;
import java.util.concurrent.CancellationException;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation;
import org.baywright.analysis.Listener;
import org.baywright.model.RuleBase;

/**
 * Works out what the rules make of a bench. Keep one instance: it stays prepared for the same rules and family. May be
 * called from any thread, one call at a time.
 */
public final class Consulting {

	private RuleBase base;
	private String family = "";
	private Consultation consultation;

	/**
	 * Works it out.
	 *
	 * @param listener can stop the work
	 * @throws CancellationException if the listener asked to stop
	 */
	public synchronized Shown show(Bench bench, Listener listener) {
		if (bench.now().family().isEmpty()) {
			return nothing("Choose the vehicle to begin.");
		}
		if (consultation == null || base != bench.base() || !family.equals(bench.now().family())) {
			base = bench.base();
			family = bench.now().family();
			consultation = new Consultation(base, family);
		}
		Advice advice = consultation.advise(bench.now().readings(), listener);
		if (!advice.trouble().isEmpty()) {
			return nothing(advice.trouble());
		}
		return new Sayer(base, family).shown(advice);
	}

	private static Shown nothing(String headline) {
		return new Shown(headline, List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
				new Advice("", List.of(), List.of(), List.of()));
	}
}
