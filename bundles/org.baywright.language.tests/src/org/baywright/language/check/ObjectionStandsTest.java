package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.check.ObjectionStands;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link ObjectionStands}. */
class ObjectionStandsTest {

	private static final String TEXT = """
			family tarn
			sign no_crank
			part battery { fault flat  fault worn }
			test rest { measures V 0 .. 18 step 0.1 }
			test load { results pass, fail }
			rule a { given no_crank run rest on below 12.4 V : confirms battery.flat }
			chain supply {
			  given no_crank
			  point rest expect at_least 12.4 V : battery.flat
			  point load expect pass : battery.worn
			}
			""";

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(ObjectionStands.class);
	}

	private static String meaning(String name) {
		return MarkedFlaws.of(TEXT).base().meaning(name).orElseThrow();
	}

	private static List<String> found(String... reviews) {
		return MarkedFlaws.of(TEXT + String.join("\n", reviews)).of(ObjectionStands.class).stream().map(Flaw::message).toList();
	}

	private static String review(String name, String reviewer, int day, String opinion) {
		return "review " + name + " by \"" + reviewer + "\" on 2026-03-0" + day + " " + opinion + " meaning \"" + meaning(name) + "\"";
	}

	@Test
	void rulesAndChains() {
		assertEquals(List.of("M. Sund objects to rule a as it stands: \"Too strict.\"", "R. Falk objects to chain supply as it stands."),
				found(review("a", "M. Sund", 9, "objects \"Too strict.\""), review("supply", "R. Falk", 8, "objects")));
	}

	@Test
	void onlyTheSameReviewerTakesItBack() {
		String objects = review("a", "M. Sund", 5, "objects");
		List<String> stands = List.of("M. Sund objects to rule a as it stands.");
		assertEquals(stands, found(objects, review("a", "R. Falk", 6, "agrees")));
		assertEquals(stands, found(objects, review("a", "M. Sund", 4, "agrees")));
		assertEquals(stands, found(objects, review("supply", "M. Sund", 6, "agrees")));
		assertEquals(stands, found(objects, review("a", "M. Sund", 6, "agrees").replace(meaning("a"), "0123abcd")));
		assertEquals(List.of(), found(objects, review("a", "M. Sund", 5, "agrees")));
		assertEquals(List.of(), found(objects, review("a", "M. Sund", 6, "agrees")));
	}

	@Test
	void anObjectionToAnotherMeaningIsStale() {
		assertEquals(List.of(), found(review("a", "M. Sund", 5, "objects").replace(meaning("a"), "0123abcd")));
	}

	@Test
	void itEndsWhenItIsSettled() {
		String objects = review("a", "M. Sund", 5, "objects");
		String by = " { reply by \"R. Falk\" on 2026-03-06 \"Nine jobs say so.\"  settled by \"WHO\" on 2026-03-07 }";
		String text = "rule a { given no_crank run rest on below 12.4 V : confirms battery.flat";
		assertEquals(List.of(), found(objects + by.replace("WHO", "M. Sund")));
		assertEquals(List.of(), found(objects + by.replace("WHO", "L. Amsel")));
		assertEquals(List.of("M. Sund objects to rule a as it stands."), found(objects + by.substring(0, by.indexOf("settled")) + "}"));
		String own = TEXT.replace(text, text + " by \"R. Falk\" on 2026-03-02") + objects + by.replace("WHO", "R. Falk");
		assertEquals(1, MarkedFlaws.of(own).of(ObjectionStands.class).size());
	}

	@Test
	void nobodyCanAcceptItWhereTheProjectHasASignOff() {
		String objects = TEXT + review("a", "M. Sund", 5, "objects");
		assertEquals(1, MarkedFlaws.of(objects).of(ObjectionStands.class).get(0).fixes().size());
		assertEquals(List.of(), MarkedFlaws.of(objects + "\nsign_off { not_by author }").of(ObjectionStands.class).get(0).fixes());
	}
}
