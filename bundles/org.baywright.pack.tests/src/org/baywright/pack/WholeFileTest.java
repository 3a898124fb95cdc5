package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
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
		Path file = folder.resolve("a.bay");
		WholeFile.write(file, "one".getBytes());
		WholeFile.write(file, "two".getBytes());
		assertEquals("two", Files.readString(file));
		assertEquals(1, filesLeft());
	}

	@Test
	void keepsPermissions() throws IOException {
		Path file = Files.writeString(folder.resolve("a.bay"), "one");
		Set<PosixFilePermission> mine = Set.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE,
				PosixFilePermission.OTHERS_READ);
		Files.setPosixFilePermissions(file, mine);
		WholeFile.write(file, "two".getBytes());
		assertEquals(mine, Files.getPosixFilePermissions(file));
	}

	@Test
	void followsLinks() throws IOException {
		Path file = Files.writeString(folder.resolve("a.bay"), "one");
		Path link = Files.createSymbolicLink(folder.resolve("link.bay"), file);
		WholeFile.write(link, "two".getBytes());
		assertTrue(Files.isSymbolicLink(link));
		assertEquals("two", Files.readString(file));
	}

	@Test
	void refusesAFolder() throws IOException {
		assertThrows(IOException.class, () -> WholeFile.write(folder, "one".getBytes()));
		assertEquals(0, filesLeft());
	}
}
