package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermission;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {

	@TempDir
	private Path folder;

	private long filesLeft() throws IOException {
		try (Stream<Path> files = Files.list(folder)) {
			return files.count();
		}
	}

	@Test
	void writesAndReplaces() throws IOException {
		Path file = folder.resolve("a.baypack");
		WholeFile.write(file, "one".getBytes());
		WholeFile.write(file, "two".getBytes());
		assertEquals("two", Files.readString(file));
		assertEquals(1, filesLeft());
	}

	@Test
	void keepsPermissions() throws IOException {
		Path file = Files.writeString(folder.resolve("a.baypack"), "one");
		Set<PosixFilePermission> mine = Set.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE,
				PosixFilePermission.OTHERS_READ);
		Files.setPosixFilePermissions(file, mine);
		WholeFile.write(file, "two".getBytes());
		assertEquals(mine, Files.getPosixFilePermissions(file));
	}

	@Test
	void followsLinks() throws IOException {
		Path file = Files.writeString(folder.resolve("a.baypack"), "one");
		Path link = Files.createSymbolicLink(folder.resolve("link.baypack"), file);
		WholeFile.write(link, "two".getBytes());
		assertTrue(Files.isSymbolicLink(link));
		assertEquals("two", Files.readString(file));
	}

	@Test
	void refusesAFolder() throws IOException {
		assertThrows(IOException.class, () -> WholeFile.write(folder, "one".getBytes()));
		assertEquals(0, filesLeft());
	}

	@Test
	void neverReplacesARuleFile() throws IOException {
		Path rules = Files.writeString(folder.resolve("a.bay"), "sign x");
		Path link = Files.createSymbolicLink(folder.resolve("link.html"), rules);
		for (Path target : List.of(rules, link, folder.resolve("new.BAY"))) {
			FileSystemException refused = assertThrows(FileSystemException.class, () -> WholeFile.write(target, "one".getBytes()));
			assertTrue(refused.getReason().startsWith("it is a rule file"), refused.getReason());
		}
		assertEquals("sign x", Files.readString(rules));
		assertEquals(2, filesLeft());
	}

	@Test
	void makesNoFolderThatOnlyALinkNames() throws IOException {
		Path link = Files.createSymbolicLink(folder.resolve("link.html"), folder.resolve("gone/a.html"));
		assertThrows(FileSystemException.class, () -> WholeFile.write(link, "one".getBytes()));
		assertFalse(Files.exists(folder.resolve("gone")));
	}

	@Test
	void takesAwayWhatAKilledRunLeft() throws IOException {
		Path left = Files.writeString(folder.resolve(".baywright-999999999-1.part"), "half");
		Path justNow = Files.writeString(folder.resolve(".baywright-999999998-1.part"), "half");
		Path running = Files.writeString(folder.resolve(".baywright-1-99.part"), "half");
		Path sameNumber = Files.writeString(folder.resolve(".baywright-" + ProcessHandle.current().pid() + "-999999.part"), "half");
		FileTime earlier = FileTime.from(Instant.now().minusSeconds(120));
		Files.setLastModifiedTime(left, earlier);
		Files.setLastModifiedTime(running, FileTime.from(ProcessHandle.of(1).orElseThrow().info().startInstant().orElse(Instant.now()).plusSeconds(1)));
		Files.setLastModifiedTime(sameNumber, FileTime.from(ProcessHandle.current().info().startInstant().orElseThrow().minusSeconds(120)));
		WholeFile.write(folder.resolve("a.baypack"), "one".getBytes());
		assertFalse(Files.exists(left));
		assertFalse(Files.exists(sameNumber), "left by an earlier process of the same number");
		assertTrue(Files.exists(justNow) && Files.exists(running));
	}

	/** Where processes always get the same number, so does what was written aside. */
	@Test
	void isNotStoppedByWhatAKilledRunLeftJustNow() throws IOException {
		Path file = folder.resolve("a.baypack");
		for (int i = 1; i <= 200; i++) {
			Files.writeString(folder.resolve(".baywright-" + ProcessHandle.current().pid() + "-" + i + ".part"), "half");
		}
		WholeFile.write(file, "one".getBytes());
		assertEquals("one", Files.readString(file));
		assertEquals(201, filesLeft());
	}

	@Test
	void namesTheFileThatWasWanted() {
		Path file = Path.of("/proc/self/a.bay");
		assertEquals(file.toAbsolutePath().toString(), assertThrows(FileSystemException.class, () -> WholeFile.writeRules(file, "one".getBytes())).getFile());
	}
}
