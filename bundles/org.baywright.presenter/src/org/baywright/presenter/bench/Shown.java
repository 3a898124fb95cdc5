package org.baywright.presenter.bench;

import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;
import org.baywright.presenter.Link;

/**
 * What the rules make of what was entered.
 *
 * @param precautions what comes first, as long as signs are there that ask for it
 * @param headline the result in one sentence
 * @param warnings what cannot be, with the findings it is about
 * @param verdicts what stands: confirmed first, then referrals, suspicions and what is cleared
 * @param fired rules that fired, with what they say
 * @param open rules that may still apply, with what each waits for
 * @param never rules that can no longer fire, with the reason
 * @param unsure rules of which nobody knows
 * @param lead what to do next
 * @param mending what follows once the cause is known; empty before a vehicle is chosen
 * @param advice what all this was made of
 */
public record Shown(List<Link> precautions, String headline, List<Link> warnings, List<VerdictLine> verdicts, List<RuleLine> fired,
		List<RuleLine> open, List<RuleLine> never, List<RuleLine> unsure, Lead lead, Optional<Mending> mending, Advice advice) {

	/**
	 * A verdict that stands.
	 *
	 * @param text the fault and what is said of it
	 * @param kind the verdict; {@code null} for a referral
	 * @param rules the rules that say so
	 */
	public record VerdictLine(String text, VerdictKind kind, List<Link> rules) {
		public VerdictLine {
			rules = List.copyOf(rules);
		}
	}

	/**
	 * A rule.
	 *
	 * @param rule its name
	 * @param title the rule in words
	 * @param span where it stands
	 * @param lines what it says, waits for or lacks
	 */
	public record RuleLine(String rule, String title, Span span, List<Link> lines) {
		public RuleLine {
			lines = List.copyOf(lines);
		}
	}

	public Shown {
		precautions = List.copyOf(precautions);
		warnings = List.copyOf(warnings);
		verdicts = List.copyOf(verdicts);
		fired = List.copyOf(fired);
		open = List.copyOf(open);
		never = List.copyOf(never);
		unsure = List.copyOf(unsure);
	}
}
