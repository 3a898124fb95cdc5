package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

import org.baywright.pack.PackReader;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Whole commands on a project that builds on another one, or on a rule pack. */
class BuildsOnTest extends ProcessFixture {

	private Path socket;
	private Path truck;

	@BeforeEach
	void copyExamples() {
		Path examples = TestFiles.root().resolve("rules-examples");
		TestFiles.copy(examples.resolve("trailer-socket"), folder.resolve("trailer-socket"));
		TestFiles.copy(examples.resolve("service-truck"), folder.resolve("service-truck"));
		socket = folder.resolve("trailer-socket/rules.bay");
		truck = folder.resolve("service-truck/truck.bay");
	}

	private static void change(Path file, String old, String now) throws IOException {
		String text = Files.readString(file);
		assertTrue(text.contains(old), old);
		Files.writeString(file, text.replace(old, now));
	}

	@Test
	void itIsCheckedTogether() throws IOException, InterruptedException {
		Runs.Result result = run("check", "service-truck", "--fail-on", "warning");
		assertEquals(ExitCode.FINE, result.code(), result.out());
		assertHas(result.out(), "No problems found, 1 accepted; 10 rules");
	}

	@Test
	void whatComesOfBothIsToldHereWithThePlaceThere() throws IOException, InterruptedException {
		change(truck, "  on below 11.5 V    : confirms work_lamp.no_feed", "  on below 11.5 V : clears socket_feed.wire_open");
		change(truck, "given work_lamp_dark\n  run at_socket", "given trailer_lamp_out, behind_fuse at_least 11.5 V\n  run at_socket");
		Runs.Result result = run("check", "service-truck", "--only", "contradiction");
		assertEquals(ExitCode.FLAWS, result.code(), result.out());
		assertHas(result.out(), "ERROR  service-truck/truck.bay:");
		assertHas(result.out(), "\n      trailer-socket/rules.bay:");
		assertHas(result.out(), "point at_socket");
		Runs.Result here = new Command(folder.resolve("service-truck")).run("check", "--only", "contradiction");
		assertHas(here.out(), "ERROR  truck.bay:");
		assertHas(here.out(), "\n      ../trailer-socket/rules.bay:");
		for (String format : new String[] { "json", "sarif", "line", "junit" }) {
			assertHas(run("check", "service-truck", "--format", format).out(), "truck.bay");
		}
	}

	@Test
	void aChangeThereIsToldHere() throws IOException, InterruptedException {
		change(socket, "at_least 11.5 V : socket_feed.fuse_blown", "at_least 11.0 V : socket_feed.fuse_blown");
		Runs.Result result = run("check", "service-truck");
		assertHas(result.out(), "builds-on-changed");
		assertHas(result.out(), "`../trailer-socket` has changed since it was taken over");
		String meaning = result.out().replaceFirst("(?s).*take it over: write meaning (\"[0-9a-f]{8}\").*", "$1");
		change(truck, "meaning \"" + Files.readString(truck).replaceFirst("(?s).*builds_on[^\n]* meaning \"([0-9a-f]+)\".*", "$1") + "\"", "meaning " + meaning);
		assertFalse(run("check", "service-truck").out().contains("builds-on"));
	}

	@Test
	void anErrorThereIsToldOnceAndNoPackIsMade() throws IOException, InterruptedException {
		change(socket, "given trailer.own_wiring suspected", "given trailer.own_wirig suspected");
		Runs.Result result = run("check", "service-truck", "--only", "text");
		assertEquals(ExitCode.FLAWS, result.code());
		assertHas(result.out(), "ERROR  service-truck/truck.bay:4:11  builds-on-errors");
		assertHas(result.out(), "service-truck: 1 error");
		assertEquals(ExitCode.FLAWS, run("pack", "service-truck").code());
		assertFalse(Files.exists(folder.resolve("service-truck.baypack")));
	}

	@Test
	void aPackNeedsNoOther() throws IOException, InterruptedException, PackException {
		assertEquals(ExitCode.FINE, run("pack", "service-truck").code());
		assertEquals(ExitCode.FINE, run("verify", "--prove", "service-truck.baypack").code());
		Runs.Result shown = run("show", "service-truck.baypack", "--rules");
		assertHas(shown.out(), "Built on trailer-socket (../trailer-socket), meaning ");
		assertHas(shown.out(), "../trailer-socket/rules.bay:");
		Path pack = folder.resolve("service-truck.baypack");
		assertEquals(1, PackReader.read(pack).manifest().builtOn().size());
		assertFalse(new String(Files.readAllBytes(pack), StandardCharsets.ISO_8859_1).contains(folder.toString()), "no path of this machine");
		Files.delete(socket);
		assertEquals(ExitCode.FINE, run("verify", "--prove", "service-truck.baypack").code());
	}

	/** The pack of the other project in place of its folder says the same, by the same fingerprint. */
	@Test
	void aPackIsBuiltOnLikeAFolder() throws IOException, InterruptedException {
		assertEquals(ExitCode.FINE, run("pack", "trailer-socket", "--output", "socket.baypack").code());
		change(truck, "../trailer-socket", "../socket.baypack");
		Files.delete(socket);
		Runs.Result result = run("check", "service-truck", "--fail-on", "warning");
		assertEquals(ExitCode.FINE, result.code(), result.out());
		byte[] bytes = Files.readAllBytes(folder.resolve("socket.baypack"));
		Runs.Result over = run("pack", "service-truck", "--output", "service-truck/../socket.baypack");
		assertEquals(ExitCode.USAGE, over.code());
		assertHas(over.err(), "The project builds on service-truck/../socket.baypack, so its own pack cannot be written there.");
		assertArrayEquals(bytes, Files.readAllBytes(folder.resolve("socket.baypack")));
		bytes[bytes.length / 2] ^= 1;
		Files.write(folder.resolve("socket.baypack"), bytes);
		result = run("check", "service-truck");
		assertHas(result.out(), "builds-on-unreadable");
		assertHas(result.out(), "service-truck: 1 error");
	}

	@Test
	void nothingThereIsEverWritten() throws IOException, InterruptedException {
		change(socket, "  given trailer_lamp_out\n", "      given trailer_lamp_out\n");
		change(truck, "given work_lamp_dark\n  run lamp_swapped", "     given work_lamp_dark\n  run lamp_swaped");
		String before = Files.readString(socket);
		assertHas(run("tidy", "service-truck").out(), "1 file: 1 laid out anew");
		Runs.Result fixed = run("check", "--fix", "service-truck");
		assertHas(fixed.out(), "Fixed   service-truck/truck.bay:");
		assertHas(fixed.out(), "No problems found");
		assertEquals(before, Files.readString(socket));
		change(truck, "trailer_lamp_out present", "trailer_lamp_ot present");
		assertHas(run("check", "--fix", "service-truck").out(), "Write trailer_lamp_out");
		assertEquals(before, Files.readString(socket));
		assertEquals(ExitCode.FLAWS, run("tidy", "--check", "trailer-socket").code());
	}

	@Test
	@Timeout(value = 100, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
	void watchingSeesAChangeThere() throws IOException, InterruptedException {
		Process process = new Command(folder).start("check", "--watch", "--format", "line", "service-truck");
		try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8); BufferedReader err = process.errorReader(StandardCharsets.UTF_8)) {
			assertEquals("Waiting for a change; Ctrl+C ends.", err.readLine());
			Files.writeString(folder.resolve("trailer-socket/more.bay"), "sign lamp_odd \"Odd lamp\"\n");
			assertHas(out.readLine(), "what it said then was not written down");
			assertEquals("Waiting for a change; Ctrl+C ends.", err.readLine());
			Files.delete(folder.resolve("trailer-socket/more.bay"));
			Files.delete(socket);
			Files.delete(folder.resolve("trailer-socket/socket.bay"));
			assertHas(out.readLine(), "There are no rule files (*.bay) in `../trailer-socket`.");
		} finally {
			process.descendants().forEach(ProcessHandle::destroyForcibly);
			process.destroyForcibly();
		}
	}

	@Test
	void eachKindIsExplained() throws IOException, InterruptedException {
		for (String kind : new String[] { "changed", "errors", "itself", "missing", "not-taken", "unreadable" }) {
			assertHas(run("explain", "builds-on-" + kind).out(), "What to do");
		}
	}
}
