package org.baywright.sharing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import org.baywright.language.merge.Conflict;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

class SharedProjectTest extends SharingFixture {

	@Test
	void whoBeginsMakesAPlaceThatOthersJoin() throws IOException, SharingException {
		assertEquals("Ann Lee: Begin ann\n", log());
		assertEquals(RULES, read(bob));
		assertEquals("", Git.run(ann.folder(), "status", "--porcelain"));
		assertEquals("", Git.run(bob.folder(), "status", "--porcelain"));
		assertEquals("* main\n", Git.run(place, "branch"));
		assertEquals("Bob", bob.author());
		assertEquals(place.toString(), bob.place());
		assertEquals("ann-lee@baywright.invalid\n", Git.run(place, "log", "--format=%ae"));
		Git.run(folder, "clone", "-q", place.toString(), "with-git");
		assertEquals(RULES, Files.readString(folder.resolve("with-git/rules.bay")));
	}

	@Test
	void anOfferIsAPlainCommitOnABranch() throws IOException, SharingException {
		assertFalse(bob.state().isAnythingToOffer());
		edit(bob, "\"Battery too low\"", "\"Battery too low to crank\"");
		assertEquals("[rule flat_battery]", bob.state().mine().stream().map(change -> change.title()).toList().toString());
		assertTrue(bob.state().isAnythingToOffer());
		Offer offer = bob.offer("A better title", "Others say so too.");
		assertEquals("bob/a-better-title", offer.id());
		assertEquals("  main\n  offer/bob/a-better-title\n", Git.run(place, "branch").replace("* ", "  "));
		assertEquals("Bob|A better title|Others say so too.\n", Git.run(place, "log", "-1", "--format=%an|%s|%b", "offer/bob/a-better-title").strip() + "\n");
		assertEquals(read(bob), Git.run(place, "show", "offer/bob/a-better-title:rules.bay"));
		assertFalse(bob.state().isAnythingToOffer());
		assertEquals("bob/a-better-title", bob.state().offeredAs().get());

		ann.refresh();
		Offer seen = ann.offers().get(0);
		assertEquals("Bob", seen.author());
		assertEquals("A better title", seen.title());
		assertEquals("Others say so too.", seen.note());
		assertTrue(seen.newest());
		assertEquals(ann.newest(), seen.base());
		assertEquals(read(bob), ann.texts(seen.revision()).texts().get("rules.bay"));
		assertEquals(RULES, ann.texts(seen.base()).texts().get("rules.bay"));
		assertEquals(RULES, read(ann));
	}

	@Test
	void whatIsOfferedAgainIsAnotherCommitOnTheSameBranch() throws IOException, SharingException {
		edit(bob, "Battery too low", "Battery low");
		bob.offer("Title", "");
		edit(bob, "Battery low", "Battery flat");
		Offer second = bob.offer("Title", "Now right.");
		assertEquals("2", Git.run(place, "rev-list", "--count", "main..offer/bob/title").strip());
		assertEquals(second, bob.offer("Title", ""));
		assertEquals(1, bob.offers().size());
		assertEquals("Now right.", bob.offers().get(0).note());
		assertFails("There is nothing to offer: your copy says what the shared state says.", () -> ann.offer("Nothing", ""));
	}

	@Test
	void takingOverIsAMergeOfTwoParentsAndBringsTheCopyUp() throws IOException, SharingException {
		edit(bob, "Battery too low", "Battery low");
		bob.offer("Bob's", "");
		edit(ann, "Once more", "Yet once more");
		ann.offer("Ann's", "");
		takeOver(ann, "bob/bob-s");
		assertFalse(ann.offers().get(0).newest());
		takeOver(bob, "ann-lee/ann-s");
		String both = RULES.replace("Battery too low", "Battery low").replace("Once more", "Yet once more");
		assertEquals(both, Git.run(place, "show", "main:rules.bay"));
		assertEquals(both, read(ann));
		assertEquals(both, read(bob));
		catchUp(ann);
		for (SharedProject project : List.of(ann, bob)) {
			assertEquals(both, read(project));
			assertEquals("", Git.run(project.folder(), "status", "--porcelain"));
			assertEquals(Git.run(place, "rev-parse", "main"), Git.run(project.folder(), "rev-parse", "HEAD"));
			assertTrue(project.offers().stream().allMatch(offer -> offer.standing() == Offer.Standing.TAKEN_OVER));
		}
		assertEquals("2", Git.run(place, "rev-list", "--count", "--merges", "main").strip());
		assertEquals("Bob: Take over \"Ann's\" of Ann Lee", log().lines().findFirst().get());
		assertFails("The offer bob/bob-s is taken over already.", () -> takeOver(ann, "bob/bob-s"));
	}

	@Test
	void conflictsAreToldAndNothingChangesUntilSomebodyChooses() throws IOException, SharingException {
		edit(bob, "then : suspects battery.flat\n}\n\nrule again", "then : clears battery.flat\n}\n\nrule again");
		bob.offer("Clears", "");
		edit(ann, "then : suspects battery.flat\n}\n\nrule again", "then : refers \"the maker\"\n}\n\nrule again");
		ann.offer("Refers", "");
		takeOver(ann, "ann-lee/refers");
		String main = Git.run(place, "rev-parse", "main");
		Outcome outcome = ann.takeOver("bob/clears", Map.of(), texts -> List.of());
		assertFalse(outcome.done());
		assertEquals(List.of("rule flat_battery"), outcome.conflicts().stream().map(Conflict::id).toList());
		assertTrue(outcome.conflicts().get(0).told("shared", "Bob").contains("  says now  then : clears battery.flat"));
		assertEquals(main, Git.run(place, "rev-parse", "main"));
		outcome = ann.takeOver("bob/clears", Map.of("rule flat_battery", Conflict.Choice.THEIRS), texts -> List.of());
		assertTrue(outcome.done());
		assertTrue(Git.run(place, "show", "main:rules.bay").contains("clears"));
		assertEquals(Git.run(place, "show", "main:rules.bay"), read(ann));
	}

	@Test
	void whatTheCheckRefusesIsNotTakenOver() throws IOException, SharingException {
		edit(bob, "Battery too low", "Battery low");
		bob.offer("Title", "");
		Outcome outcome = ann.takeOver("bob/title", Map.of(), texts -> texts.get("rules.bay").contains("Battery low") ? List.of("No.") : List.of());
		assertFalse(outcome.done());
		assertEquals(List.of("No."), outcome.refused());
		assertEquals("Ann Lee: Begin ann\n", log());
	}

	@Test
	void whatIsNotOfferedYetStaysWhenTheCopyIsBroughtUp() throws IOException, SharingException {
		edit(bob, "Battery too low", "Battery low");
		bob.offer("Title", "");
		edit(ann, "Once more", "Yet once more");
		Files.writeString(ann.folder().resolve("notes.txt"), "mine");
		Outcome outcome = takeOver(ann, "bob/title");
		assertEquals(List.of("rule flat_battery"), outcome.changes().stream().map(change -> change.title()).toList());
		assertEquals(RULES.replace("Battery too low", "Battery low").replace("Once more", "Yet once more"), read(ann));
		assertEquals(List.of("rule again"), ann.state().mine().stream().map(change -> change.title()).toList());
		assertEquals(" M rules.bay\n?? notes.txt\n", Git.run(ann.folder(), "status", "--porcelain"));
		assertEquals("mine", Files.readString(ann.folder().resolve("notes.txt")));
	}

	@Test
	void whereSomethingHasToBeChosenInTheCopyTheSharedStateStillMoves() throws IOException, SharingException {
		edit(bob, "given no_crank\n  then : suspects battery.flat\n}\n\nrule again", "then : clears battery.flat\n}\n\nrule again");
		bob.offer("Clears", "");
		edit(ann, "given no_crank\n  then : suspects battery.flat\n}\n\nrule again", "then : suspects battery.flat\n}\n\nrule again");
		String mine = read(ann);
		assertTrue(takeOver(ann, "bob/clears").copyWaits());
		assertEquals(mine, read(ann));
		assertTrue(ann.state().isAnythingNew());
		Outcome outcome = ann.catchUp(Map.of());
		assertEquals(List.of("rule flat_battery"), outcome.conflicts().stream().map(Conflict::id).toList());
		assertEquals(mine, read(ann));
		assertTrue(ann.catchUp(Map.of("rule flat_battery", Conflict.Choice.OURS)).done());
		assertEquals(mine, read(ann));
		assertFalse(ann.state().isAnythingNew());
		assertEquals(1, ann.state().mine().size());
	}

	@Test
	void anOfferComesAfterWhatWasOfferedFromTheSameCopyBefore() throws IOException, SharingException {
		edit(bob, "Battery too low", "Battery low");
		bob.offer("First", "");
		edit(bob, "Battery low", "Battery flat");
		bob.offer("Second", "");
		takeOver(ann, "bob/first");
		takeOver(ann, "bob/second");
		assertEquals(RULES.replace("Battery too low", "Battery flat"), read(ann));
		edit(bob, "Battery flat", "Battery empty");
		bob.offer("Third", "");
		takeOver(ann, "bob/third");
		assertEquals(RULES.replace("Battery too low", "Battery empty"), read(ann));
	}

	@Test
	void newsAreWhatCameSinceTheLastLook() throws IOException, SharingException {
		assertEquals(List.of(), ann.newSinceLastLook().steps());
		edit(bob, "Battery too low", "Battery low");
		bob.offer("Title", "");
		takeOver(bob, "bob/title");
		ann.refresh();
		assertEquals(List.of("Take over \"Title\" of Bob", "Title"), ann.newSinceLastLook().steps().stream().map(Written::title).toList());
		assertEquals(List.of("rule flat_battery"), ann.newSinceLastLook().changes().stream().map(change -> change.title()).toList());
		ann.looked();
		assertEquals(List.of(), ann.newSinceLastLook().steps());
		assertEquals(RULES, read(ann));
	}

	@Test
	void historyTellsWhoWroteAndWhoChangedAnElement() throws IOException, SharingException {
		edit(bob, "Battery too low", "Battery low");
		Files.writeString(bob.folder().resolve("reviews.bay"), "review again by \"Bob\" on 2026-03-04 agrees \"fine\" meaning \"1234abcd\"\n");
		bob.offer("Title", "");
		takeOver(ann, "bob/title");
		// to another file, which changes nothing but the place
		String again = RULES.substring(RULES.indexOf("rule again"));
		edit(ann, "\n" + again, "");
		Files.writeString(ann.folder().resolve("more.bay"), again);
		ann.offer("Moved", "");
		takeOver(ann, "ann-lee/moved");
		History flat = ann.history("rule", "flat_battery").get();
		assertEquals("Ann Lee, Bob", flat.first().author() + ", " + flat.last().author());
		assertEquals("Title", flat.last().title());
		assertEquals(Git.run(place, "blame", "-s", "-L", "/Battery low/,+1", "main", "--", "rules.bay").split(" ")[0], flat.last().revision().substring(0, 8));
		History moved = ann.history("rule", "again").get();
		assertEquals("more.bay", moved.file());
		assertEquals("Begin ann, Begin ann", moved.first().title() + ", " + moved.last().title());
		assertEquals(List.of("by \"Bob\" on 2026-03-04 agrees \"fine\""), moved.reviews());
		assertEquals("Ann Lee", ann.history("family", "tarn").get().last().author());
	}

	@Test
	void twoWhoTakeOverAtTheSameMomentBothDo() throws IOException, SharingException, InterruptedException, ExecutionException {
		edit(bob, "Battery too low", "Battery low");
		bob.offer("Bob's", "");
		edit(ann, "Once more", "Yet once more");
		ann.offer("Ann's", "");
		ExecutorService threads = Executors.newFixedThreadPool(2);
		Future<Outcome> one = threads.submit(() -> takeOver(ann, "bob/bob-s"));
		Future<Outcome> other = threads.submit(() -> takeOver(bob, "ann-lee/ann-s"));
		one.get();
		other.get();
		threads.shutdown();
		assertEquals(RULES.replace("Battery too low", "Battery low").replace("Once more", "Yet once more"), Git.run(place, "show", "main:rules.bay"));
	}

	@Test
	void picturesAreSharedAsTheyAreAndNeverMixed() throws IOException, SharingException {
		byte[] picture = { (byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n', 0, '\r', '\n' };
		Files.createDirectories(bob.folder().resolve("pictures"));
		Files.write(bob.folder().resolve("pictures/box.png"), picture);
		bob.offer("Picture", "");
		takeOver(ann, "bob/picture");
		assertArrayEquals(picture, Files.readAllBytes(ann.folder().resolve("pictures/box.png")));
		assertArrayEquals(picture, ann.texts(ann.newest()).others().get("pictures/box.png"));
		catchUp(bob);
		Files.write(bob.folder().resolve("pictures/box.png"), new byte[] { 1 });
		bob.offer("Other", "");
		Files.write(ann.folder().resolve("pictures/box.png"), new byte[] { 2 });
		ann.offer("Mine", "");
		takeOver(ann, "ann-lee/mine");
		Outcome outcome = ann.takeOver("bob/other", Map.of(), texts -> List.of());
		assertEquals(List.of("file pictures/box.png"), outcome.conflicts().stream().map(Conflict::id).toList());
		assertTrue(ann.takeOver("bob/other", Map.of("file pictures/box.png", Conflict.Choice.THEIRS), texts -> List.of()).done());
		assertArrayEquals(new byte[] { 1 }, Files.readAllBytes(ann.folder().resolve("pictures/box.png")));
		Files.delete(ann.folder().resolve("pictures/box.png"));
		ann.offer("Gone", "");
		takeOver(bob, "ann-lee/gone");
		assertFalse(Files.exists(bob.folder().resolve("pictures")));
	}

	@Test
	void linesEndAsTheyDid() throws IOException, SharingException {
		write(bob, RULES.replace("\n", "\r\n"));
		bob.offer("Lines", "");
		edit(ann, "Once more", "Yet once more");
		ann.offer("Title", "");
		takeOver(ann, "ann-lee/title");
		takeOver(ann, "bob/lines");
		assertEquals(RULES.replace("Once more", "Yet once more").replace("\n", "\r\n"), read(ann));
		assertEquals("", Git.run(ann.folder(), "status", "--porcelain"));
	}

	@Test
	void aFolderThatIsKeptWithGitIsConnectedAsItIs() throws IOException, SharingException {
		Path own = Files.createDirectories(folder.resolve("own"));
		Git.run(own, "init", "-q", "-b", "trunk");
		Files.writeString(own.resolve("rules.bay"), RULES);
		Files.writeString(own.resolve("notes.txt"), "kept with Git");
		Git.run(own, "add", "-A");
		Git.run(own, "commit", "-q", "-m", "Mine");
		Path other = folder.resolve("other-place");
		try (SharedProject project = SharedProject.begin(own, other.toString(), "Cid", SharingListener.NONE)) {
			assertEquals("Tester: Mine\n", Git.run(other, "log", "--format=%an: %s", "trunk"));
			Files.writeString(own.resolve("notes.txt"), "changed");
			project.offer("Notes", "");
			assertEquals("changed", Git.run(other, "show", "offer/cid/notes:notes.txt"));
		}
		try (SharedProject joined = SharedProject.join(other.toString(), folder.resolve("joined"), "Dot", SharingListener.NONE)) {
			takeOver(joined, "cid/notes");
			// a commit that somebody makes with Git alone goes with the next offer
			Files.writeString(joined.folder().resolve("notes.txt"), "by hand");
			Git.run(joined.folder(), "commit", "-q", "-a", "-m", "By hand");
			joined.offer("Hand", "");
			takeOver(joined, "dot/hand");
			assertEquals("by hand", Git.run(other, "show", "trunk:notes.txt"));
			Git.assertSound(joined.folder());
		}
		Git.assertSound(other);
	}

	@Test
	void whoeverStopsAStepFindsAllAsItWas() throws IOException, SharingException {
		edit(bob, "Battery too low", "Battery low");
		SharingListener stop = new SharingListener() {
			@Override
			public boolean isCancelled() {
				return true;
			}
		};
		try (SharedProject stopped = SharedProject.open(bob.folder(), stop)) {
			Assertions.assertThrows(CancellationException.class, () -> stopped.offer("Title", ""));
		}
		assertEquals("* main\n", Git.run(place, "branch"));
		assertEquals(List.of(), bob.steps());
	}
}
