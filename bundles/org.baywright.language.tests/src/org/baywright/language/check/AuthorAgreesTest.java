package org.baywright.language.check;

import static org.baywright.language.testing.Peers.review;
import static org.baywright.language.testing.Peers.told;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.baywright.analysis.check.AuthorAgrees;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Peers;
import org.junit.jupiter.api.Test;

/** {@link AuthorAgrees}. */
class AuthorAgreesTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(AuthorAgrees.class);
	}

	private static final String TOLD = "R. Falk wrote rule a and agrees with it; that does not count. Another person must look at it.";

	@Test
	void onlyWhereTheAuthorIsNotToCount() {
		String own = review("a", "R. Falk", 9, "agrees");
		assertEquals(List.of(TOLD), told(AuthorAgrees.class, "sign_off { not_by author }", own));
		assertEquals(List.of(TOLD), told(AuthorAgrees.class, "sign_off { not_by author }", own.replace("R. Falk", "r.falk").replace("r.falk", "R.  Falk"))
				.stream().map(text -> text.replace("R.  Falk", "R. Falk")).toList());
		assertEquals(List.of(), told(AuthorAgrees.class, "sign_off { agree 1 }", own));
		assertEquals(List.of(), told(AuthorAgrees.class, own));
	}

	@Test
	void anAuthorMayObjectAndOthersMayAgree() {
		assertEquals(List.of(), told(AuthorAgrees.class, "sign_off { not_by author }", review("a", "R. Falk", 9, "objects"),
				review("supply", "M. Sund", 9, "agrees"), review("a", "R. Falk", 9, "agrees").replace(Peers.meaning("a"), "0123abcd")));
		assertEquals(List.of("R. Falk wrote chain supply and agrees with it; that does not count. Another person must look at it."),
				told(AuthorAgrees.class, "sign_off { not_by author }", review("supply", "R. Falk", 9, "agrees")));
	}
}
