package org.baywright.cli.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Fix;
import org.baywright.analysis.Place;
import org.baywright.analysis.Report;
import org.baywright.analysis.Situation;
import org.baywright.model.Acceptance;
import org.baywright.model.Case;
import org.baywright.model.Family;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;

/** A project with one flaw of every shape. No check made it, so that its reports change only with the reports. */
public final class Sample {

	private static final String FILE = "power/flat battery.bay";
	private static final String TEXT = """
			rule low {
				given no_crank, "電圧 Ω" present
			  below : confirms battery.flat
			}
			rule high { met : clears battery.flat }
			""";

	private static final List<String> STORY = List.of("Invented van with engine diesel", "Battery voltage at rest: 12.0 V");

	private Sample() {
	}

	/** @param prefix what the user wrote before the files' paths */
	public static Project project(String prefix) {
		RuleBase.Builder rules = new RuleBase.Builder("van <1>");
		Case passing = job("Job 1", 1);
		Case failing = job("Job \"2\" & more\u0001", 2);
		Case lost = job("Job 3", 3);
		rules.families.add(new Family("van", "Invented van", Optional.empty(), false, List.of(), List.of(), Span.NONE));
		rules.cases.addAll(List.of(passing, failing, lost));
		Evidence witness = new Evidence.Witness(new Situation("van", List.of()));
		Evidence region = new Evidence.Region(new Situation("van", List.of()));
		Span low = span(3, 3, 3, 8);
		Place high = new Place(span(5, 13, 5, 16), "rule high, met");
		Acceptance accepted = new Acceptance("band-gap:low@00000001", "It is known.", Optional.of("A. Author"),
				Optional.of(LocalDate.of(2026, 3, 6)), span(5, 1, 5, 5));
		List<Flaw> flaws = List.of(
				flaw("contradiction", "low/high", Severity.ERROR, low, "Rule low confirms what rule high clears.", List.of(high),
						witness, STORY, List.of()),
				flaw("gap", "no_crank/1", Severity.WARNING, span(2, 8, 2, 16), "A sign leads nowhere.", List.of(), region,
						STORY, List.of(new Fix.AddElement("Add a rule", "rule x {\n  then refers \"\"\n}"), accept("gap:no_crank/1"))),
				flaw("gap", "no_crank/2", Severity.WARNING, span(2, 8, 2, 16), "A sign leads nowhere.", List.of(), region,
						List.of("Invented van", "Lamp: dark"),
						List.of(new Fix.AddElement("Add a rule", "rule x {\n  then refers \"\"\n}"), accept("gap:no_crank/2"))),
				flaw("dead-rule", "high", Severity.WARNING, span(5, 6, 5, 10), "Rule high can never apply.", List.of(),
						new Evidence.Core(List.of(new Place(low, "rule low, below"), high)), List.of("not told"),
						List.of(new Fix.RemoveRule("Remove the rule", "high"), accept("dead-rule:high"))),
				flaw("band-gap", "low", Severity.WARNING, span(1, 6, 1, 9), "Some values lead nowhere.", List.of(),
						new Evidence.Text(), List.of(), List.of()).accept(accepted),
				flaw("unused-result", "lamp", Severity.NOTE, Span.NONE, "Nobody uses the lamp.", List.of(),
						new Evidence.Text(), List.of(), List.of(new Fix.AddLine("Use it", "rule", "low", "run lamp"))),
				flaw("undecided", "low/1", Severity.WARNING, span(1, 6, 1, 9), "It was not decided whether rule low can apply.",
						List.of(), new Evidence.Undecided("whether rule low can apply"),
						List.of("It was not decided whether rule low can apply."), List.of()));
		Problem problem = new Problem(ProblemKind.UNKNOWN_NAME, span(2, 22, 2, 26), "There is no sign `電圧 Ω`.\u001B[31m",
				"Define it, or correct the name.");
		Problem whole = new Problem(ProblemKind.NO_PROVENANCE, span(1, 1, 4, 2), "Nobody says so.", "");
		List<CaseResult> cases = List.of(new CaseResult(passing, true, "", List.of("low"), List.of(), List.of(), List.of()),
				new CaseResult(failing, false, "the cause was battery.flat, but the rules clear it.", List.of("high", "low"), List.of(), List.of(), List.of()));
		return new Project(Optional.empty(), prefix, false, rules.build(), List.of(problem, whole), Map.of(FILE, TEXT), List.of("rule half"),
				new Report(flaws.stream().sorted().toList(), cases, List.of("contradiction", "gap"), 1, 1), new TreeMap<>(), List.of());
	}

	private static Case job(String name, int line) {
		return new Case(name, "van", List.of(), List.of(), List.of(), false, Optional.empty(),
				new Span("jobs.bay", line, 6, line, 12, line * 10, 6));
	}

	private static Span span(int line, int column, int endLine, int endColumn) {
		return new Span(FILE, line, column, endLine, endColumn, line * 30 + column, 5);
	}

	private static Fix accept(String id) {
		return new Fix.AddElement("Accept this with a reason", "accept \"" + id + "@00000001\" because \"\"");
	}

	private static Flaw flaw(String check, String subject, Severity severity, Span span, String message,
			List<Place> related, Evidence evidence, List<String> story, List<Fix> fixes) {
		return new Flaw(check + ":" + subject, check, severity, span, message, related, evidence, story, "00000001", fixes,
				Optional.empty());
	}
}
