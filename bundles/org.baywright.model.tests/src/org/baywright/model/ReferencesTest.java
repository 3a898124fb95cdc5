package org.baywright.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReferencesTest {

	/** Place | who speaks of what | what goes with it when only what is whole is kept, beside that itself. */
	private static final String PLACES = """
			family parent | family van | family | module body, code low, sign dead, test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			workshop each | workshop | tool |
			workshop all | workshop | tool |
			workshop lacks | workshop | tool |
			module family | module body | family | code low, test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			module tool | module body | tool | code low, test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			module state | module body | state | code low, test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			module state value | module body | value of state ignition | code low, test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			family system | family van | family | module body, code low, sign dead, test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			family cycle | family van | state | module body, code low, sign dead, test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			family cycle value | family van | value of state ignition | module body, code low, sign dead, test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			code runs state | code low | state | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			code runs state value | code low | value of state ignition | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			repair expect sign | repair charge | sign |
			code module | code low | module | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			part hazard | part cell | hazard | exclusive, test volts, test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			fault part | part cell | part | exclusive, test volts, test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			exclusive fault | exclusive | fault |
			test part | test volts | part | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test tool | test volts | tool | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test state | test volts | state | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test state value | test volts | value of state ignition | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test caution | test volts | hazard | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test disturbs sign | test lamp | finding | law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test disturbs test | test lamp | finding | law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test disturbs code | test lamp | finding | law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test disturbs module | test lamp | finding | law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			sign family | sign dead | family | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			sign except | sign dead | family | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			sign where trait | sign dead | trait | test lamp, law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test family | test lamp | family | law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test except | test lamp | family | law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			test where trait | test lamp | trait | law, rule bare, rule flat, repair charge, job, review of flat, remark on flat
			repair family | repair charge | family |
			repair except | repair charge | family |
			repair where trait | repair charge | trait |
			law family | law | family |
			law when sign | law | sign |
			law then test | law | test |
			law then result | law | value of test lamp |
			rule family | rule flat | family | review of flat, remark on flat
			rule except | rule flat | family | review of flat, remark on flat
			rule where trait | rule flat | trait | review of flat, remark on flat
			rule where value | rule flat | value of trait engine | review of flat, remark on flat
			rule where value of another family | rule flat | value of trait engine | review of flat, remark on flat
			rule where value of a quantity | rule flat | value of trait built | review of flat, remark on flat
			rule sign | rule flat | sign | review of flat, remark on flat
			rule code | rule flat | code | review of flat, remark on flat
			rule module | rule flat | module | review of flat, remark on flat
			rule verdict fault | rule flat | fault | review of flat, remark on flat
			rule unexplained sign | rule flat | sign | review of flat, remark on flat
			rule given test | rule flat | test | review of flat, remark on flat
			rule given result | rule flat | value of test lamp | review of flat, remark on flat
			bare rule test | rule bare | test |
			rule state | rule flat | state | review of flat, remark on flat
			rule state value | rule flat | value of state ignition | review of flat, remark on flat
			rule test | rule flat | test | review of flat, remark on flat
			outcome result | rule flat | value of test lamp | review of flat, remark on flat
			outcome fault | rule flat | fault | review of flat, remark on flat
			review rule | review of gone | rule |
			remark rule | remark on gone | rule |
			sign-off hazard | sign-off | hazard |
			repair fault | repair charge | fault |
			repair caution | repair charge | hazard |
			repair tool | repair charge | tool |
			repair clear | repair charge | module |
			repair cycle | repair charge | state |
			repair put state | repair charge | state |
			repair put state value | repair charge | value of state ignition |
			repair read | repair charge | module |
			repair expect | repair charge | code |
			repair repeat | repair charge | test |
			repair repeat result | repair charge | value of test lamp |
			repair repeat without result | repair charge | test |
			job family | job | family |
			job trait | job | trait |
			job trait value | job | value of trait engine |
			job measured trait | job | trait |
			job sign | job | sign |
			job code | job | code |
			job module | job | module |
			job test | job | test |
			job result | job | value of test lamp |
			job measured test | job | test |
			job cause | job | fault |
			""";

	private static final Map<String, String> FULL = Map.of("law", "law \"Dark when dead\"", "job", "job \"Job 1\"");

	/** One line of the table. */
	record Line(String place, String user, String kind, List<String> follow) {

		static Line of(String text) {
			String[] cells = Arrays.stream(text.split("\\|", -1)).map(String::trim).toArray(String[]::new);
			List<String> follow = cells[3].isEmpty() ? List.of()
					: Arrays.stream(cells[3].split(", ")).map(one -> FULL.getOrDefault(one, one)).toList();
			return new Line(cells[0], FULL.getOrDefault(cells[1], cells[1]), cells[2], follow);
		}
	}

	static List<Line> lines() {
		return PLACES.lines().map(Line::of).toList();
	}

	@Test
	void whatIsWholeIsTakenAsItIs() {
		Small small = Small.with("");
		RuleBase base = small.base.build();
		List<String> dropped = new ArrayList<>();
		RuleBase whole = small.base.whole(dropped::add);
		assertEquals(List.of(), dropped);
		assertEquals(elements(base), elements(whole));
		assertEquals(List.of(), whole.leftOut());
		assertEquals(List.of(1, 1, 1, 1, 1, 3, 1), List.of(base.modules().size(), base.codes().size(), base.parts().size(),
				base.laws().size(), base.repairs().size(), base.rules().size(), base.cases().size()));
	}

	@ParameterizedTest
	@ValueSource(strings = { "sign", "test", "repair" })
	void whichVehiclesSomethingIsForDependsOnTraitsAlone(String of) {
		References.Missing missing = assertThrows(References.Missing.class, () -> Small.with(of + " where finding").base.build());
		assertTrue(missing.getMessage().contains("speaks of trait dead, which the rules do not define."), missing.getMessage());
	}

	@Test
	void theTableHasEveryPlace() {
		Set<String> listed = new TreeSet<>();
		lines().forEach(line -> assertTrue(listed.add(line.place()), line.place()));
		assertEquals(Small.with("").places, listed);
	}

	@ParameterizedTest
	@MethodSource("lines")
	void saysWhoSpeaksOfWhatIsNotThere(Line line) {
		RuleBase.Builder broken = Small.with(line.place()).base;
		References.Missing missing = assertThrows(References.Missing.class, broken::build);
		assertEquals(line.user() + " speaks of " + line.kind() + " gone, which the rules do not define.", missing.getMessage());
	}

	@ParameterizedTest
	@MethodSource("lines")
	void keepsWhatIsWhole(Line line) {
		List<String> dropped = new ArrayList<>();
		RuleBase.Builder broken = Small.with(line.place()).base;
		RuleBase whole = broken.whole(dropped::add);
		Set<String> expected = new TreeSet<>(line.follow());
		expected.add(line.user());
		assertEquals(expected, new TreeSet<>(dropped));
		assertEquals(expected.size(), dropped.size(), "each is told once: " + dropped);
		assertEquals(line.user(), dropped.get(0));
		assertEquals(elements(broken.unchecked()) - dropped.size(), elements(whole));
		assertEquals(elements(whole), elements(new RuleBase.Builder("again").add(whole).build()));
		// what is known of rules and laws that go stays
		List<LeftOut> known = new ArrayList<>();
		broken.laws.stream().filter(law -> !whole.laws().contains(law)).map(LeftOut::of).forEach(known::add);
		broken.rules.stream().filter(rule -> !whole.rules().contains(rule)).map(LeftOut::of).forEach(known::add);
		assertEquals(Set.copyOf(known), Set.copyOf(whole.leftOut()));
		assertEquals(dropped.stream().filter(one -> one.startsWith("law ") || one.startsWith("rule ")).count(), whole.leftOut().size());
	}

	@Test
	void whatIsKnownOfARuleAndOfALawIsWhatTheySpeakOf() {
		RuleBase base = Small.with("").base.build();
		assertEquals(new LeftOut(false, Set.of("cell.flat"),
				Set.of("cell.flat", "cell.open", "lamp", "dead", "low", "body")), LeftOut.of(base.rules().get(0)));
		assertEquals(new LeftOut(true, Set.of(), Set.of("dead", "lamp")), LeftOut.of(base.laws().get(0)));
	}

	@Test
	void whatWasLeftOutBeforeStaysLeftOut() {
		RuleBase.Builder broken = Small.with("rule test").base;
		LeftOut before = new LeftOut(true, Set.of(), Set.of("gone"));
		broken.leftOut.add(before);
		assertEquals(List.of(before, LeftOut.of(broken.rules.get(0))), broken.whole(one -> { }).leftOut());
	}

	/**
	 * Independent of how references are followed: what stands in the text of another element as a whole word is needed.
	 */
	@Test
	void nothingThatIsUsedCanBeTakenAway() {
		int needed = 0;
		int free = 0;
		List<List<? extends Named>> all = named(Small.with("").base);
		for (int list = 0; list < all.size(); list++) {
			for (int i = 0; i < all.get(list).size(); i++) {
				RuleBase.Builder base = Small.with("").base;
				Named gone = named(base).get(list).remove(i);
				Pattern word = Pattern.compile("(?<![\\w.])" + Pattern.quote(gone.name()) + "(?!\\w)");
				boolean used = texts(base).stream().anyMatch(text -> word.matcher(text).find());
				if (used) {
					assertThrows(References.Missing.class, base::build, gone.name());
					needed++;
				} else {
					base.build();
					free++;
				}
			}
		}
		assertEquals("13 4", needed + " " + free);
	}

	private static List<List<? extends Named>> named(RuleBase.Builder base) {
		return List.of(base.families, base.states, base.tools, base.hazards, base.modules, base.codes, base.signs, base.parts,
				base.tests, base.rules, base.repairs, base.cases);
	}

	private static List<String> texts(RuleBase.Builder base) {
		List<String> texts = new ArrayList<>();
		named(base).forEach(list -> list.forEach(element -> texts.add(element.toString())));
		base.exclusives.forEach(one -> texts.add(one.toString()));
		base.laws.forEach(one -> texts.add(one.toString()));
		base.reviews.forEach(one -> texts.add(one.toString()));
		return texts;
	}

	@Test
	void aNameStandsForOneElementOnlyWhereThatIsAskedFor() {
		Map<String, BiConsumer<RuleBase.Builder, Integer>> twice = new TreeMap<>();
		twice.put("family all", (base, i) -> base.families.add(base.families.get(i)));
		twice.put("state ignition", (base, i) -> base.states.add(base.states.get(i)));
		twice.put("tool meter", (base, i) -> base.tools.add(base.tools.get(i)));
		twice.put("hazard gas", (base, i) -> base.hazards.add(base.hazards.get(i)));
		twice.put("module body", (base, i) -> base.modules.add(base.modules.get(i)));
		twice.put("code low", (base, i) -> base.codes.add(base.codes.get(i)));
		twice.put("sign dead", (base, i) -> base.signs.add(base.signs.get(i)));
		twice.put("part cell", (base, i) -> base.parts.add(base.parts.get(i)));
		twice.put("fault cell.flat", (base, i) -> base.parts.add(new Part("other", "", List.of(), base.parts.get(i).faults(), Span.NONE)));
		twice.put("test volts", (base, i) -> base.tests.add(base.tests.get(i)));
		twice.put("rule flat", (base, i) -> base.rules.add(base.rules.get(i)));
		twice.put("repair charge", (base, i) -> base.repairs.add(base.repairs.get(i)));
		twice.put("value of state ignition on", (base, i) -> base.states.set(0, new State("ignition", "",
				List.of(base.states.get(0).values().get(1), base.states.get(0).values().get(1)), Span.NONE)));
		twice.put("trait of family all engine", (base, i) -> base.families.set(0, new Family("all", "", Optional.empty(), true,
				List.of(base.families.get(0).traits().get(0), base.families.get(0).traits().get(0)), List.of(), Span.NONE)));
		twice.forEach((what, change) -> {
			RuleBase.Builder base = Small.with("").base;
			References.unique(base.build());
			change.accept(base, 0);
			RuleBase built = base.build();
			References.Missing missing = assertThrows(References.Missing.class, () -> References.unique(built));
			assertEquals("The rules define " + what + " twice.", missing.getMessage());
		});
	}

	@Test
	void whatIsSeenWithATestNeedsOneThatIsDoneByItself() {
		RuleBase.Builder base = Small.with("").base;
		base.tests.add(Small.seenWith("course", "volts"));
		RuleBase built = base.build();
		assertEquals("volts", built.doneBy(built.test("course").orElseThrow()).name());
		assertEquals("volts", built.doneBy(built.test("volts").orElseThrow()).name());
		assertEquals("test course speaks of test gone, which the rules do not define.", refused("course", "gone"));
		assertEquals("test course is seen with test course, which is itself seen with another one.", refused("course", "course"));
		base.tests.add(Small.seenWith("sound", "course"));
		assertEquals("test sound is seen with test course, which is itself seen with another one.",
				assertThrows(References.Missing.class, base::build).getMessage());
		List<String> dropped = new ArrayList<>();
		assertEquals(Optional.empty(), base.whole(dropped::add).test("sound"));
		assertEquals(List.of("test sound"), dropped);
	}

	private static String refused(String name, String other) {
		RuleBase.Builder base = Small.with("").base;
		base.tests.add(Small.seenWith(name, other));
		return assertThrows(References.Missing.class, base::build).getMessage();
	}

	@Test
	void partsOfABaseMayBePutTogetherBeforeTheyAreWhole() {
		RuleBase.Builder all = Small.with("").base;
		RuleBase.Builder rules = new RuleBase.Builder("rules");
		rules.rules.addAll(all.rules);
		all.rules.clear();
		assertThrows(References.Missing.class, rules::build);
		assertThrows(References.Missing.class, all::build);
		RuleBase built = new RuleBase.Builder("both").add(all).add(rules).build();
		assertEquals(elements(Small.with("").base.build()), elements(built));
		assertEquals("both", built.name());
		assertFalse(built.rules().isEmpty());
	}

	private static int elements(RuleBase base) {
		return base.families().size() + base.states().size() + base.tools().size() + base.workshops().size() + base.hazards().size()
				+ base.modules().size() + base.codes().size() + base.signs().size() + base.parts().size()
				+ base.exclusives().size() + base.tests().size() + base.laws().size() + base.rules().size()
				+ base.repairs().size() + base.cases().size() + base.signOffs().size() + base.reviewers().size() + base.reviews().size()
				+ base.remarks().size() + base.acceptances().size();
	}
}
