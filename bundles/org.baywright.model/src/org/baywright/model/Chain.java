package org.baywright.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Check points in the order in which something flows through them: supply, fuse, connector, module, actuator. The first
 * point that is wrong names the fault; a point that is right clears all that lies before it. The rules and laws that
 * follow are made here and are then rules and laws like all others.
 *
 * @param name name of the chain
 * @param title the chain in words
 * @param scope vehicles it speaks of
 * @param given preconditions of all its rules
 * @param points at least two, from the source on
 * @param beyond faults that are suspected when the last point is right
 * @param provenance who, when, why
 * @param span where its name stands
 */
public record Chain(String name, String title, Scope scope, List<Condition> given, List<Point> points, List<String> beyond,
		Provenance provenance, Span span) implements Named {

	/**
	 * A place where the flow is checked.
	 *
	 * @param test the test there
	 * @param title what the test is called
	 * @param good the results with which all is well up to here
	 * @param faults what lies between the point before and this one
	 * @param span where it is written
	 */
	public record Point(String test, String title, ValueSet good, List<String> faults, Span span) {

		public Point {
			faults = List.copyOf(faults);
		}

		private Condition isGood() {
			return new Condition.TestIs(test, good, span);
		}

		private Condition isBad() {
			return new Condition.TestIs(test, new ValueSet.Except(good), span);
		}
	}

	public Chain {
		given = List.copyOf(given);
		points = List.copyOf(points);
		beyond = List.copyOf(beyond);
	}

	/**
	 * Returns the rules that follow. A good result clears what lies before its point. A bad one names the fault if the
	 * point before is known to be good and only one fault lies between. What lies before a bad point and is not cleared
	 * is suspected.
	 */
	public List<Rule> rules() {
		List<Rule> rules = new ArrayList<>();
		List<String> before = new ArrayList<>();
		for (int i = 0; i < points.size(); i++) {
			Point point = points.get(i);
			before.addAll(point.faults());
			boolean names = point.faults().size() == 1;
			List<Conclusion> good = new ArrayList<>(on(VerdictKind.CLEARED, before, point.span()));
			if (i == points.size() - 1) {
				good.addAll(on(VerdictKind.SUSPECTED, beyond, point.span()));
			}
			rules.add(tested("_", "", point, given, good, i == 0 && names ? on(VerdictKind.CONFIRMED, point.faults(), point.span())
					: nothing(point)));
			if (i > 0 && names) {
				List<Condition> first = new ArrayList<>(given);
				first.add(points.get(i - 1).isGood());
				rules.add(tested("_first_", ", the first wrong", point, first, nothing(point), on(VerdictKind.CONFIRMED, point.faults(), point.span())));
			}
			rules.addAll(suspicions(i));
		}
		return rules;
	}

	private Rule tested(String infix, String more, Point point, List<Condition> when, List<Conclusion> good, List<Conclusion> bad) {
		return new Rule(name + infix + point.test(), title + ": " + point.title() + more, scope, when, List.of(), Optional.of(point.test()),
				List.of(new Outcome("met", Optional.of(point.good()), true, good, point.span()),
						new Outcome("otherwise", Optional.of(new ValueSet.Except(point.good())), false, bad, point.span())),
				provenance, point.span(), point.span());
	}

	/** One rule for each fault: other rules may have cleared one of them. */
	private List<Rule> suspicions(int at) {
		Point point = points.get(at);
		List<Condition> bad = points.subList(at, points.size()).stream().map(Point::isBad).toList();
		List<Rule> rules = new ArrayList<>();
		for (String fault : point.faults()) {
			List<Condition> when = new ArrayList<>(given);
			when.add(bad.size() == 1 ? bad.get(0) : new Condition.Or(bad, point.span()));
			when.add(new Condition.VerdictIs(fault, VerdictKind.CLEARED, false, point.span()));
			rules.add(new Rule(name + "_before_" + point.test() + (rules.isEmpty() ? "" : "_" + (rules.size() + 1)),
					title + ": before " + point.title(), scope, when,
					List.of(), Optional.empty(), List.of(new Outcome("then", Optional.empty(), true,
							on(VerdictKind.SUSPECTED, List.of(fault), point.span()), point.span())),
					provenance, point.span(), point.span()));
		}
		return rules;
	}

	private static List<Conclusion> on(VerdictKind verdict, List<String> faults, Span span) {
		return faults.stream().<Conclusion>map(fault -> new Conclusion.OnFault(verdict, fault, span)).toList();
	}

	private static boolean isOfVehicle(Condition condition) {
		boolean[] found = { true };
		condition.eachAtom(atom -> found[0] &= atom.match(
				(Condition.TraitIs is) -> true,
				(Condition.SignIs is) -> true,
				(Condition.TestIs is) -> true,
				(Condition.CodeIs is) -> true,
				(Condition.ModuleIs is) -> true,
				(Condition.VerdictIs is) -> false,
				(Condition.Unexplained is) -> false));
		return found[0];
	}

	private static List<Conclusion> nothing(Point point) {
		return List.of(new Conclusion.Nothing(point.span()));
	}

	/**
	 * Returns the laws that follow: what reaches a point has passed the point before it. They hold where the chain is used, as
	 * far as that can be said of a vehicle: what is given of verdicts does not count.
	 */
	public List<Law> laws() {
		List<Law> laws = new ArrayList<>();
		for (int i = 1; i < points.size(); i++) {
			List<Condition> all = new ArrayList<>();
			scope.where().ifPresent(all::add);
			given.stream().filter(Chain::isOfVehicle).forEach(all::add);
			all.add(points.get(i).isGood());
			Condition when = all.size() == 1 ? all.get(0) : new Condition.And(all, points.get(i).span());
			laws.add(new Law(title + ": right at “" + points.get(i).title() + "” is right at “" + points.get(i - 1).title() + "”",
					scope.families(), when, points.get(i - 1).isGood(), points.get(i).span()));
		}
		return laws;
	}
}
