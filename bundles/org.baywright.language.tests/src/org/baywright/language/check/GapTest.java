package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.check.Gap;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Replay;
import org.baywright.model.Family;
import org.baywright.model.IndexSet;
import org.baywright.model.RuleBase;
import org.baywright.model.Sign;
import org.junit.jupiter.api.Test;

/**
 * {@link Gap}, the "deficiency" of Preece and Shinghal 1994 and the "missing rules" of Suwa, Scott and Shortliffe 1982;
 * told as regions, as Calvanese and others (2016, 2018) tell missing rules of decision tables.
 */
class GapTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(Gap.class);
		assertRegionsAreExact(rules);
	}

	/**
	 * Does every complete situation of a small text: a job comes to no end exactly in the regions that are told, and no
	 * region could be wider.
	 */
	private static void assertRegionsAreExact(MarkedFlaws rules) {
		List<Situation> regions = rules.of(Gap.class).stream().map(Replay::situation).toList();
		for (Sign sign : rules.base().signs()) {
			Variable variable = new Variable(Variable.Kind.SIGN, sign.name());
			for (Family family : rules.base().vehicleFamilies()) {
				List<Situation> all = new ArrayList<>(
						List.of(new Situation(family.name(), List.of(fact(variable, Variable.PRESENT)))));
				others(rules.base(), family.name(), variable).forEach((other, size) -> {
					List<Situation> longer = new ArrayList<>();
					all.forEach(shorter -> {
						for (int value = 0; value < size; value++) {
							List<Situation.Fact> facts = new ArrayList<>(shorter.facts());
							facts.add(fact(other, value));
							longer.add(new Situation(family.name(), facts));
						}
					});
					all.clear();
					all.addAll(longer);
				});
				List<CaseResult> results = Replay.all(rules, all);
				for (int i = 0; i < results.size(); i++) {
					Situation situation = all.get(i);
					boolean told = regions.stream().filter(region -> hasSign(region, variable))
							.anyMatch(region -> isIn(situation, region));
					assertEquals(told, Replay.isOpenEnd(results.get(i)), situation::toString);
				}
				for (Situation region : regions) {
					if (region.family().equals(family.name()) && hasSign(region, variable)) {
						assertWidest(region, variable, all, results);
					}
				}
			}
		}
	}

	private static void assertWidest(Situation region, Variable sign, List<Situation> all, List<CaseResult> results) {
		for (Situation.Fact left : region.facts()) {
			if (!left.variable().equals(sign)) {
				Situation wider = new Situation(region.family(),
						region.facts().stream().filter(fact -> fact != left).toList());
				boolean someEnd = false;
				for (int i = 0; i < all.size(); i++) {
					someEnd |= isIn(all.get(i), wider) && !Replay.isOpenEnd(results.get(i));
				}
				assertTrue(someEnd, () -> "the region could do without " + left);
			}
		}
	}

	private static Map<Variable, Integer> others(RuleBase base, String family, Variable sign) {
		Map<Variable, Integer> sizes = new TreeMap<>();
		base.traitsOf(family).values()
				.forEach(trait -> sizes.put(new Variable(Variable.Kind.TRAIT, trait.name()), trait.domain().size()));
		base.signs().forEach(other -> sizes.put(new Variable(Variable.Kind.SIGN, other.name()), 2));
		base.tests().forEach(test -> sizes.put(new Variable(Variable.Kind.TEST, test.name()), test.domain().size()));
		sizes.remove(sign);
		return sizes;
	}

	private static Situation.Fact fact(Variable variable, int value) {
		return new Situation.Fact(variable, IndexSet.range(value, value), value);
	}

	private static boolean hasSign(Situation region, Variable sign) {
		return region.facts().stream()
				.anyMatch(fact -> fact.variable().equals(sign) && fact.values().contains(Variable.PRESENT));
	}

	private static boolean isIn(Situation situation, Situation region) {
		return region.facts().stream().allMatch(fact -> situation.facts().stream().anyMatch(
				known -> known.variable().equals(fact.variable()) && fact.values().contains(known.example())));
	}

	@Test
	void aReferralOfWhatIsUnexplainedClosesEveryGap() {
		MarkedFlaws.check(Gap.class, """
				family osier
				sign doors_open
				part door_fuse { fault blown }
				test fuse { results whole, blown }
				rule a { given doors_open run fuse on blown : confirms door_fuse.blown }
				rule b { given doors_open unexplained then refers "the door specialist" }
				""");
	}

	@Test
	void aSuspicionIsNoEnd() {
		MarkedFlaws rules = MarkedFlaws.check(Gap.class, """
				family osier
				sign doors_open
				//   ^^^^^^^^^^ warning gap: When "doors_open" is there, all tests can be done with nothing confirmed and nobody referred to. Add a rule that goes on, or one that refers.
				//   region: osier; doors_open; fuse: whole or dim
				part door_fuse { fault blown }
				test fuse { results whole, dim, blown }
				rule a { given doors_open run fuse on dim : suspects door_fuse.blown on blown : confirms door_fuse.blown }
				""");
		assertRegionsAreExact(rules);
	}

	@Test
	void aRegionIsAsWideAsCanBe() {
		MarkedFlaws rules = MarkedFlaws.check(Gap.class, """
				family heron "Heron" { trait engine : diesel, petrol, gas }
				sign hum
				//   ^^^ warning gap: When "hum" is there, all tests can be done with nothing confirmed and nobody referred to. Add a rule that goes on, or one that refers.
				//   region: Heron; hum; "shake" is not seen; Play: 2 mm or less; Sway: stays
				//   ^^^ warning gap: When "hum" is there, all tests can be done with nothing confirmed and nobody referred to. Add a rule that goes on, or one that refers.
				//   region: Heron with engine petrol or gas; hum; Play: 5 mm or more; Sway: stays
				//   ^^^ warning gap: When "hum" is there, all tests can be done with nothing confirmed and nobody referred to. Add a rule that goes on, or one that refers.
				//   region: Heron with engine petrol or gas; hum; "shake" is not seen; Sway: stays
				sign shake
				//   ^^^^^ warning gap: When "shake" is there, all tests can be done with nothing confirmed and nobody referred to. Add a rule that goes on, or one that refers.
				//   region: Heron with engine petrol or gas; shake; Play: 5 mm or more; Sway: stays
				//   ^^^^^ warning gap: When "shake" is there, all tests can be done with nothing confirmed and nobody referred to. Add a rule that goes on, or one that refers.
				//   region: Heron; "hum" is not seen; shake; Play: 5 mm or more
				part hub { fault worn fault loose }
				test play "Play" { measures mm 0 .. 6 step 1 }
				test sway "Sway" { results stays, changes }
				rule a { for heron where engine is diesel given hum run play expect at_most 2 mm above : confirms hub.loose }
				rule b { given hum run sway on changes : confirms hub.worn }
				rule c { given shake run play on below 5 mm : refers "the tyre shop" }
				""");
		assertRegionsAreExact(rules);
	}

	@Test
	void aGapOfSeveralFamiliesIsToldOnce() {
		MarkedFlaws rules = MarkedFlaws.check(Gap.class, """
				family heron "Heron"
				family tarn "Tarn"
				family osier "Osier"
				sign hum
				//   ^^^ warning gap: When "hum" is there, all tests can be done with nothing confirmed and nobody referred to (families heron, tarn). Add a rule that goes on, or one that refers.
				//   region: Heron; hum; play: none
				part hub { fault worn }
				test play { results none, felt }
				rule a { given hum run play on felt : confirms hub.worn }
				rule b { for osier given hum unexplained then refers "the tyre shop" }
				""");
		assertEquals(1, rules.of(Gap.class).size());
	}

	@Test
	void aSignThatNoRuleAsksFor() {
		MarkedFlaws.check(Gap.class, """
				family heron
				sign hum "Hum"
				//   ^^^ warning gap: No rule asks for "Hum", so it leads nowhere in any family; write a rule for it.
				part hub { fault worn }
				test play { results none, felt }
				rule a { run play on felt : confirms hub.worn }
				""");
	}

	@Test
	void aSignThatNoRuleOfAFamilyAsksFor() {
		String text = """
				base family platform
				family heron like platform
				family tarn like platform
				family osier like platform
				family dunlin like platform
				family fell "Of another kind"
				sign hum "Hum"
				//   ^^^ warning gap: No rule asks for "Hum" in families dunlin and osier, so it leads nowhere there; write a rule for it, or a law that it is never there.
				part hub { fault worn }
				test play { results none, felt }
				law "Tarns do not hum" for tarn : never hum
				rule a { for heron given hum run play on felt : confirms hub.worn on none : refers "the dealer" }
				rule b { run play on felt : suspects hub.worn on none : proves nothing }
				""";
		MarkedFlaws rules = MarkedFlaws.check(Gap.class, text);
		assertEquals("gap:hum/dunlin+osier", rules.only(Gap.class).id());
		MarkedFlaws turned = MarkedFlaws.check(Gap.class, text.replace("family dunlin like platform\n", "").replace("family tarn", "family dunlin like platform\nfamily tarn"));
		assertEquals(rules.only(Gap.class).acceptanceKey(), turned.only(Gap.class).acceptanceKey(), "whatever the order of families");
	}

	@Test
	void aLawClosesAGap() {
		MarkedFlaws.check(Gap.class, """
				family heron
				sign hum
				part hub { fault worn }
				test play { results none, felt }
				law "Only a worn hub hums" : when hum then play is felt
				rule a { given hum run play on felt : confirms hub.worn }
				""");
	}
}
