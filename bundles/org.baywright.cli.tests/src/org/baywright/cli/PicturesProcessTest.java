package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

import org.baywright.pack.PackReader;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.Test;

/** A project that shows a picture, from the first mistake to the pack, by whole commands. */
class PicturesProcessTest extends ProcessFixture {

	@Test
	void aPictureIsMissedMendedPackedAndVerified() throws IOException, InterruptedException, PackException {
		byte[] without = pack("before.baypack");
		Files.writeString(folder.resolve("van/zz.bay"),
				"part lamp_holder \"Lamp holder\" {\n  picture \"pictures/holder.jpg\" \"Behind the cover\"\n  fault loose \"Loose\"\n}\n");
		Runs.Result missing = run("check", "van");
		assertEquals(ExitCode.FLAWS, missing.code());
		assertTrue(missing.out().contains("picture-missing") && missing.out().contains("There is no file `pictures/holder.jpg` in the project that can be read."), missing.out());
		Files.createDirectories(folder.resolve("van/pictures"));
		Path picture = folder.resolve("van/pictures/holder.jpg");
		Files.write(picture, new byte[] { (byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n' });
		Runs.Result png = run("check", "van");
		assertTrue(png.out().contains("picture-type") && png.out().contains("`pictures/holder.jpg` is a PNG file"), png.out());
		assertEquals(ExitCode.FLAWS, run("pack", "van", "-o", "refused.baypack").code());
		assertFalse(Files.exists(folder.resolve("refused.baypack")));
		byte[] jpeg = { (byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xC0, 0, 8, 8, 0, 17, 0, 31, 1, (byte) 0xFF, (byte) 0xD9 };
		Files.write(picture, jpeg);
		assertFalse(run("check", "van").out().contains("picture-"), "what was told is gone");
		pack("after.baypack");
		assertArrayEquals(jpeg, PackReader.entries(folder.resolve("after.baypack")).get("pictures/holder.jpg"));
		Runs.Result verified = run("verify", "--prove", "after.baypack");
		assertEquals(ExitCode.FINE, verified.code(), verified.out());
		assertTrue(verified.out().contains("Every picture that the rules show is there, and no other."), verified.out());
		byte[] forged = Files.readAllBytes(folder.resolve("after.baypack"));
		String text = new String(forged, StandardCharsets.ISO_8859_1);
		forged[text.indexOf(new String(jpeg, StandardCharsets.ISO_8859_1)) + 8] = 3;
		Files.write(folder.resolve("forged.baypack"), forged);
		assertFalse(run("verify", "forged.baypack").code() == ExitCode.FINE);
		Files.delete(folder.resolve("van/zz.bay"));
		assertArrayEquals(without, pack("again.baypack"), "a picture that no rule shows is not packed");
	}

	private byte[] pack(String name) throws IOException, InterruptedException {
		Runs.Result result = run("pack", "van", "-o", name);
		assertEquals(ExitCode.FINE, result.code(), result.out() + result.err());
		return Files.readAllBytes(folder.resolve(name));
	}
}
