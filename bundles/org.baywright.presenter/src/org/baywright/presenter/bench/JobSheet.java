package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation.Derived;
import org.baywright.analysis.Verdict;
import org.baywright.model.Meaning;
import org.baywright.model.Notice;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;
import org.baywright.pack.sheet.Html;
import org.baywright.presenter.PrintPage;
import org.baywright.presenter.Say;

/**
 * Writes what is on the bench as a page to print and to fill in by hand: one HTML file in UTF-8 that needs nothing else. The
 * same bench gives the same text.
 */
public final class JobSheet {

	private final Bench bench;
	private final RuleBase base;
	private final Advice advice;
	private final Mending mending;
	private final Words words;
	private final Html html;

	private JobSheet(Bench bench, Advice advice, String kind, String name) {
		html = PrintPage.begin(name.isBlank() ? kind : kind + " – " + Say.inLine(name));
		this.bench = bench;
		this.advice = advice;
		base = bench.base();
		mending = Mending.of(bench, advice);
		words = new Words(base);
	}

	/** Returns the sheet for a job as it stands on a day: where it is handed on, or the rules say so, the one that goes along. */
	public static String on(LocalDate day, Bench bench, Advice advice) {
		String name = Keeping.of(bench, advice, day).name();
		return Referral.of(bench, advice).goesAlong() ? referral(bench, advice, name, day.toString()) : of(bench, advice, name, day.toString());
	}

	/**
	 * Returns the sheet of a job: what was found, the cause, the repair and how it is verified.
	 *
	 * @param advice what the rules make of the bench
	 * @param name what the job is called; a blank one leaves a line
	 * @param date the day, as it is to be shown; a blank one leaves a line
	 */
	public static String of(Bench bench, Advice advice, String name, String date) {
		JobSheet sheet = new JobSheet(bench, advice, "Job sheet", name);
		sheet.begin("Job sheet", name, date);
		sheet.vehicle();
		sheet.findings();
		sheet.standing();
		sheet.causes();
		sheet.inVain();
		sheet.works().forEach(sheet::work);
		sheet.spent();
		return sheet.end();
	}

	/** Returns the sheet that goes along when a job is handed on: what was found, what is ruled out, what was not tried, to whom. */
	public static String referral(Bench bench, Advice advice, String name, String date) {
		JobSheet sheet = new JobSheet(bench, advice, "Referral", name);
		sheet.begin("Referral", name, date);
		sheet.dangers();
		sheet.html.element("h2", "To whom").open("p");
		sheet.orBlank(sheet.mending.referral().goesTo());
		sheet.html.close();
		sheet.byTheRules();
		sheet.vehicle();
		sheet.findings();
		sheet.standing();
		sheet.list("Not tried", sheet.mending.referral().notTried(), "No test that has to do with the complaint is left out.");
		sheet.causes();
		sheet.inVain();
		sheet.spent();
		return sheet.end();
	}

	/** Who takes it over has to know what can hurt at the parts that it may be. */
	private void dangers() {
		Set<String> hazards = new LinkedHashSet<>();
		advice.verdicts().stream().map(Derived::verdict).filter(verdict -> verdict.kind() == VerdictKind.CONFIRMED || verdict.kind() == VerdictKind.SUSPECTED)
				.flatMap(verdict -> base.fault(verdict.fault()).stream()).flatMap(fault -> base.part(fault.part()).stream()).forEach(part -> hazards.addAll(part.hazards()));
		Caution.of(base, hazards).forEach(caution -> caution.write(html));
	}

	/** Who hands the job on to somebody else still passes on what the rules say of it. */
	private void byTheRules() {
		List<String> others = mending.referral().toWhom().stream().filter(to -> !to.equals(mending.referral().goesTo())).toList();
		if (!mending.referral().accepted().isEmpty() && !others.isEmpty()) {
			html.element("p", "By the rules: refer to " + Words.and(others) + ".");
		}
	}

	// ---- the page ----------------------------------------------------------------------------------------------------

	private void begin(String kind, String name, String date) {
		html.element("h1", kind).open("dl");
		term("Job", Say.inLine(name));
		term("Date", Say.inLine(date));
		html.close();
		PrintPage.notice(html, "sheet", base.name());
		Precautions.caution(base, bench.now().readings()).ifPresent(caution -> caution.write(html));
	}

	private String end() {
		html.open("section", "class", "signature").element("h2", "Done by").open("dl");
		List.of("Name", "Date", "Signature").forEach(term -> term(term, ""));
		html.close().close().close().close();
		return html.toString();
	}

	private void orBlank(String text) {
		if (text.isEmpty()) {
			html.element("span", "", "class", "blank");
		} else {
			html.text(text);
		}
	}

	private void term(String term, String text) {
		html.element("dt", term).open("dd");
		orBlank(text);
		html.close();
	}

	private void box(boolean ticked) {
		html.element("span", ticked ? "x" : "\u00A0", "class", "box", "role", "img", "aria-label", ticked ? "done" : "not done");
	}

	private void list(String title, List<String> texts, String none) {
		html.element("h2", title);
		if (texts.isEmpty()) {
			html.element("p", none);
		}
		html.list(texts);
	}

	private void table(String caption, String... columns) {
		html.open("table").element("caption", caption).open("thead").open("tr");
		for (String column : columns) {
			html.element("th", column, "scope", "col");
		}
		html.close().close().open("tbody");
	}

	private List<Work> works() {
		return Stream.concat(mending.others().stream(), mending.work().stream()).toList();
	}

	// ---- what was found ----------------------------------------------------------------------------------------------

	private void vehicle() {
		html.element("h2", "Vehicle").open("dl");
		term("Family", bench.vehicle());
		base.traitsOf(bench.now().family()).keySet()
				.forEach(trait -> term(Say.upper(trait.replace('_', ' ')), bench.lines().stream()
						.filter(line -> line.kind().equals("Vehicle") && line.variable().name().equals(trait)).map(Bench.Line::value).findFirst().orElse("")));
		term("VIN", bench.now().done().vin());
		html.close();
		List<String> complaint = bench.now().readings().stream().filter(reading -> reading instanceof Reading.SignSeen seen && seen.present())
				.map(reading -> words.sign(reading.subject())).toList();
		list("Complaint", complaint, "No sign was found present.");
	}

	private void findings() {
		List<Bench.Line> lines = bench.lines();
		Course course = new Course(bench, works());
		html.element("h2", "Findings");
		table("As they stand now, in the order in which they were first made; times as the rules say", "", "Kind", "What", "Found", "Time");
		int number = 0;
		for (int i : course.order()) {
			Bench.Line line = lines.get(i);
			if (!line.kind().equals("Vehicle")) {
				html.open("tr").element("td", Integer.toString(++number), "class", "number").element("td", line.kind()).element("td", line.title())
						.element("td", course.of(line)).element("td", Telling.minutes(mending.spent().each().get(i)), "class", "number").close();
			}
		}
		if (number == 0) {
			html.open("tr").element("td", "Nothing was found yet.", "colspan", "5").close();
		}
		html.close().close();
	}

	private void standing() {
		html.element("h2", "What stands").open("dl");
		html.term("Confirmed", Words.commas(mending.causes().stream().filter(Mending.Cause::confirmed).map(Mending.Cause::title).toList()));
		html.term("Suspected", Words.commas(mending.referral().suspected())).term("Ruled out", Words.commas(mending.referral().ruledOut()));
		html.term("Referred", mending.referral().goesTo());
		boolean nothing = mending.causes().stream().noneMatch(Mending.Cause::confirmed) && mending.referral().suspected().isEmpty()
				&& mending.referral().ruledOut().isEmpty() && mending.referral().goesTo().isEmpty();
		html.term("Verdicts", nothing ? "none yet" : "").close();
	}

	private void causes() {
		if (!mending.causes().isEmpty()) {
			html.element("h2", "Cause");
		}
		for (Mending.Cause cause : mending.causes()) {
			html.element("h3", cause.title());
			if (!cause.note().isEmpty()) {
				html.element("p", cause.note());
			}
			html.list(advice.verdicts().stream().filter(derived -> derived.verdict().equals(new Verdict(cause.fault(), VerdictKind.CONFIRMED)))
					.flatMap(derived -> derived.rules().stream()).flatMap(name -> base.rule(name).stream()).map(rule -> rule.title() + rule.provenance().because().map(why -> ": " + why).orElse("")).toList());
		}
	}

	private void inVain() {
		if (!mending.inVain().isEmpty()) {
			list("Done in vain", mending.inVain().stream().map(done -> (done.text() + " " + done.outdated()).strip()).toList(), "");
		}
	}

	// ---- what is done ------------------------------------------------------------------------------------------------

	private void work(Work work) {
		html.element("h2", "Repair: " + work.title());
		work.cautions().forEach(caution -> caution.write(html));
		html.open("dl").term("Where", work.place()).term("Pictures", work.pictures().stream().map(link -> link.text() + " (" + link.span().file() + ")")
				.collect(Collectors.joining("; "))).term("Needs", Words.commas(work.tools())).term("Takes", Telling.minutes(work.minutes()))
				.term("Costs", money(work.cost())).term("Who", work.who()).close();
		if (!work.steps().isEmpty()) {
			html.open("ol", "class", "steps");
			work.steps().forEach(step -> {
				html.open("li");
				box(step.done());
				html.text(step.text()).close();
			});
			html.close();
		}
		if (!work.changes().isEmpty()) {
			html.element("h3", "Changed for good").list(work.changes());
		}
		if (!work.notices().isEmpty()) {
			table("Who is told what", "Whom", "What", "Why", "Told");
			work.notices().forEach(told -> {
				html.open("tr").element("td", whom(told.whom())).element("td", told.text()).element("td", told.why()).open("td");
				box(told.done());
				html.close().close();
			});
			html.close().close();
		}
		verification(work);
	}

	private static String whom(Notice.Whom whom) {
		return Say.upper(whom.name().toLowerCase(Locale.ROOT));
	}

	private void verification(Work work) {
		table("How it is verified", "Step", "Expected", "Read", "As expected");
		work.checks().forEach(check -> {
			html.open("tr").element("td", check.text()).element("td", check.expected()).open("td");
			if (check.subject().isPresent()) {
				orBlank(check.said());
			}
			html.close().open("td");
			if (check.verdict() == Check.Verdict.NOT_AS_EXPECTED) {
				html.element("span", "no", "class", "wrong");
			} else {
				box(check.verdict() == Check.Verdict.AS_EXPECTED);
				html.text(check.note());
			}
			html.close().close();
		});
		html.close().close().open("p").text(switch (work.outcome()) {
		case VERIFIED -> "Verified: everything is as expected.";
		case FAILED -> "Not verified: something is not as expected.";
		case OPEN -> "Not verified yet.";
		}).close();
	}

	// ---- the end -----------------------------------------------------------------------------------------------------

	private void spent() {
		Spent spent = mending.spent();
		html.element("h2", "Time and money").open("dl");
		term("Time", Telling.minutes(spent.minutes()));
		term("Money", money(spent.cost()));
		html.close();
		if (spent.byRules()) {
			html.element("p", "As the rules say; correct it where it was otherwise.");
		}
	}

	private static String money(BigDecimal money) {
		return money.signum() == 0 ? "" : Meaning.number(money);
	}
}
