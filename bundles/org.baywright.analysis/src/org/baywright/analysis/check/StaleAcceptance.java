package org.baywright.analysis.check;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Acceptance;
import org.baywright.model.Severity;

/**
 * An acceptance that accepts nothing: its flaw is gone, the meaning it was given for has changed, or it is an error or
 * a breach of the sign-off, which nobody can accept. Made after all other checks.
 */
@RuleCheck(id = "stale-acceptance", severity = Severity.WARNING, summary = "An accepted flaw is gone or has changed")
public final class StaleAcceptance implements Check {

	private static final Set<String> UNPROVED = Set.of("circle", "impossible-vehicle", "undecided");

	@Override
	public void report(Checked checked) {
		// where not all was proved, what is not found may be there yet
		boolean open = HeldBack.in(checked).any() || checked.flaws().stream().anyMatch(flaw -> UNPROVED.contains(flaw.check()));
		// a stale acceptance can be accepted too, by a longer id than its own; so it must be found first
		List<Acceptance> shortestFirst = checked.base().acceptances().stream()
				.sorted(Comparator.comparingInt(acceptance -> acceptance.flawId().length())).toList();
		Map<String, Flaw> byId = new HashMap<>();
		int known = 0;
		for (Acceptance acceptance : shortestFirst) {
			for (; known < checked.flaws().size(); known++) {
				byId.put(checked.flaws().get(known).id(), checked.flaws().get(known));
			}
			Flaw flaw = byId.get(acceptance.flawId());
			if (flaw == null && open) {
				continue;
			} else if (flaw == null) {
				tell(checked, acceptance, "There is no such flaw any more; remove the acceptance.", removed(acceptance));
			} else if (flaw.severity() == Severity.ERROR) {
				tell(checked, acceptance, "An error cannot be accepted; put it right.", removed(acceptance));
			} else if (flaw.breach()) {
				tell(checked, acceptance, "Nobody can accept what the sign-off asks for; take the acceptance out.", removed(acceptance));
			} else if (!flaw.meaning().equals(acceptance.meaning())) {
				tell(checked, acceptance, "The meaning has changed since this was accepted; look again and write \""
						+ flaw.acceptanceKey() + "\" if it may still stand.",
						new Fix.ReplaceText("Say that it may still stand", acceptance.span(), acceptance.flaw(),
								flaw.acceptanceKey()));
			}
		}
	}

	private static Fix removed(Acceptance acceptance) {
		return new Fix.RemoveText("Take the acceptance out", acceptance.span());
	}

	private void tell(Checked checked, Acceptance acceptance, String sentence, Fix fix) {
		checked.flaw(this, acceptance.flaw(), acceptance.span()).says(sentence).about(acceptance.flaw()).fix(fix)
				.add();
	}
}
