package org.baywright.presenter.packing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.pack.PackReader;
import org.baywright.pack.PackWriter;
import org.baywright.pack.manifest.PackException;
import org.baywright.presenter.Examples;
import org.junit.jupiter.api.Test;

/** On the project of the ten-minute walk, before and after the mistake in it is mended. */
class PackCheckTest {

	private static final String MISTAKE = "                  clears ground_strap.loose\n";

	private static RuleProject walk() {
		return Examples.project("../bundles/org.baywright.workbench/examples/first-walk");
	}

	private static Report check(Snapshot snapshot) {
		return new Analysis().check(snapshot.rules(), Listener.NONE);
	}

	@Test
	void whatBlocksIsListedAndNothingIsMade() throws Exception {
		Snapshot snapshot = walk().snapshot();
		Report report = check(snapshot);
		PackCheck check = PackCheck.of(snapshot.problems(), report);
		assertFalse(check.isReady(true));
		assertEquals(1, check.blocks().size());
		assertEquals("rules.bay", check.blocks().get(0).span().file());
		assertTrue(check.blocks().get(0).message().contains("confirms ground_strap.loose"), check.blocks().get(0).message());
		assertTrue(check.summary().endsWith("One error is to be put right first."), check.summary());
		assertThrows(PackException.class, () -> PackCheck.make(Optional.empty(), snapshot.rules(), report, snapshot.problems(), true));
	}

	@Test
	void whatIsMadeIsReadBack() throws Exception {
		RuleProject project = walk();
		String text = project.snapshot().sources().get("rules.bay");
		assertTrue(text.contains(MISTAKE));
		project.update("rules.bay", text.replace(MISTAKE, ""));
		Snapshot snapshot = project.snapshot();
		Report report = check(snapshot);
		assertEquals("Nothing blocks the pack.", PackCheck.of(snapshot.problems(), report).summary());
		PackWriter.Made made = PackCheck.make(Optional.empty(), snapshot.rules(), report, snapshot.problems(), false);
		assertEquals(made.pack().manifest(), PackReader.read(made.bytes()).manifest());
		assertEquals(3, made.pack().manifest().cases());
		assertTrue(made.pack().sheet().contains("Lark L2 light van"));
	}

	@Test
	void anUnmetSignOffLeavesADraft() throws Exception {
		RuleProject project = walk();
		String text = project.snapshot().sources().get("rules.bay").replace(MISTAKE, "");
		project.update("rules.bay", text);
		int rules = project.snapshot().rules().rules().size();
		project.update("rules.bay", text + "\nsign_off { agree 1 }\n");
		Snapshot snapshot = project.snapshot();
		Report report = check(snapshot);
		PackCheck check = PackCheck.of(snapshot.problems(), report);
		assertFalse(check.isReady(false));
		assertTrue(check.isReady(true));
		assertTrue(check.isForDraft());
		assertEquals("Nobody has reviewed any rule of this project yet; each of the " + rules + " needs one person to agree with it as it stands.",
				check.blocking().get(0).message());
		assertEquals("The sign-off is not met: one breach is to be put right first. A draft can be written all the same; it says so.", check.summary());
		assertThrows(PackException.class, () -> PackCheck.make(Optional.empty(), snapshot.rules(), report, snapshot.problems(), false));
		PackWriter.Made made = PackCheck.make(Optional.empty(), snapshot.rules(), report, snapshot.problems(), true);
		assertTrue(made.pack().manifest().isDraft());
		assertTrue(made.pack().sheet().contains("Draft: the rules are not signed off."));
	}
}
