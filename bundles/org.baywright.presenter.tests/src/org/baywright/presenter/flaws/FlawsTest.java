package org.baywright.presenter.flaws;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Report;
import org.baywright.analysis.check.Checks;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.presenter.Examples;
import org.baywright.presenter.ProjectState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FlawsTest {

	private static Flaws flawed(String check) {
		return Flaws.of(Examples.checked("flawed/" + check + ".bay"), Filter.OPEN);
	}

	static Stream<String> ids() {
		return Checks.ids().stream().filter(id -> !id.equals("undecided"));
	}

	@ParameterizedTest
	@MethodSource("ids")
	void showsEachKindUnderItsTitleWithItsHelp(String check) {
		Flaws shown = flawed(check);
		Group group = shown.groups().stream().filter(each -> each.kind().equals(check)).findFirst().orElseThrow();
		assertFalse(group.items().isEmpty());
		assertTrue(group.label().endsWith("(" + group.items().size() + ")"), group.label());
		for (Item item : group.items()) {
			assertTrue(item.hasHelp());
			assertTrue(item.place().leads(), item.toString());
			assertFalse(item.message().isBlank());
			item.evidence().ifPresent(evidence -> assertFalse(evidence.lines().isEmpty(), item.toString()));
			assertEquals(Optional.of(item), shown.find(item.id()));
		}
		assertNotEquals(Tone.GOOD, shown.tone());
	}

	@Test
	void aReasonLeadsToItsLines() {
		Item item = flawed("dead-rule").groups().stream().flatMap(group -> group.items().stream())
				.filter(each -> each.kind().equals("dead-rule")).findFirst().orElseThrow();
		assertTrue(item.evidence().orElseThrow().title().startsWith("Th"), item.toString());
		assertTrue(item.evidence().get().lines().stream().allMatch(line -> line.leads()), item.toString());
		assertTrue(item.evidence().get().lines().get(0).text().startsWith("line "), item.toString());
	}

	@Test
	void aStoryIsToldAndLeadsNowhere() {
		Item item = flawed("contradiction").groups().get(0).items().get(0);
		assertEquals("For example:", item.evidence().orElseThrow().title());
		assertTrue(item.evidence().get().lines().size() > 1, item.toString());
		assertTrue(item.evidence().get().lines().stream().noneMatch(line -> line.leads()), item.toString());
	}

	@Test
	void errorsStandFirstAndPlacesAreInOrder() {
		for (String name : Examples.ALL) {
			List<Group> groups = Flaws.of(Examples.checked(name), Filter.OPEN.withAccepted(true)).groups();
			for (int i = 1; i < groups.size(); i++) {
				assertTrue(groups.get(i - 1).severity().compareTo(groups.get(i).severity()) <= 0);
			}
			groups.forEach(group -> assertEquals(group.items().stream().map(item -> item.place().span()).sorted().toList(),
					group.items().stream().map(item -> item.place().span()).toList()));
		}
	}

	@Test
	void filtersCountWhatTheyHide() {
		ProjectState state = Examples.checked("flawed/gap.bay");
		Flaws all = Flaws.of(state, Filter.OPEN.withAccepted(true));
		int count = all.groups().stream().mapToInt(group -> group.items().size()).sum();
		assertEquals(0, all.hidden());
		Flaws errors = all.with(Filter.OPEN.with(Severity.WARNING, false).with(Severity.NOTE, false));
		assertTrue(errors.groups().stream().flatMap(group -> group.items().stream())
				.allMatch(item -> item.severity() == Severity.ERROR));
		assertEquals(count, errors.hidden() + errors.groups().stream().mapToInt(group -> group.items().size()).sum());
		Flaws other = all.with(Filter.OPEN.withFile(Optional.of("other.bay")));
		assertEquals(List.of(), other.groups());
		assertEquals(1, count);
		assertTrue(other.headline().startsWith("Filtered, 0 of 1 shown. "), other.headline());
		assertEquals(all.headline(), all.with(Filter.OPEN).headline());
		assertEquals("One flaw is not shown: it was accepted, or the filter hides it.", other.emptyText());
		assertEquals(List.of(), all.with(Filter.OPEN.withText("zeppelin")).groups());
		String word = all.groups().get(0).items().get(0).message().split(" ")[0];
		assertFalse(all.with(Filter.OPEN.withText("  " + word.toUpperCase() + " ")).groups().isEmpty());
	}

	@Test
	void saysThatNothingIsWrong() {
		Flaws shown = Flaws.of(Examples.text("family osier", "sign doors_open",
				"rule pass { given doors_open then refers \"the door specialist\"", "because \"It is not ours.\"",
				"source memory by \"R. Falk\" on 2026-03-02 }"), Filter.OPEN);
		assertEquals("Nothing found; " + Checks.ids().size() + " kinds of checks made on 1 rule.", shown.headline());
		assertEquals(Tone.GOOD, shown.tone());
		assertEquals(shown.headline(), shown.emptyText());
	}

	@Test
	void neverSaysFineBeforeACheck() {
		ProjectState known = Examples.checked("light-van");
		Flaws shown = Flaws.of(ProjectState.unchecked(known.rules(), List.of(), List.of()), Filter.OPEN);
		assertEquals("The rules have not been checked yet.", shown.headline());
		assertEquals(Tone.UNKNOWN, shown.tone());
		assertEquals("There are no rules yet.", Flaws.of(ProjectState.EMPTY, Filter.OPEN).headline());
		assertEquals(Tone.UNKNOWN, Flaws.of(ProjectState.EMPTY, Filter.OPEN).tone());
	}

	@Test
	void neverSaysFineOnceTheRulesChanged() {
		ProjectState known = Examples.text("family osier", "sign doors_open",
				"rule pass { given doors_open then refers \"the door specialist\"", "because \"It is not ours.\"",
				"source memory by \"R. Falk\" on 2026-03-02 }");
		Flaws shown = Flaws.of(
				new ProjectState(known.rules(), known.problems(), known.dropped(), known.report(), known.checked(), false), Filter.OPEN);
		assertTrue(shown.headline().startsWith("The rules have changed since this check."), shown.headline());
		assertEquals(Tone.UNKNOWN, shown.tone());
	}

	@Test
	void neverSaysFineWhenQuestionsWereNotDecided() {
		RuleBase base = Examples.checked("light-van").rules();
		Flaw open = new Flaw("undecided:a/1", "undecided", Severity.WARNING, base.rules().get(0).span(),
				"It was not decided whether it applies: the search reached its limit.", List.of(),
				new Evidence.Undecided("whether it applies"), List.of("It was not decided whether it applies."), "00000000",
				List.of(), Optional.empty());
		ProjectState state = new ProjectState(base, List.of(), List.of(),
				Optional.of(new Report(List.of(open), List.of(), Checks.ids(), 1, 1)), base, true);
		Flaws shown = Flaws.of(state, Filter.OPEN);
		assertTrue(shown.headline().contains("not decided"), shown.headline());
		assertEquals(Tone.UNKNOWN, shown.tone());
		assertTrue(shown.groups().stream().anyMatch(group -> group.kind().equals("undecided")));
	}

	@Test
	void namesWhatWasLeftOut() {
		Flaws shown = Flaws.of(Examples.text("family osier", "sign doors_open",
				"rule pass { given doors_opne then refers \"the door specialist\"", "because \"It is not ours.\"",
				"source memory by \"R. Falk\" on 2026-03-02 }"), Filter.OPEN);
		assertEquals(Tone.WRONG, shown.tone());
		assertTrue(shown.headline().contains("Left out of the check because of an error: rule pass."), shown.headline());
		Group text = shown.groups().get(0);
		assertEquals(Group.TEXT, text.kind());
		assertTrue(text.items().get(0).hasHelp());
		assertFalse(text.items().get(0).advice().isEmpty());
	}

	@Test
	void whatIsMissingOrDoubtfulIsNotToldAsNotUnderstood() {
		Flaws shown = Flaws.of(Examples.text("family osier", "sign doors_open", "sign 5",
				"test volts { measures V 0 .. 18 step 0.5 }",
				"rule pass { given doors_open run volts on below 9.3 V : refers \"\" }"), Filter.OPEN);
		assertEquals(List.of("The text itself is wrong or cannot be read (1)", "Something is missing in the text (2)",
				"Something in the text is worth a second look (1)"),
				shown.groups().stream().filter(group -> group.kind().startsWith(Group.TEXT)).map(Group::label).toList());
		assertEquals(List.of("no-provenance", "empty-text"), shown.groups().stream()
				.filter(group -> group.kind().equals(Group.MISSING)).flatMap(group -> group.items().stream()).map(Item::kind).toList());
	}

	@Test
	void acceptedFlawsShowTheirReason() {
		ProjectState state = Examples.text("family osier", "sign doors_open", "part fuse { fault blown }",
				"test look { results whole, blown }",
				"rule a { given doors_open run look on blown : suspects fuse.blown on whole : refers \"the specialist\"",
				"because \"So.\" source memory by \"R. Falk\" on 2026-03-02 }");
		Item open = Flaws.of(state, Filter.OPEN).groups().stream().filter(group -> group.severity() == Severity.WARNING)
				.findFirst().orElseThrow().items().get(0);
		ProjectState after = Examples.text("family osier", "sign doors_open", "part fuse { fault blown }",
				"test look { results whole, blown }",
				"rule a { given doors_open run look on blown : suspects fuse.blown on whole : refers \"the specialist\"",
				"because \"So.\" source memory by \"R. Falk\" on 2026-03-02 }",
				"accept \"" + open.id() + "\" because \"It is known.\" by \"R. Falk\" on 2026-03-10");
		assertTrue(Flaws.of(after, Filter.OPEN).find(open.id()).isEmpty());
		Flaws shown = Flaws.of(after, Filter.OPEN.withAccepted(true));
		assertEquals("It is known. – R. Falk, 2026-03-10", shown.find(open.id()).orElseThrow().accepted().orElseThrow());
		assertTrue(shown.headline().contains("1 warning accepted"), shown.headline());
	}
}
