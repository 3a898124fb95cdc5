package org.baywright.sharing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

/** A shared place in a folder, with a copy of Ann, who began it, and one of Bob, who joined. */
abstract class SharingFixture {

	static final String RULES = """
			// Starting the van.

			family tarn "Tarn" { trait engine : diesel, petrol }
			sign no_crank "Does not crank"
			part battery "Battery" { fault flat "Flat" seen 3 }

			rule flat_battery "Battery too low" {
			  for tarn
			  given no_crank
			  then : suspects battery.flat
			}

			rule again "Once more" {
			  for tarn
			  given no_crank
			  then : suspects battery.flat
			}
			""";

	@TempDir
	Path folder;

	Path place;
	SharedProject ann;
	SharedProject bob;

	@BeforeEach
	void share() throws IOException, SharingException {
		folder = folder.toRealPath();
		place = folder.resolve("place");
		Files.createDirectories(folder.resolve("ann"));
		Files.writeString(folder.resolve("ann/rules.bay"), RULES);
		ann = SharedProject.begin(folder.resolve("ann"), place.toString(), "Ann Lee", SharingListener.NONE);
		bob = SharedProject.join(place.toString(), folder.resolve("bob"), "Bob", SharingListener.NONE);
	}

	@AfterEach
	void close() {
		Git.assertSound(place);
		Git.assertSound(ann.folder());
		Git.assertSound(bob.folder());
		ann.close();
		bob.close();
	}

	static String read(SharedProject project) throws IOException {
		return Files.readString(project.folder().resolve("rules.bay"));
	}

	static void write(SharedProject project, String text) throws IOException {
		Files.writeString(project.folder().resolve("rules.bay"), text);
	}

	/** Replaces a part of the rules in a copy. */
	static void edit(SharedProject project, String before, String after) throws IOException {
		String text = read(project);
		assertTrue(text.contains(before), before);
		write(project, text.replace(before, after));
	}

	static Outcome takeOver(SharedProject project, String offer) throws SharingException {
		Outcome outcome = project.takeOver(offer, Map.of(), texts -> List.of());
		assertTrue(outcome.done(), outcome.toString());
		return outcome;
	}

	static void catchUp(SharedProject project) throws SharingException {
		assertTrue(project.catchUp(Map.of()).done());
	}

	static void assertFails(String message, Executable step) {
		assertEquals(message, assertThrows(SharingException.class, step).getMessage());
	}

	/** Returns who said what in the shared state, the newest first. */
	String log() {
		return Git.run(place, "log", "--topo-order", "--format=%an: %s", "main");
	}
}
