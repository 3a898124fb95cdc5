package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.junit.jupiter.api.Test;

/** {@code baywright plan} as a process. */
class PlanCommandTest extends ProcessFixture {

	private static final List<String> NO_CRANK = List.of("--vehicle", "van", "--complaint", "no_crank");

	private Runs.Result plan(String project, String... more) throws IOException, InterruptedException {
		List<String> args = new ArrayList<>(List.of("plan", project));
		args.addAll(NO_CRANK);
		args.addAll(List.of(more));
		return run(args.toArray(String[]::new));
	}

	@Test
	void tellsThePlan() throws IOException, InterruptedException {
		Runs.Result result = plan("van");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertEquals("", result.err());
		List<String> lines = result.out().lines().toList();
		assertEquals("Plan for “Engine does not crank” on Invented van", lines.get(0));
		assertEquals("Caution, Charging gas: No flame or spark near the battery.", lines.get(1));
		assertTrue(lines.get(2).matches("Work: about \\d+ min to be expected, \\d+ min at worst\\."), lines.get(2));
		assertTrue(lines.contains("1. Battery voltage at rest (8 min)"), result.out());
		assertTrue(lines.stream().anyMatch(line -> line.matches("   1a .*, \\d+ of 100: 12 V battery: Low state of charge")), result.out());
		assertEquals(result.out(), plan("van").out(), "the same each time");
		Runs.Result diesel = plan("van", "--with", "engine=diesel");
		assertHas(diesel.out(), "With engine diesel\n");
	}

	@Test
	void writesThePageAndThePicture() throws IOException, InterruptedException {
		Runs.Result result = plan("van", "--sheet", "plan.html", "--picture", "plan.svg");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertHas(result.out(), "Wrote plan.html\nWrote plan.svg\n");
		assertHas(Files.readString(folder.resolve("plan.html")), "licensed practice come first");
		assertHas(Files.readString(folder.resolve("plan.svg")), "Step: Battery voltage at rest, 8 min");
		Runs.Result out = plan("van", "--picture", "-");
		assertTrue(out.out().startsWith("<?xml") && out.out().endsWith("</svg>\n"), out.out());
		assertHas(out.err(), "Plan for “Engine does not crank”");
	}

	@Test
	void tellsWhatAChangeMoves() throws IOException, InterruptedException {
		TestFiles.copy(folder.resolve("van"), folder.resolve("before"));
		assertHas(plan("van", "--against", "before").out(), "Nothing moved against before.\n");
		Path file = folder.resolve("before/van.bay");
		Files.writeString(file, Files.readString(file).replace("takes 8 min", "takes 18 min"));
		Runs.Result result = plan("van", "--against", "before");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		String below = result.out().lines().skip(1).findFirst().orElseThrow();
		assertTrue(below.matches("Against before: expected \\d+ → \\d+ min, worst \\d+ → \\d+ min, .*\\."), below);
	}

	@Test
	void whatIsWrongIsTold() throws IOException, InterruptedException {
		Runs.Result sign = run("plan", "van", "--vehicle", "van", "--complaint", "no_cranc");
		assertEquals(ExitCode.USAGE, sign.code());
		assertHas(sign.err(), "Invented van has no sign no_cranc.");
		assertHas(sign.err(), "no_crank");
		Runs.Result missing = run("plan", "van", "--vehicle", "van");
		assertEquals(ExitCode.USAGE, missing.code());
		assertHas(missing.err(), "--complaint");
		Runs.Result nothing = plan("nothing");
		assertEquals(ExitCode.FILES, nothing.code());
		assertHas(nothing.err(), "nothing");
		Files.writeString(Files.createDirectory(folder.resolve("other")).resolve("other.bay"), "family van \"Other van\"\n");
		Runs.Result other = plan("van", "--against", "other");
		assertEquals(ExitCode.USAGE, other.code(), other.out());
		assertHas(other.err(), "other: Other van has no sign no_crank.");
		Runs.Result same = plan("van", "--sheet", "one", "--picture", "one");
		assertEquals(ExitCode.USAGE, same.code());
		assertFalse(Files.exists(folder.resolve("one")));
	}

	@Test
	void noPlanIsToldWithItsOwnExitCode() throws IOException, InterruptedException {
		Files.writeString(Files.createDirectory(folder.resolve("bare")).resolve("bare.bay"), """
				family van "Bare van"
				sign no_crank "Engine does not crank"
				part battery "Battery" { fault flat "Flat" }
				rule a { given no_crank then suspects battery.flat }
				""");
		Runs.Result result = plan("bare");
		assertEquals(ExitCode.FLAWS, result.code(), result.out() + result.err());
		assertEquals("Plan for “Engine does not crank” on Bare van\nNothing that can be found out would make the rules say more.\n", result.out());
		assertHas(plan("van", "--against", "bare").out(), "Against bare: there is a plan now.");
	}
}
