package org.baywright.sharing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;

import org.junit.jupiter.api.Test;

/** Every step can be undone, and nothing is lost. */
class UndoTest extends SharingFixture {

	private static final String LOW = RULES.replace("Battery too low", "Battery low");

	@Test
	void anOfferGoesAndTheCopyStays() throws IOException, SharingException {
		write(bob, LOW);
		bob.offer("Title", "");
		assertEquals("Offered \"Title\"", bob.undo().words());
		assertEquals("* main\n", Git.run(place, "branch"));
		assertEquals(LOW, read(bob));
		assertTrue(bob.state().isAnythingToOffer());
		assertFails("There is no step to undo.", () -> bob.undo());
		// and is there again
		bob.undo(bob.steps().get(0).number());
		assertEquals("bob/title", bob.offers().get(0).id());
		assertEquals(LOW, Git.run(place, "show", "offer/bob/title:rules.bay"));
	}

	@Test
	void anOfferThatWasChangedSaysAgainWhatItSaid() throws IOException, SharingException {
		write(bob, LOW);
		bob.offer("Title", "First.");
		edit(bob, "Once more", "Yet once more");
		bob.offer("Title", "Second.");
		bob.undo();
		assertEquals(LOW, Git.run(place, "show", "offer/bob/title:rules.bay"));
		assertEquals("First.", bob.offers().get(0).note());
		assertEquals("3", Git.run(place, "rev-list", "--count", "main..offer/bob/title").strip());
		assertEquals(LOW.replace("Once more", "Yet once more"), read(bob));
		bob.undo();
		assertEquals("* main\n", Git.run(place, "branch"));
	}

	@Test
	void whatWasTakenBackIsOfferedAgain() throws IOException, SharingException {
		write(bob, LOW);
		bob.offer("Title", "");
		assertFails("Only Bob can take this offer back.", () -> ann.withdraw("bob/title"));
		bob.withdraw("bob/title");
		assertEquals("* main\n  withdrawn/bob/title\n", Git.run(place, "branch"));
		assertEquals(Offer.Standing.WITHDRAWN, bob.offers().get(0).standing());
		ann.refresh();
		assertFails("The offer bob/title is withdrawn. Its author can offer it again.", () -> takeOver(ann, "bob/title"));
		bob.undo();
		assertEquals(List.of(Offer.Standing.OPEN), bob.offers().stream().map(Offer::standing).toList());
		takeOver(ann, "bob/title");
		assertEquals(LOW, read(ann));
	}

	@Test
	void bringingTheCopyUpIsUndoneAndWhatWasWrittenSinceStays() throws IOException, SharingException {
		write(bob, LOW);
		bob.offer("Title", "");
		takeOver(bob, "bob/title");
		catchUp(ann);
		assertEquals(LOW, read(ann));
		edit(ann, "Once more", "Yet once more");
		assertEquals("Brought the copy up", ann.undo().words());
		assertEquals(RULES.replace("Once more", "Yet once more"), read(ann));
		assertTrue(ann.state().isAnythingNew());
		catchUp(ann);
		assertEquals(LOW.replace("Once more", "Yet once more"), read(ann));
	}

	@Test
	void takingOverIsTakenBackForAllByAStateOfItsOwn() throws IOException, SharingException {
		write(bob, LOW);
		bob.offer("Title", "");
		takeOver(bob, "bob/title");
		edit(ann, "Once more", "Yet once more");
		ann.offer("Ann's", "");
		takeOver(ann, "ann-lee/ann-s");
		bob.undo();
		assertEquals(RULES.replace("Once more", "Yet once more"), Git.run(place, "show", "main:rules.bay"));
		assertEquals("Bob: Undo: Took over \"Title\"", log().lines().findFirst().get());
		// what bob had not offered then is in his copy as before
		assertEquals(LOW.replace("Once more", "Yet once more"), read(bob));
		assertEquals(List.of("rule flat_battery"), bob.state().mine().stream().map(change -> change.title()).toList());
		catchUp(ann);
		assertEquals(RULES.replace("Once more", "Yet once more"), read(ann));
		// to do it again after all
		bob.undo(bob.steps().get(0).number());
		assertEquals(LOW.replace("Once more", "Yet once more"), Git.run(place, "show", "main:rules.bay"));
		assertEquals(List.of(), bob.state().mine());
		assertFalse(bob.steps().stream().filter(step -> step.words().equals("Took over \"Title\"")).findFirst().get().undone());
	}

	@Test
	void whatWasOfferedAgainAfterItWasTakenBackIsTakenOverAgain() throws IOException, SharingException {
		write(bob, LOW);
		bob.offer("Title", "");
		takeOver(bob, "bob/title");
		bob.undo();
		edit(bob, "Once more", "Yet once more");
		bob.offer("Title", "");
		takeOver(ann, "bob/title");
		assertEquals(LOW.replace("Once more", "Yet once more"), read(ann));
	}

	@Test
	void whatWasChangedSinceIsNotTakenBack() throws IOException, SharingException {
		edit(bob, "then : suspects battery.flat\n}\n\nrule again", "then : clears battery.flat\n}\n\nrule again");
		bob.offer("Clears", "");
		takeOver(bob, "bob/clears");
		catchUp(ann);
		edit(ann, "then : clears", "then : confirms");
		ann.offer("Confirms", "");
		takeOver(ann, "ann-lee/confirms");
		String before = log();
		assertFails("\"Took over \"Clears\"\" cannot be undone as it is, since this has changed after it: rule flat_battery. Change it back by hand, or undo what came after first.",
				() -> bob.undo());
		assertEquals(before, log());
	}

	@Test
	void whatWasTakenOverAndChangedByOthersSinceNeedsNoChoice() throws IOException, SharingException {
		edit(bob, "then : suspects battery.flat\n}\n\nrule again", "then : clears battery.flat\n}\n\nrule again");
		bob.offer("Clears", "");
		takeOver(ann, "bob/clears");
		edit(ann, "then : clears", "then : confirms");
		ann.offer("Confirms", "");
		takeOver(ann, "ann-lee/confirms");
		edit(bob, "Once more", "Yet once more");
		catchUp(bob);
		assertEquals(read(ann).replace("Once more", "Yet once more"), read(bob));
	}
}
