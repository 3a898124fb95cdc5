package org.baywright.language.testing;

import java.util.List;

import org.baywright.analysis.Flaw;

/** A rule and a chain of R. Falk, of 2026-03-02, for tests of peer review. */
public final class Peers {

	/** The project, without any review. */
	public static final String TEXT = """
			family tarn
			sign no_crank
			part battery { fault flat  fault worn }
			test rest { measures V 0 .. 18 step 0.1 }
			test load { results pass, fail }
			rule a { given no_crank run rest on below 12.4 V : confirms battery.flat by "R. Falk" on 2026-03-02 }
			chain supply {
			  given no_crank
			  point rest expect at_least 12.4 V : battery.flat
			  point load expect pass : battery.worn
			  by "R. Falk" on 2026-03-02
			}
			""";

	private Peers() {
	}

	/** Returns what a rule or the chain means. */
	public static String meaning(String name) {
		return MarkedFlaws.of(TEXT).base().meaning(name).orElseThrow();
	}

	/** Returns a review of a rule or the chain as it stands, of a day in March. */
	public static String review(String name, String reviewer, int day, String opinion) {
		return "review " + name + " by \"" + reviewer + "\" on 2026-03-" + (day < 10 ? "0" : "") + day + " " + opinion + " meaning \"" + meaning(name) + "\"";
	}

	/** Returns what a check tells of the project with more lines. */
	public static List<String> told(Class<?> check, String... lines) {
		MarkedFlaws found = MarkedFlaws.of(TEXT + String.join("\n", lines));
		if (!found.problems().isEmpty()) {
			throw new AssertionError(found.problems().toString());
		}
		return found.of(check).stream().map(Flaw::message).toList();
	}
}
