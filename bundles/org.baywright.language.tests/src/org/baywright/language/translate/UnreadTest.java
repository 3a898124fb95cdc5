package org.baywright.language.translate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;

import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.LeftOut;
import org.baywright.model.RuleBase;
import org.junit.jupiter.api.Test;

class UnreadTest {

	private static final String REST = """
			family tarn
			sign no_crank
			part battery { fault flat }
			test rest { measures V 0 .. 18 step 0.1 }
			rule unexplained { given no_crank unexplained then refers "a specialist" }
			repair recharge { fixes battery.flat verify { repeat what confirmed } }
			rule low {
			  given no_crank run rest on below 12.0 V : confirms battery.flat on at_least 12.0 V : clears battery.flat
			}
			""";

	private static RuleBase read(String text) {
		RuleProject project = RuleProject.inMemory("tarn");
		project.update("tarn.bay", text);
		assertTrue(!project.snapshot().problems().isEmpty());
		return project.snapshot().rules();
	}

	private static List<String> flaws(RuleBase base) {
		return new Analysis().check(base, Listener.NONE).flaws().stream().map(flaw -> flaw.check()).sorted().toList();
	}

	/** What the rest says of the rule that is not read is told again when it can be read; that a rule is missing is not told. */
	@Test
	void whatMayStandInARuleThatCannotBeReadIsNotMissing() {
		for (String name : List.of("rule", "lo\u00a0w", "", "\"low\"", "{", "low low")) {
			assertEquals(List.of(), flaws(read(REST.replace("rule low {", "rule " + name + " {"))), name);
		}
	}

	@Test
	void whatIsMissingElsewhereIsTold() {
		assertEquals(List.of("unfound-fault"),
				flaws(read(REST.replace("fault flat", "fault flat fault shorted").replace("rule low {", "rule rule {"))));
	}

	@Test
	void namesInQuotesAndCommentsAreNoNames() {
		Unread unread = new Unread("""
				law "of a lamp" : // not this
				  when ^given is on then battery.flat /* nor this */ "unclosed battery.burst
				""");
		unread.read(0, 3);
		assertEquals(new LeftOut(false, Set.of("battery.flat"), Set.of("when", "given", "is", "on", "then", "battery.flat", "battery")),
				unread.leftOut().orElseThrow());
	}
}
