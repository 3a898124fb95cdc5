package org.baywright.pack;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.Acceptance;
import org.baywright.model.Case;
import org.baywright.model.Code;
import org.baywright.model.CodeReading;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Cycle;
import org.baywright.model.Domain;
import org.baywright.model.Exclusive;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.Hazard;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Module;
import org.baywright.model.NamedValue;
import org.baywright.model.Notice;
import org.baywright.model.Outcome;
import org.baywright.model.Part;
import org.baywright.model.Precaution;
import org.baywright.model.Preparation;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Provenance;
import org.baywright.model.Reading;
import org.baywright.model.Remark;
import org.baywright.model.Repair;
import org.baywright.model.Reply;
import org.baywright.model.Review;
import org.baywright.model.Reviewer;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Sign;
import org.baywright.model.SignOff;
import org.baywright.model.Skill;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.State;
import org.baywright.model.StateSetting;
import org.baywright.model.Test;
import org.baywright.model.Tool;
import org.baywright.model.Trait;
import org.baywright.model.ValueSet.Band;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;
import org.baywright.model.VerifyStep;
import org.baywright.model.VinPattern;
import org.baywright.model.Workshop;
import org.baywright.model.code.Dtc;
import org.baywright.model.code.J1939Code;
import org.baywright.model.code.RawCode;

/** A small invented rule base that uses every kind of element, condition, conclusion, step and reading there is. */
final class Tarn {

	private static final String VEHICLES = "vehicles.bay";
	private static final String POWER = "power/battery.bay";
	private static final StateSetting IGNITION_ON = new StateSetting("ignition", "on");

	private int line = 1;

	static RuleBase rules() {
		return new Tarn().builder().build();
	}

	/** Returns the rule base before it is built, so that a test can change it. */
	RuleBase.Builder builder() {
		RuleBase.Builder base = new RuleBase.Builder("tarn – an invented van");
		vehicles(base);
		findings(base);
		rules(base);
		work(base);
		return base;
	}

	static Report report(RuleBase base) {
		return new Analysis().check(base, Listener.NONE);
	}

	/** Returns the rule base with what the checks find in it and one remark of the language. */
	static PackContents contents() {
		return contents(rules());
	}

	static PackContents contents(RuleBase base) {
		Problem remark = new Problem(ProblemKind.CODE_RESERVED, new Span(VEHICLES, 9, 3, 9, 8, 90, 5),
				"FMI 25 is reserved.", "Look the code up again.");
		return new PackContents(base, report(base), List.of(remark), ToolVersion.CURRENT, new TreeMap<>(), true);
	}

	/** Columns and offsets differ from 1 and 0, so that a test sees that they do not get into a pack. */
	private Span at(String file) {
		line++;
		return new Span(file, line, 7, line, 12, 100 * line, 5);
	}

	private Span here(String file) {
		return new Span(file, line, 20, line, 22, 100 * line + 20, 2);
	}

	private void vehicles(RuleBase.Builder base) {
		String f = VEHICLES;
		Trait engine = new Trait("engine", "", names(f, "diesel", "petrol", "electric"), here(f));
		Trait built = new Trait("built", "year", quantity("", "2015", "2021", "1"), here(f));
		base.families.add(new Family("all", "Every Tarn", Optional.empty(), true, List.of(engine), List.of(), at(f)));
		base.families.add(new Family("t3", "Tarn T3 \"light\" van <2 t", Optional.of("all"), false, List.of(built),
				List.of(new VinPattern("WZZT3", false, at(f)), new VinPattern("1ZZ?3", true, at(f))), here(f)));
		base.families.add(new Family("bus", "Door bus", Optional.empty(), List.of(), Family.Kind.SYSTEM, List.of(), List.of(),
				List.of(new Cycle("ignition", List.of(new Cycle.Step(Optional.of("off"), BigDecimal.ZERO),
						new Cycle.Step(Optional.empty(), new BigDecimal("0.5")), new Cycle.Step(Optional.of("on"), BigDecimal.ZERO)),
						here(f))), at(f)));
		base.families.add(new Family("t4", "Tarn T4", Optional.of("all"), List.of("bus"), Family.Kind.VEHICLES,
				List.of(new Trait("engine", "", names(f, "electric"), at(f))), List.of(), List.of(), here(f)));
		base.states.add(new State("ignition", "Ignition", List.of(new NamedValue("off", "off", here(f)),
				new NamedValue("on", "on, engine stopped", here(f)), new NamedValue("cranking", "cranking", here(f))),
				Map.of("on", new BigDecimal("0.5")), at(f)));
		base.tools.add(new Tool("multimeter", "Digital multimeter", BigDecimal.ZERO, at(f)));
		base.tools.add(new Tool("load", "Load tester", new BigDecimal("2.50"), at(f)));
		base.workshops.add(new Workshop("Yard at the mill", Optional.of(new BigDecimal("72.50")),
				Optional.of(new Workshop.Scan(List.of("multimeter"), new BigDecimal("4"), BigDecimal.ONE)),
				Optional.of(new Workshop.Scan(List.of(), new BigDecimal("6"), BigDecimal.ZERO)), List.of("load"), Optional.of(Skill.TRAINED), at(f)));
		base.hazards.add(new Hazard("charging_gas", "Charging gas", List.of("No flame or spark; let air in."), List.of(),
				List.of("EN 50272-1:2010"), at(f)));
		base.hazards.add(new Hazard("high_voltage", "High voltage", List.of("Isolate, wait, prove dead."),
				List.of("a person qualified for high-voltage vehicles"), List.of("UN R100 rev. 3"), at(f)));
		base.modules.add(new Module("bcm", "Body control module", List.of(), List.of(IGNITION_ON), at(f)));
		base.modules.add(new Module("lift", "Lift control", List.of("t3"), List.of(), List.of("multimeter"), new BigDecimal("2.5"), BigDecimal.ONE, at(f)));
		base.codes.add(new Code("low_supply", "Supply voltage low", "bcm", new Dtc("U3003", "16"), List.of(IGNITION_ON),
				List.of(), at(f)));
		base.codes.add(new Code("no_sub", "no_sub", "bcm", new Dtc("B1234", ""), List.of(),
				List.of(new Preparation.Wait(BigDecimal.TEN)), at(f)));
		base.codes.add(new Code("torque", "Torque limited", "lift", new J1939Code(168, 4), at(f)));
		base.codes.add(new Code("tilt", "Tilt out of range", "lift", new RawCode("7B12 / \"x\""), at(f)));
	}

	private void findings(RuleBase.Builder base) {
		String f = VEHICLES;
		base.signs.add(new Sign("no_crank", "Engine does not crank", false, at(f)));
		base.signs.add(new Sign("stalls", "Stalls now and then", new Scope(List.of(), List.of("t4"), Optional.empty(), here(f)), true,
				List.of(new Precaution(Precaution.Kind.DO_NOT_DRIVE, "It stalls on the road."),
						new Precaution(Precaution.Kind.MAKE_SAFE, "Chock a wheel."),
						new Precaution(Precaution.Kind.DO_NOT_START, "")),
				at(f)));
		base.parts.add(new Part("battery", "12 V battery", Optional.of("under the driver's seat"), List.of("charging_gas"), List.of(
				new Fault("battery.flat", "Low state of charge", "battery", 30, at(f)),
				new Fault("battery.open_cell", "One cell open", "battery", 0, at(f))), here(f)));
		base.parts.add(new Part("lamp", "Charge lamp", List.of(),
				List.of(new Fault("lamp.blown", "Lamp blown", "lamp", 1, at(f))), here(f)));
		base.exclusives.add(new Exclusive(List.of("battery.flat", "battery.open_cell"), at(f)));
		f = POWER;
		line = 0;
		base.tests.add(new Test("rest_voltage", "Battery voltage at rest", beyond(f),
				Optional.of("battery"), List.of("multimeter"), List.of(new StateSetting("ignition", "off")),
				List.of(new Preparation.Do("Headlamps on 2 min, off"), new Preparation.Wait(new BigDecimal("5")),
						new Preparation.Drive(Optional.of(Band.closed(new BigDecimal("20"), new BigDecimal("60"))), BigDecimal.ONE, "uphill")), new BigDecimal("8"), BigDecimal.ZERO, Skill.BASIC,
				List.of(), List.of(), List.of("charging_gas"), at(f)));
		base.tests.add(new Test("lamp_test", "Charge lamp, ignition on",
				new Scope(List.of("t3"), List.of(), Optional.of(new Condition.TraitIs("engine", choice("diesel"), here(f))), here(f)),
				names(f, "lit", "dark"), Optional.empty(), Optional.empty(), Optional.empty(), List.of(),
				List.of("multimeter", "load"), List.of(IGNITION_ON), List.of(), new BigDecimal("1.5"), new BigDecimal("12.30"),
				Skill.TRAINED, List.of("a lamp known to be good"), List.of("rest_voltage", "stalls", "low_supply", "bcm"),
				List.of(), at(f)));
		base.tests.add(new Test("rest_course", "How the voltage behaves at rest", names(f, "steady", "jumps"), Optional.empty(), List.of(), List.of(), List.of(),
				BigDecimal.ZERO, BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(), List.of(), at(f)).asSeenWith("rest_voltage"));
	}

	private void rules(RuleBase.Builder base) {
		String f = POWER;
		base.laws.add(new Law("A flat battery cannot crank", List.of("t3"),
				new Condition.TestIs("rest_voltage", Band.below(new BigDecimal("9")), at(f)),
				new Condition.SignIs("no_crank", true, here(f)), here(f)));
		base.laws.add(new Law("A dark lamp and a silent module never meet", List.of(), new Condition.And(
				List.of(new Condition.TestIs("lamp_test", choice("dark"), at(f)), new Condition.ModuleIs("bcm", false, here(f))),
				here(f)), new Condition.Or(List.of(), here(f)), here(f)));
		base.rules.add(rule(f, "flat", "Battery too low to crank", scope(f, "t3"), "rest_voltage",
				List.of(sign(f, "no_crank")),
				outcome(f, "met", Band.closed(new BigDecimal("12.4"), new BigDecimal("13.0")), true,
						on(f, VerdictKind.CLEARED, "battery.flat")),
				outcome(f, "below", Band.below(new BigDecimal("12.4")), false, on(f, VerdictKind.CONFIRMED, "battery.flat")),
				outcome(f, "above", new ValueSet.Union(List.of(new Band(Optional.of(new BigDecimal("13")), true, Optional.empty(), false),
						choice("ol"))), false,
						new Conclusion.Nothing(here(f)))));
		base.rules.add(rule(f, "lamp", "Lamp dark", scope(f), "lamp_test",
				List.of(new Condition.Unexplained("stalls", at(f)),
						new Condition.VerdictIs("battery.flat", VerdictKind.CLEARED, false, here(f)),
						new Condition.Not(new Condition.Or(List.of(new Condition.CodeIs("low_supply", CodeReading.PRESENT, here(f)),
								new Condition.CodeIs("no_sub", CodeReading.UNTESTED, here(f))), here(f)), here(f))),
				outcome(f, "on dark", choice("dark"), true, on(f, VerdictKind.CONFIRMED, "lamp.blown")),
				outcome(f, "otherwise", new ValueSet.Except(choice("dark")), false, new Conclusion.Nothing(here(f)))));
		Scope narrow = new Scope(List.of("all"), List.of("t4"), Optional.of(new Condition.And(List.of(
				new Condition.TraitIs("engine", new ValueSet.Except(choice("electric")), at(f)),
				new Condition.TraitIs("built", new ValueSet.Union(List.of(Band.atMost(new BigDecimal("2016")),
						Band.closed(new BigDecimal("2020"), new BigDecimal("2020")))), here(f))), here(f))), here(f));
		base.rules.add(rule(f, "guess", "Codes point at the cell", narrow, null,
				List.of(new Condition.CodeIs("torque", CodeReading.UNREAD, at(f)), new Condition.CodeIs("tilt", CodeReading.MISSING, here(f)),
						new Condition.SignIs("no_crank", false, here(f))),
				new Outcome("then", Optional.empty(), false, List.of(on(f, VerdictKind.SUSPECTED, "battery.open_cell"),
						new Conclusion.Refers("a battery specialist", here(f))), here(f))));
	}

	private void work(RuleBase.Builder base) {
		String f = "work.bay";
		line = 0;
		base.repairs.add(new Repair("recharge", "Recharge and load-test", new Scope(List.of("t3"), List.of(), Optional.empty(), at(f)), List.of("battery.flat", "lamp.blown"), Optional.of("under the seat"), List.of(),
				List.of("Charge to 12.6 V."), List.of("charging_gas"), List.of("load"), new BigDecimal("45"), new BigDecimal("20"),
				Skill.LICENSED, List.of(new Notice(Notice.Whom.CUSTOMER, "The clock must be set again.", ""),
						new Notice(Notice.Whom.AUTHORITY, "The lamp is another one.", "Its type is in the papers.")), List.of("The old lamp is gone."), true,
				List.of(new VerifyStep.Clear("bcm", at(f)), new VerifyStep.Cycle("ignition", at(f)),
						new VerifyStep.Put(IGNITION_ON, at(f)), new VerifyStep.Read("bcm", at(f)),
						new VerifyStep.Expect("low_supply", false, at(f)),
						new VerifyStep.Repeat("rest_voltage", Optional.of(Band.closed(new BigDecimal("12.4"), new BigDecimal("13"))),
								at(f)),
						new VerifyStep.Repeat("lamp_test", Optional.empty(), at(f)), new VerifyStep.Prepare(new Preparation.Drive(Optional.empty(), BigDecimal.ZERO, ""), at(f)),
						new VerifyStep.ExpectSign("stalls", false, 10, at(f)), new VerifyStep.RepeatWhatConfirmed(at(f))),
				here(f)));
		base.cases.add(new Case("Job 1041", "t3",
				List.of(new Reading.Named("engine", "diesel", at(f)), new Reading.Measured("built", new BigDecimal("2018"), here(f))),
				List.of(new Reading.SignSeen("no_crank", true, here(f)),
						new Reading.Measured("rest_voltage", new BigDecimal("11.60"), here(f)),
						new Reading.CodeRead("low_supply", CodeReading.PRESENT, here(f)),
						new Reading.ModuleAsked("lift", false, here(f))),
				List.of("battery.flat"), false, new Case.Record(new BigDecimal("90"), new BigDecimal("20.50"),
						List.of(new Reading.Measured("rest_voltage", new BigDecimal("12.7"), here(f))), Optional.of(new BigDecimal("12"))),
				Optional.of("WZZT3AAA0JA000001"), here(f)));
		Rule flat = base.rules.get(0);
		base.reviews.add(new Review("flat", "B. Peer", LocalDate.of(2026, 3, 4), true, "Agreed, with <care>",
				Meaning.fingerprint(flat), List.of(), at(f)));
		LocalDate later = LocalDate.of(2026, 3, 7);
		base.reviews.add(new Review("lamp", "C. Peer", LocalDate.of(2026, 3, 5), false, "", "00000000", List.of(
				new Reply(false, "A. Author", later, "Seen in <two> jobs.", here(f)), new Reply(true, "C. Peer", later, "", here(f))), at(f)));
		base.remarks.add(new Remark(Optional.of("flat"), "", "C. Peer", later, "Which clamp?", Meaning.fingerprint(flat), Optional.of("run rest_voltage"),
				List.of(), at(f)));
		base.remarks.add(new Remark(Optional.empty(), "Limit raised", "C. Peer", later, "Say why.", "", Optional.empty(),
				List.of(new Reply(true, "B. Peer", later, "Said.", here(f))), at(f)));
		base.signOffs.add(new SignOff(1, true, List.of(new SignOff.OfHazard(base.hazards.get(0).name(), "electrician", here(f))), at(f)));
		base.reviewers.add(new Reviewer("B. Peer", List.of("electrician", "driver"), at(f)));
		String accepted = "gap:stalls/0000";
		base.acceptances.add(new Acceptance(accepted + "@01234567", "It is on order.", Optional.of("A. Author"),
				Optional.of(LocalDate.of(2026, 3, 6)), at(f)));
		base.acceptances.add(new Acceptance("no-meaning", "Seen.", Optional.empty(), Optional.empty(), at(f)));
	}

	private Rule rule(String f, String name, String title, Scope scope, String test, List<Condition> given,
			Outcome... outcomes) {
		Provenance from = name.equals("guess")
				? new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.NONE, ""), Optional.empty())
				: new Provenance(Optional.of("A. Author"), Optional.of(LocalDate.of(2026, 3, 2)),
						new Source(Source.Kind.PUBLISHED, "An invented handbook, 2nd edition"), Optional.of("State of charge & all."));
		return new Rule(name, title, scope, given, name.equals("lamp") ? List.of(IGNITION_ON) : List.of(),
				Optional.ofNullable(test), List.of(outcomes), from, here(f), at(f));
	}

	private Scope scope(String f, String... families) {
		return new Scope(List.of(families), List.of(), Optional.empty(), here(f));
	}

	private Condition sign(String f, String name) {
		return new Condition.SignIs(name, true, here(f));
	}

	private Outcome outcome(String f, String label, ValueSet values, boolean listed, Conclusion... says) {
		return new Outcome(label, Optional.of(values), listed, List.of(says), at(f));
	}

	private Conclusion on(String f, VerdictKind verdict, String fault) {
		return new Conclusion.OnFault(verdict, fault, here(f));
	}

	private static ValueSet choice(String... names) {
		return new ValueSet.Choices(List.of(names));
	}

	private static Domain quantity(String unit, String low, String high, String step) {
		return new Domain.Quantity(unit, new BigDecimal(low), new BigDecimal(high), new BigDecimal(step));
	}

	/** Volts, with what the instrument shows beyond its range. */
	private Domain beyond(String f) {
		return new Domain.Quantity("V", BigDecimal.ZERO, new BigDecimal("18.0"), new BigDecimal("0.10"),
				Optional.of(new NamedValue("lo", "under range", at(f))), Optional.of(new NamedValue("ol", "over range", at(f))));
	}

	private Domain names(String f, String... names) {
		return new Domain.Names(List.of(names).stream().map(name -> new NamedValue(name, name, here(f))).toList());
	}
}
