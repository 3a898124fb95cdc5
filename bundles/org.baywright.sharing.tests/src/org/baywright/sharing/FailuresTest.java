package org.baywright.sharing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;

import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** What goes wrong is told in one sentence, and nothing is half done then. */
class FailuresTest extends SharingFixture {

	private SharedProject open(Path path) throws SharingException {
		return SharedProject.open(path, SharingListener.NONE);
	}

	@Test
	void aFolderThatIsNotShared() throws IOException {
		Path plain = Files.createDirectories(folder.resolve("plain"));
		assertFails(plain + " is not shared yet. Share it first, or join a shared place.", () -> open(plain));
		assertFails(place + " is a shared place itself. Join it in a folder of your own, and work there.", () -> open(place));
		Git.run(plain, "init", "-q");
		assertFails(plain + " is not shared yet. Share it first.", () -> open(plain));
	}

	@Test
	void aPlaceThatIsGone() throws IOException, SharingException {
		Files.move(place, folder.resolve("away"));
		String gone = "The shared place " + place + " is not there. See that the drive is connected and that its name is right.";
		edit(bob, "Once more", "Yet once more");
		assertFails(gone, () -> bob.offer("Title", ""));
		assertFails(gone, () -> bob.catchUp(Map.of()));
		assertFails(gone, () -> SharedProject.join(place.toString(), folder.resolve("new"), "Cid", SharingListener.NONE));
		assertFalse(Files.exists(folder.resolve("new")));
		assertEquals(1, bob.state().mine().size());
		Files.move(folder.resolve("away"), place);
		assertEquals("bob/title", bob.offer("Title", "").id());
	}

	@Test
	void placesThatCannotBeUsed() throws IOException {
		Path full = Files.createDirectories(folder.resolve("full"));
		Files.writeString(full.resolve("letter.txt"), "x");
		Path own = Files.createDirectories(folder.resolve("own"));
		Files.writeString(own.resolve("rules.bay"), RULES);
		assertFails(full + " holds other files. Name an empty folder for the shared place.",
				() -> SharedProject.begin(own, full.toString(), "Cid", SharingListener.NONE));
		assertFails("The shared place " + own.resolve("in") + " and your folder lie within each other. Choose a shared place outside of your folder.",
				() -> SharedProject.begin(own, own.resolve("in").toString(), "Cid", SharingListener.NONE));
		assertFails(place + " holds another project already. Name an empty folder; or join what is shared there in a new folder, and copy your rule files into that.",
				() -> SharedProject.begin(own, place.toString(), "Cid", SharingListener.NONE));
		assertFails("There is no folder " + folder.resolve("no") + " for the shared place. See that the drive is connected, or make the folder.",
				() -> SharedProject.begin(own, folder.resolve("no/place").toString(), "Cid", SharingListener.NONE));
		assertFails("Say who you are: a name that others know, without < and >.", () -> SharedProject.begin(own, folder.resolve("new").toString(), " ", SharingListener.NONE));
		assertFalse(Files.exists(own.resolve(".git")));
		assertEquals("x", Files.readString(full.resolve("letter.txt")));
		assertFails(full + " is there already, and not empty. Name a new folder for your copy.",
				() -> SharedProject.join(place.toString(), full, "Cid", SharingListener.NONE));
		Path within = Files.createDirectories(ann.folder().resolve("within"));
		assertFails(within + " lies within " + ann.folder() + ", which is kept with Git already. Share that folder, or move this one out of it.",
				() -> SharedProject.begin(within, folder.resolve("new").toString(), "Cid", SharingListener.NONE));
		assertFails("Nothing is shared at " + full + ", or it cannot be reached. See that the drive or the network is there and that the name is right.",
				() -> SharedProject.join(full.toString(), folder.resolve("copy"), "Cid", SharingListener.NONE));
	}

	@Test
	void addressesThatCannotBeReached() {
		Path copy = folder.resolve("copy");
		for (String address : new String[] { "http://127.0.0.1:1/van.git", "ssh://127.0.0.1:1/van.git" }) {
			assertFails(address + " cannot be reached. See that the network is there and that the name is right.",
					() -> SharedProject.join(address, copy, "Cid", SharingListener.NONE));
		}
		assertFails("nonsense://there/van is no place that can be reached. Name a folder, or an address that begins with https:// or file://.",
				() -> SharedProject.join("nonsense://there/van", copy, "Cid", SharingListener.NONE));
		assertFalse(Files.exists(copy));
	}

	@Test
	void whatSomebodyHasBegunWithGit() throws IOException, SharingException {
		Path copy = bob.folder();
		Git.run(copy, "checkout", "-q", "--detach");
		assertFails("Somebody has gone to an old state in " + copy + " with Git. Go back to the branch main there, and try again.", () -> open(copy));
		Git.run(copy, "checkout", "-q", "-b", "mine");
		assertFails("Somebody has gone to the branch mine in " + copy + " with Git. Go back to the branch main there, and try again.", () -> bob.offer("Title", ""));
		edit(bob, "Once more", "Twice");
		Git.run(copy, "commit", "-q", "-a", "-m", "Twice");
		Git.run(copy, "checkout", "-q", "main");
		edit(bob, "Battery too low", "Battery low");
		Git.run(copy, "commit", "-q", "-a", "-m", "Low");
		Git.run(copy, "merge", "-q", "--no-commit", "--no-ff", "mine");
		assertFails("Somebody has begun something with Git in " + copy + " and not ended it (Merged). End it there, or take it back, and try again.", () -> bob.catchUp(Map.of()));
		Git.run(copy, "commit", "-q", "-m", "Joined");
		assertTrue(bob.catchUp(Map.of()).done());
		Path shallow = folder.resolve("shallow");
		edit(bob, "Battery low", "Battery flat");
		bob.offer("Title", "");
		takeOver(bob, "bob/title");
		Git.run(folder, "clone", "-q", "--depth", "1", "file://" + place, "shallow");
		assertFails(shallow + " holds only the end of its history. Join the shared place in a new folder, which fetches all of it.", () -> open(shallow));
	}

	@Test
	void whoeverElseIsAtIt() throws IOException, SharingException {
		edit(bob, "Once more", "Yet once more");
		try (FileChannel channel = FileChannel.open(bob.folder().resolve(".git/baywright.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
				FileLock lock = channel.lock()) {
			assertFails("Another step is under way in " + bob.folder() + ". Let it end, and try again.", () -> bob.offer("Title", ""));
		}
		Path index = Files.createFile(bob.folder().resolve(".git/index.lock"));
		String message = Assertions.assertThrows(SharingException.class, () -> bob.offer("Title", "")).getMessage();
		assertTrue(message.startsWith("Another program works with " + bob.folder() + " just now."), message);
		Files.delete(index);
		Path branch = place.resolve("refs/heads/offer/bob/title.lock");
		Files.createDirectories(branch.getParent());
		Files.createFile(branch);
		assertFails("Others are writing to " + place + " all the time. Try again in a moment. If nobody is, a program was stopped in the middle, and the file " + branch
				+ " can be deleted.", () -> bob.offer("Title", ""));
		assertEquals(0, bob.steps().size());
		Files.delete(branch);
		bob.offer("Title", "");
	}

	@Test
	void whatAProgramLeftThatWasStoppedInTheMiddleIsSweptAway() throws IOException, SharingException {
		edit(bob, "Once more", "Yet once more");
		Files.writeString(bob.folder().resolve(".git/baywright.lock"), "1");
		Files.createFile(bob.folder().resolve(".git/index.lock"));
		Files.createFile(bob.folder().resolve(".git/refs/heads/main.lock"));
		bob.offer("Title", "");
		takeOver(bob, "bob/title");
		assertEquals("", Files.readString(bob.folder().resolve(".git/baywright.lock")));
	}

	@Test
	void filesThatStandInTheWay() throws IOException, SharingException {
		Files.createDirectories(bob.folder().resolve("pictures"));
		Files.write(bob.folder().resolve("pictures/box.png"), new byte[] { 1 });
		Files.writeString(bob.folder().resolve("Rules.bay"), "sign other\n");
		if (Files.list(bob.folder()).filter(file -> file.getFileName().toString().equalsIgnoreCase("rules.bay")).count() == 2) {
			assertFails("The files Rules.bay and rules.bay differ only in capitals, and some systems cannot tell them apart. Give one of them another name.",
					() -> bob.offer("Title", ""));
			Files.delete(bob.folder().resolve("Rules.bay"));
		}
		bob.offer("Title", "");
		takeOver(bob, "bob/title");
		Files.writeString(ann.folder().resolve("pictures"), "a file of mine");
		assertFails("A file pictures/box.png comes from the others, and something else lies there in your copy. Give that another name, and try again.",
				() -> ann.catchUp(Map.of()));
		assertEquals("a file of mine", Files.readString(ann.folder().resolve("pictures")));
		assertEquals(RULES, read(ann));
		Files.delete(ann.folder().resolve("pictures"));
		catchUp(ann);
	}

	@Test
	void aStepInTheMiddleOfWhichAProgramWasStoppedIsEnded() throws IOException, SharingException {
		edit(bob, "Battery too low", "Battery low");
		bob.offer("Title", "");
		takeOver(bob, "bob/title");
		catchUp(ann);
		// as it is when the program ends after the first file
		String after = Git.run(ann.folder(), "rev-parse", "refs/baywright/after/1").strip();
		Git.run(ann.folder(), "update-ref", "refs/baywright/doing", after);
		Git.run(ann.folder(), "update-ref", "refs/heads/main", "main~1");
		write(ann, RULES);
		try (SharedProject again = open(ann.folder())) {
			assertEquals(read(bob), read(again));
			assertEquals("", Git.run(ann.folder(), "status", "--porcelain"));
			assertFalse(again.state().isAnythingNew());
		}
		assertEquals("", Git.run(ann.folder(), "for-each-ref", "refs/baywright/doing"));
	}
}
