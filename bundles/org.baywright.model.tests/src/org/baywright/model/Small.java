package org.baywright.model;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.model.code.RawCode;

/**
 * A small invented rule base in which every kind of element speaks of every kind of thing it can speak of. Each place
 * where one does has a label; at one of them a name can be put that leads nowhere.
 */
final class Small {

	/** The labels of the places where an element speaks of another. */
	final Set<String> places = new TreeSet<>();
	final RuleBase.Builder base = new RuleBase.Builder("small");
	private final String broken;

	private Small(String broken) {
		this.broken = broken;
		vehicles();
		findings();
		rules();
		work();
	}

	/** @param broken label of the place at which the name {@code gone} stands; the empty text if all is whole */
	static Small with(String broken) {
		return new Small(broken);
	}

	private String at(String place, String name) {
		if (!places.add(place)) {
			throw new IllegalStateException("two places " + place);
		}
		return place.equals(broken) ? "gone" : name;
	}

	private StateSetting setting(String user) {
		return new StateSetting(at(user + " state", "ignition"), at(user + " state value", "on"));
	}

	private ValueSet choice(String place, String value) {
		return new ValueSet.Choices(List.of(value, at(place, value)));
	}

	private static Domain names(String... values) {
		List<NamedValue> all = new ArrayList<>();
		for (String value : values) {
			all.add(new NamedValue(value, value, Span.NONE));
		}
		return new Domain.Names(all);
	}

	/** Returns for which vehicles a sign, a test or a repair is. */
	private Scope scope(String of) {
		Condition where = broken.equals(of + " where finding") ? new Condition.SignIs("dead", true, Span.NONE)
				: new Condition.TraitIs(at(of + " where trait", "engine"), new ValueSet.Choices(List.of("electric")), Span.NONE);
		return new Scope(List.of(at(of + " family", "van")), List.of(at(of + " except", "wires")), Optional.of(where), Span.NONE);
	}

	/** Returns what is seen while another test is done. */
	static Test seenWith(String name, String other) {
		return new Test(name, "Watch", names("steady", "jumps"), Optional.empty(), List.of("meter"), List.of(), List.of(), BigDecimal.ONE, BigDecimal.ONE,
				Skill.TRAINED, List.of(), List.of(), List.of(), Span.NONE).asSeenWith(other);
	}

	private Workshop.Scan scan(String place) {
		return new Workshop.Scan(List.of(at(place, "meter")), BigDecimal.ONE, BigDecimal.TEN);
	}

	private static Domain volts() {
		return new Domain.Quantity("V", BigDecimal.ZERO, BigDecimal.TEN, BigDecimal.ONE);
	}

	private void vehicles() {
		base.states.add(new State("ignition", "Key", ((Domain.Names) names("off", "on")).values(), Span.NONE));
		base.tools.add(new Tool("meter", "A meter", BigDecimal.ZERO, Span.NONE));
		base.workshops.add(new Workshop("Yard", Optional.of(BigDecimal.TEN), Optional.of(scan("workshop each")), Optional.of(scan("workshop all")),
				List.of(at("workshop lacks", "meter")), Optional.of(Skill.TRAINED), Span.NONE));
		base.hazards.add(new Hazard("gas", "Charging vapour", List.of("Air."), List.of(), List.of(), Span.NONE));
		base.families.add(new Family("all", "Every one", Optional.empty(), true,
				List.of(new Trait("engine", "", names("diesel", "petrol"), Span.NONE)), List.of(), Span.NONE));
		base.families.add(new Family("wires", "A bus", Optional.empty(), List.of(), Family.Kind.SYSTEM, List.of(), List.of(),
				List.of(), Span.NONE));
		base.families.add(new Family("van", "The Small", Optional.of(at("family parent", "all")), List.of(at("family system", "wires")),
				Family.Kind.VEHICLES,
				List.of(new Trait("built", "year", volts(), Span.NONE), new Trait("engine", "", names("electric"), Span.NONE)),
				List.of(), List.of(new Cycle(at("family cycle", "ignition"), List.of(
						new Cycle.Step(Optional.of(at("family cycle value", "on")), BigDecimal.ZERO),
						new Cycle.Step(Optional.empty(), BigDecimal.ONE)), Span.NONE)), Span.NONE));
		base.modules.add(new Module("body", "Body unit", List.of(at("module family", "van")), List.of(setting("module")),
				List.of(at("module tool", "meter")), BigDecimal.ONE, BigDecimal.ZERO, Span.NONE));
		base.codes.add(new Code("low", "Supply low", at("code module", "body"), new RawCode("1"),
				List.of(setting("code runs")), List.of(), Span.NONE));
	}

	private void findings() {
		base.signs.add(new Sign("dead", "Does nothing", scope("sign"), false, List.of(), Span.NONE));
		base.parts.add(new Part("cell", "A battery", List.of(at("part hazard", "gas")),
				List.of(new Fault("cell.flat", "Empty", at("fault part", "cell"), 0, Span.NONE),
						new Fault("cell.open", "Cut", "cell", 0, Span.NONE)), Span.NONE));
		base.exclusives.add(new Exclusive(List.of("cell.flat", at("exclusive fault", "cell.open")), Span.NONE));
		base.tests.add(new Test("volts", "Measure", volts(), Optional.of(at("test part", "cell")),
				List.of(at("test tool", "meter")), List.of(setting("test")), List.of(), BigDecimal.ONE, BigDecimal.ZERO,
				Skill.BASIC, List.of(), List.of(), List.of(at("test caution", "gas")), Span.NONE));
		base.tests.add(new Test("lamp", "Look", scope("test"), names("lit", "dark"), Optional.empty(), Optional.empty(), Optional.empty(), List.of(), List.of(), List.of(), List.of(),
				BigDecimal.ONE, BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(at("test disturbs sign", "dead"),
						at("test disturbs test", "volts"), at("test disturbs code", "low"), at("test disturbs module", "body")),
				List.of(), Span.NONE));
	}

	private void rules() {
		base.laws.add(new Law("Dark when dead", List.of(at("law family", "van")),
				new Condition.SignIs(at("law when sign", "dead"), true, Span.NONE),
				new Condition.TestIs(at("law then test", "lamp"), choice("law then result", "dark"), Span.NONE), Span.NONE));
		Condition where = new Condition.And(List.of(
				new Condition.TraitIs(at("rule where trait", "engine"), choice("rule where value", "electric"), Span.NONE),
				new Condition.TraitIs("engine", choice("rule where value of another family", "diesel"), Span.NONE),
				new Condition.TraitIs("built", new ValueSet.Union(List.of(ValueSet.Band.atMost(BigDecimal.ONE),
						new ValueSet.Choices(broken.equals("rule where value of a quantity") ? List.of("gone") : List.of()))),
						Span.NONE)), Span.NONE);
		places.add("rule where value of a quantity");
		List<Condition> given = List.of(
				new Condition.Or(List.of(new Condition.SignIs(at("rule sign", "dead"), true, Span.NONE)), Span.NONE),
				new Condition.Not(new Condition.CodeIs(at("rule code", "low"), CodeReading.PRESENT, Span.NONE), Span.NONE),
				new Condition.ModuleIs(at("rule module", "body"), true, Span.NONE),
				new Condition.VerdictIs(at("rule verdict fault", "cell.open"), VerdictKind.CLEARED, true, Span.NONE),
				new Condition.Unexplained(at("rule unexplained sign", "dead"), Span.NONE),
				new Condition.TestIs(at("rule given test", "lamp"), new ValueSet.Except(choice("rule given result", "lit")),
						Span.NONE));
		base.rules.add(rule("flat", new Scope(List.of(at("rule family", "all")), List.of(at("rule except", "van")),
				Optional.of(where), Span.NONE), given, List.of(setting("rule")), at("rule test", "lamp"),
				new Outcome("on", Optional.of(choice("outcome result", "dark")), true, List.of(
						new Conclusion.OnFault(VerdictKind.CONFIRMED, at("outcome fault", "cell.flat"), Span.NONE),
						new Conclusion.Refers("gone", Span.NONE), new Conclusion.Nothing(Span.NONE)), Span.NONE)));
		base.rules.add(rule("bare", new Scope(List.of(), List.of(), Optional.empty(), Span.NONE), List.of(), List.of(),
				at("bare rule test", "lamp")));
		base.rules.add(rule("plain", new Scope(List.of(), List.of(), Optional.empty(), Span.NONE), List.of(), List.of(), null,
				new Outcome("then", Optional.empty(), true, List.of(new Conclusion.Nothing(Span.NONE)), Span.NONE)));
		base.reviews.add(new Review(at("review rule", "flat"), "B. Peer", LocalDate.of(2026, 1, 1), true, "", "0", List.of(), Span.NONE));
		base.remarks.add(new Remark(Optional.of(at("remark rule", "flat")), "", "B. Peer", LocalDate.of(2026, 1, 1), "Which lamp?", "0", Optional.empty(), List.of(),
				Span.NONE));
		base.signOffs.add(new SignOff(1, true, List.of(new SignOff.OfHazard(at("sign-off hazard", "gas"), "electrician", Span.NONE)), Span.NONE));
		base.acceptances.add(new Acceptance("gap:gone@0", "Seen.", Optional.empty(), Optional.empty(), Span.NONE));
	}

	private static Rule rule(String name, Scope scope, List<Condition> given, List<StateSetting> states, String test,
			Outcome... outcomes) {
		return new Rule(name, "A rule", scope, given, states, Optional.ofNullable(test), List.of(outcomes),
				new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.NONE, ""), Optional.empty()), Span.NONE,
				Span.NONE);
	}

	private void work() {
		base.repairs.add(new Repair("charge", "Load it", scope("repair"), List.of(at("repair fault", "cell.flat")), Optional.empty(), List.of(), List.of(),
				List.of(at("repair caution", "gas")), List.of(at("repair tool", "meter")), BigDecimal.ONE, BigDecimal.ZERO,
				Skill.BASIC, List.of(), List.of(), true,
				List.of(new VerifyStep.Clear(at("repair clear", "body"), Span.NONE),
						new VerifyStep.Cycle(at("repair cycle", "ignition"), Span.NONE),
						new VerifyStep.Put(setting("repair put"), Span.NONE),
						new VerifyStep.Read(at("repair read", "body"), Span.NONE),
						new VerifyStep.Expect(at("repair expect", "low"), false, Span.NONE),
						new VerifyStep.Repeat(at("repair repeat", "lamp"), Optional.of(choice("repair repeat result", "lit")), Span.NONE),
						new VerifyStep.Repeat(at("repair repeat without result", "volts"), Optional.empty(), Span.NONE),
						new VerifyStep.ExpectSign(at("repair expect sign", "dead"), false, 3, Span.NONE),
						new VerifyStep.RepeatWhatConfirmed(Span.NONE)), Span.NONE));
		base.cases.add(new Case("Job 1", at("job family", "van"),
				List.of(new Reading.Named(at("job trait", "engine"), at("job trait value", "electric"), Span.NONE),
						new Reading.Measured(at("job measured trait", "built"), BigDecimal.ONE, Span.NONE)),
				List.of(new Reading.SignSeen(at("job sign", "dead"), true, Span.NONE),
						new Reading.CodeRead(at("job code", "low"), CodeReading.PRESENT, Span.NONE),
						new Reading.ModuleAsked(at("job module", "body"), true, Span.NONE),
						new Reading.Named(at("job test", "lamp"), at("job result", "dark"), Span.NONE),
						new Reading.Measured(at("job measured test", "volts"), BigDecimal.ONE, Span.NONE)),
				List.of(at("job cause", "cell.flat")), false, Optional.empty(), Span.NONE));
	}
}
