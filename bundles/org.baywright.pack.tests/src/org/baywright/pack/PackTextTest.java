package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.baywright.model.Severity;
import org.junit.jupiter.api.Test;

class PackTextTest {

	@Test
	void tellsWhatThePackIsAndWhatStands() throws Exception {
		Pack pack = PackWriter.make(PackWriterTest.fixed(PackWriterTest.flaw("gap:x", Severity.WARNING))).pack();
		List<String> lines = PackText.of(pack, true).lines().toList();
		assertEquals(List.of(pack.manifest().project(), "Format version " + pack.manifest().version() + ", made by Baywright 9.9.9",
				"Fingerprint " + pack.manifest().fingerprint()), lines.subList(0, 3));
		int open = lines.indexOf("Open (1)");
		assertEquals("  power/battery.bay:7  One plain sentence.  gap", lines.get(open + 1));
		assertTrue(lines.contains("Rules (" + pack.rules().rules().size() + ")"), () -> lines.toString());
		assertTrue(!PackText.of(pack, false).contains("Rules ("), "the rules were not asked for");
	}

	@Test
	void whatThePackSaysIsShownInTheMannerThatIsGiven() throws Exception {
		Pack pack = PackWriter.make(PackWriterTest.fixed()).pack();
		List<String> lines = PackText.lines(pack, false, new PackText.Manner() {
			@Override
			public String given(String text) {
				return "<" + text + ">";
			}

			@Override
			public String strong(String text) {
				return "*" + text + "*";
			}
		});
		assertEquals("*<" + pack.manifest().project() + ">*", lines.get(0));
	}
}
