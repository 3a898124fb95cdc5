package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Variable;
import org.baywright.model.Case;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.write.RuleWriter;
import org.baywright.presenter.Say;
import org.baywright.presenter.bench.Mending.Stage;

/** Writes what is on the bench as a finished job. */
public final class CaseText {

	private CaseText() {
	}

	/**
	 * Returns the job as text of a rule file. What the rules confirm is taken for the cause, unless somebody has said what it
	 * was; while nothing is confirmed or referred the end is left open, which the text itself then reports. What the language has
	 * no word for is a comment: what was found out again, repairs in vain, and to whom the job was handed on.
	 *
	 * @param title name of the job
	 */
	public static String of(Bench bench, Advice advice, String title) {
		Mending mending = Mending.of(bench, advice);
		Case job = job(bench, mending, title);
		String text = new RuleWriter(bench.base()).text(job);
		StringBuilder remarks = new StringBuilder();
		Done done = bench.now().done();
		done.inVain().forEach(failed -> {
			failed.before().forEach(before -> remark(remarks, "found first: " + before.words()));
			remark(remarks, "repaired in vain: " + failed.title() + "; " + String.join("; ", failed.wrong()));
		});
		done.again().forEach(again -> remark(remarks, "found first" + (again.afterwards() ? " after the repair: " : ": ")
				+ bench.line(again.reading()).title() + ": " + again.words()));
		String to = mending.referral().goesTo();
		if (!to.isEmpty() && (job.referred() || !done.referredTo().isEmpty())) {
			remark(remarks, "handed on to: " + to);
		}
		if (job.causes().isEmpty() && !job.referred()) {
			remark(remarks, "was: the cause is not known yet");
		}
		return remarks.isEmpty() ? text : text.substring(0, text.lastIndexOf('}')) + remarks + "}\n";
	}

	private static void remark(StringBuilder remarks, String text) {
		remarks.append("  // ").append(Say.inLine(text)).append('\n');
	}

	/** Returns the job. What it took is told where somebody has said so, or where it is at its end and the rules say it. */
	static Case job(Bench bench, Mending mending, String title) {
		Done done = bench.now().done();
		List<Reading> traits = new ArrayList<>();
		List<Reading> found = new ArrayList<>();
		for (Reading reading : bench.now().readings()) {
			boolean trait = Variable.of(bench.base(), reading).kind() == Variable.Kind.TRAIT;
			(trait ? traits : found).add(reading);
		}
		List<String> causes = mending.known();
		boolean referred = causes.isEmpty() && !mending.referral().goesTo().isEmpty();
		boolean over = mending.stage() == Stage.VERIFIED || !done.referredTo().isEmpty();
		Case.Record record = new Case.Record(over ? mending.spent().minutes() : done.minutes().orElse(BigDecimal.ZERO),
				over ? mending.spent().cost() : done.cost().orElse(BigDecimal.ZERO), afterwards(bench, causes), Optional.empty());
		return new Case(Say.inLine(title), bench.now().family(), traits, found, causes, referred, record,
				Optional.of(done.vin()).filter(vin -> !vin.isEmpty()), Span.NONE);
	}

	/** Returns what was read in the verification of the repairs of these faults; of what was read several times, the last. */
	private static List<Reading> afterwards(Bench bench, List<String> causes) {
		RuleBase base = bench.base();
		Map<Variable, Reading> last = new LinkedHashMap<>();
		bench.now().done().repairs().forEach((name, progress) -> {
			if (base.repair(name).filter(repair -> repair.fixes().stream().anyMatch(causes::contains)).isPresent()) {
				progress.read().values().forEach(reading -> last.put(Variable.of(base, reading), reading));
			}
		});
		return List.copyOf(last.values());
	}
}
