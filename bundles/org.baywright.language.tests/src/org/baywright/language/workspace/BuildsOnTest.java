package org.baywright.language.workspace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Fix;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.testing.MarkedText;
import org.baywright.model.Mend;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.PackContents;
import org.baywright.pack.PackReader;
import org.baywright.pack.PackWriter;
import org.baywright.pack.ToolVersion;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Projects that build on others: what they get from there, what is told where, and what cannot be built on. */
class BuildsOnTest {

	/** What a shop knows of a network that unlike vehicles have. */
	private static final String SHARED = """
			system net "Two-wire network"
			state ignition : off, on
			sign no_talk "Nothing answers the scan tool"
			part bus "Network wires" {
			  fault short_to_ground "Short to ground"
			  fault open_end "End resistor missing"
			}
			test bus_ohms "Resistance between the wires" { measures Ohm 0 .. 200 step 1 in ignition off takes 5 min }
			rule bus_short "Short" {
			  for net
			  given no_talk
			  run bus_ohms
			  on below 50 Ohm : confirms bus.short_to_ground
			  on 50 Ohm .. 70 Ohm : clears bus.short_to_ground, bus.open_end
			  on above 70 Ohm : confirms bus.open_end
			  because "Two ends of 120 Ohm in parallel."
			  source practice
			  by "R. Falk" on 2026-03-02
			}
			rule no_talk_goes_on "Somebody else goes on" {
			  given no_talk unexplained
			  then refers "a specialist"
			  because "Nothing else can be checked."
			  source practice
			  by "R. Falk" on 2026-03-02
			}
			repair mend_wires "Mend the wires" {
			  fixes bus.short_to_ground, bus.open_end
			  steps "Mend the wires."
			  takes 1 h
			  verify { repeat what confirmed }
			}
			""";

	private static final String VAN = "family tarn \"Tarn T3 van\" has net\n";

	@TempDir
	Path shop;

	@BeforeEach
	void realFolder() throws IOException {
		shop = shop.toRealPath();
		write("shared/net.bay", SHARED);
	}

	private void write(String file, String text) throws IOException {
		Path path = shop.resolve(file);
		Files.createDirectories(path.getParent());
		Files.writeString(path, text);
	}

	private RuleProject open(String folder) throws IOException {
		return RuleProject.open(shop.resolve(folder));
	}

	/** The project {@code van} with a text, where what it says of what it builds on is taken over. */
	private RuleProject van(String text) throws IOException {
		write("van/van.bay", text);
		RuleProject project = open("van");
		takeOver(project);
		return project;
	}

	/** Does what is advised until nobody advises to take anything over. */
	private static void takeOver(RuleProject project) {
		for (int i = 0; i < 5; i++) {
			for (Problem problem : project.snapshot().problems()) {
				if (!problem.mends().isEmpty() && problem.mends().get(0) instanceof Mend.Write write && problem.id().startsWith("builds-on")) {
					Mend.Piece piece = write.pieces().get(0);
					String text = project.source(piece.span().file()).orElseThrow().text();
					project.update(piece.span().file(), text.substring(0, piece.span().offset()) + piece.text()
							+ text.substring(piece.span().offset() + piece.span().length()));
					break;
				}
			}
		}
	}

	private static Report check(RuleProject project) {
		return new Analysis().check(project.snapshot().rules(), Listener.NONE);
	}

	private static List<String> ids(RuleProject project) {
		return check(project).flaws().stream().map(Flaw::id).toList();
	}

	private static List<String> told(RuleProject project) {
		return project.snapshot().problems().stream().map(problem -> problem.id() + ": " + problem.message()).toList();
	}

	/** Returns the only problem. */
	private static Problem only(RuleProject project) {
		List<Problem> problems = project.snapshot().problems();
		assertEquals(1, problems.size(), () -> told(project).toString());
		return problems.get(0);
	}

	// ---- what is got from there ------------------------------------------------------------------------------------

	@Test
	void namesOfTheOtherProjectHoldHere() throws IOException {
		RuleProject project = van("builds_on \"../shared\"\n" + VAN + """
				rule crank "Slow" { for tarn given no_talk run bus_ohms expect 50 Ohm .. 70 Ohm met : proves nothing otherwise : suspects bus.open_end
				  because "x" source practice by "R. Falk" on 2026-03-02 }
				repair other "Other" { fixes bus.open_end steps "x" takes 1 min verify { repeat bus_ohms expect 50 Ohm .. 70 Ohm } }
				""");
		assertEquals(List.of(), told(project));
		assertEquals(List.of(), project.snapshot().dropped());
		assertEquals(List.of("bus_short", "no_talk_goes_on", "crank"), project.snapshot().rules().rules().stream().map(rule -> rule.name()).toList());
		assertEquals("../shared/net.bay", project.snapshot().rules().sign("no_talk").orElseThrow().span().file());
		assertEquals(List.of("van.bay"), project.files());
		assertEquals(List.of("../shared/net.bay", "van.bay"), project.allFiles());
		assertEquals(SHARED, project.snapshot().sources().get("../shared/net.bay"));
		assertEquals(List.of("van.bay"), List.copyOf(project.snapshot().ownSources().keySet()));
	}

	@Test
	void theOwnWorkshopHoldsElseThatOfTheFirstBuiltOn() throws IOException {
		write("left/l.bay", "builds_on \"../shared\"\nworkshop \"Left\" { hour 1 }\n");
		write("right/r.bay", "workshop \"Right\" { hour 2 }\n");
		RuleProject project = van("builds_on \"../shared\"\nbuilds_on \"../right\"\nbuilds_on \"../left\"\n" + VAN);
		assertEquals(List.of(), told(project));
		assertEquals("Right", project.snapshot().rules().workshop().orElseThrow().title());
		project.update("shop.bay", "workshop \"Own\" { }");
		assertEquals(List.of(), told(project));
		assertEquals("Own", project.snapshot().rules().workshop().orElseThrow().title());
		project.update("two.bay", "workshop \"Second\" { }");
		assertEquals(List.of("workshop-twice: There is already a workshop in shop.bay."), told(project));
		project.remove("two.bay");
		write("right/r.bay", "workshop \"Right\" { hour 3 }\n");
		assertTrue(project.lookBeneath());
		assertEquals(List.of("builds-on-changed"), project.snapshot().problems().stream().map(Problem::id).toList());
	}

	@Test
	void overOthersAndOverTwoWaysItIsReadOnce() throws IOException {
		write("left/l.bay", "builds_on \"../shared\"\nfamily left has net\n");
		write("right/r.bay", "builds_on \"../shared\"\nfamily right has net\n");
		RuleProject project = van("builds_on \"../left\"\nbuilds_on \"../right\"\nbuilds_on \"../left\"\n" + VAN);
		assertEquals(List.of(), told(project));
		assertEquals(List.of("../left/l.bay", "../right/r.bay", "../shared/net.bay", "van.bay"), project.allFiles());
		assertEquals(1, project.snapshot().rules().signs().size());
	}

	@Test
	void aFileThatIsOnlyReadStaysAsItIs() throws IOException {
		RuleProject project = van("builds_on \"../shared\"\n" + VAN);
		project.update("../shared/net.bay", "");
		project.remove("../shared/net.bay");
		project.reload("../shared/net.bay");
		assertEquals(SHARED, project.source("../shared/net.bay").orElseThrow().text());
		assertEquals(SHARED, Files.readString(shop.resolve("shared/net.bay")));
	}

	@Test
	void whatIsNotBuiltOnAnyMoreIsGone() throws IOException {
		RuleProject project = van("builds_on \"../shared\"\n" + VAN);
		project.update("van.bay", VAN);
		assertTrue(told(project).get(0).startsWith("unknown-name: There is no family `net`"), told(project)::toString);
		assertEquals(List.of("van.bay"), project.allFiles());
		assertTrue(project.snapshot().beneath().isEmpty());
	}

	// ---- what is told where ----------------------------------------------------------------------------------------

	@Test
	void whatConcernsOnlyTheOtherIsToldThere() throws IOException {
		write("shared/more.bay", "family bench_car \"Any car\" has net\nsign odd_lamp \"Odd lamp\"\n");
		assertTrue(ids(open("shared")).stream().anyMatch(id -> id.startsWith("gap:odd_lamp")), () -> "told there");
		RuleProject project = van("builds_on \"../shared\"\nfamily tarn \"Tarn T3 van\"\n");
		assertEquals(List.of(), check(project).flaws());
		assertTrue(check(project).all().stream().anyMatch(flaw -> flaw.id().startsWith("gap:odd_lamp")), "a pack carries it");
	}

	@Test
	void whatComesOfBothIsToldHere() throws IOException {
		RuleProject project = van("builds_on \"../shared\"\n" + VAN + """
				rule wrong "Wrong" { for tarn given no_talk run bus_ohms on below 50 Ohm : clears bus.short_to_ground on at_least 50 Ohm : proves nothing
				  because "x" source practice by "R. Falk" on 2026-03-02 }
				""");
		Flaw clash = check(project).flaws().stream().filter(flaw -> flaw.check().equals("contradiction")).findFirst().orElseThrow();
		assertEquals("van.bay", clash.span().file());
		assertEquals("../shared/net.bay", clash.related().get(0).span().file());
		assertTrue(clash.fixes().stream().allMatch(fix -> fix instanceof Fix.Withdraw withdraw && withdraw.rule().equals("wrong")), clash.fixes()::toString);
		assertEquals(List.of(), ids(open("shared")).stream().filter(id -> id.startsWith("contradiction")).toList());
	}

	/** What somebody accepted there need not be there any more once this project adds to it; here nobody could mend that. */
	@Test
	void anAcceptanceThatIsOnlyNeededThereIsLeftAlone() throws IOException {
		write("shared/more.bay", "sign odd_lamp \"Odd lamp\"\n");
		String key = check(open("shared")).flaws().stream().filter(flaw -> flaw.id().startsWith("gap:odd_lamp")).findFirst().orElseThrow().acceptanceKey();
		write("shared/more.bay", "sign odd_lamp \"Odd lamp\"\naccept \"" + key + "\" because \"It is new.\"\n");
		assertEquals(List.of(), check(open("shared")).flaws().stream().filter(flaw -> flaw.accepted().isEmpty() && flaw.id().contains("odd_lamp")).toList());
		RuleProject project = van("builds_on \"../shared\"\n" + VAN + "rule odd { given odd_lamp then refers \"x\" because \"x\" source practice by \"R. Falk\" on 2026-03-02 }\n");
		assertEquals(List.of(), ids(project));
	}

	/** Nothing here but the family: what it has shows the gap. */
	@Test
	void whatTheVehicleOfThisProjectShowsIsToldAtIt() throws IOException {
		write("shared/net.bay", SHARED.replace("on above 70 Ohm : confirms bus.open_end", "on above 70 Ohm : proves nothing").replace("then refers \"a specialist\"", "then suspects bus.open_end"));
		RuleProject project = van("builds_on \"../shared\"\n" + VAN);
		Flaw gap = check(project).flaws().stream().filter(flaw -> flaw.check().equals("gap")).findFirst().orElseThrow();
		assertEquals("van.bay", gap.span().file());
		assertTrue(project.source("van.bay").orElseThrow().text().startsWith("tarn", gap.span().offset()), gap::toString);
	}

	@Test
	void aNameThatIsDeclaredInBothIsToldWithBothFiles() throws IOException {
		write("van/zero.bay", "builds_on \"../shared\"\n" + VAN);
		RuleProject project = open("van");
		takeOver(project);
		MarkedText.check("""
				sign no_talk "Again"
				     ^^^^^^^ error duplicate-name: There is already a sign `no_talk` in ../shared/net.bay.
				""", project);
	}

	@Test
	void twoOthersThatDeclareTheSameAreToldWhereTheyAreNamed() throws IOException {
		write("second/s.bay", "sign no_talk \"Again\"\n");
		RuleProject project = van("builds_on \"../shared\"\nbuilds_on \"../second\"\n" + VAN);
		Problem problem = only(project);
		assertEquals("Together with what is declared here, ../shared/net.bay:3:6 is wrong: There is already a sign `no_talk` in ../second/s.bay.", problem.message());
		assertEquals(ProblemKind.DUPLICATE_NAME, problem.kind());
		assertEquals("van.bay", problem.span().file());
	}

	@Test
	void anErrorThereIsOneProblemHere() throws IOException {
		write("shared/net.bay", SHARED.replace("given no_talk\n", "given no_tlk\n").replace("fixes bus.short_to_ground", "fixes bus.short"));
		RuleProject project = van("");
		MarkedText.check("builds_on \"../shared\"\n          ^^^^^^^^^^^ error builds-on-errors: `../shared` has 2 errors in its text, the first in"
				+ " ../shared/net.bay:11:9: There is no sign, test, code, module or trait `no_tlk`. > Put it right there; what it declares is missing here until then.\n", project);
	}

	// ---- what cannot be built on -----------------------------------------------------------------------------------

	@Test
	void whatIsNotThere() throws IOException {
		write("shared/readme.txt", "");
		write("no_rules/readme.txt", "");
		for (String path : List.of("../shraed", "../shared/readme.txt", "../shared/net.bay", "../no_rules", "sub", "../" + "x".repeat(300))) {
			Problem problem = only(van("builds_on \"" + path + "\"\n"));
			assertTrue(problem.kind() == ProblemKind.BUILDS_ON_MISSING || path.length() > 100 && problem.kind() == ProblemKind.BUILDS_ON_UNREADABLE, problem::toString);
			assertTrue(problem.message().contains(path), problem::message);
		}
		MarkedText.check("""
				builds_on "../shraed"
				          ^^^^^^^^^^^ error builds-on-missing: There is no folder and no rule pack `../shraed`. > Write the way from this project's folder, with forward slashes: a project's folder such as "../other", or a rule pack such as "../other.baypack".
				""", RuleProject.unread(shop.resolve("van")));
	}

	/** What a name would mean that the missing project may declare, nobody knows. */
	@Test
	void whatIsNotThereIsTheOnlyProblem() throws IOException {
		assertEquals(ProblemKind.BUILDS_ON_MISSING, only(van("builds_on \"../shraed\"\n" + VAN)).kind());
	}

	@Test
	void aWayThatHoldsOnThisMachineOnly() throws IOException {
		for (String path : List.of(shop.resolve("shared").toString(), "..\\\\shared", "C:/shared", "https://example.org/shared", "file:../shared", "", " ")) {
			Problem problem = only(van("builds_on \"" + path + "\"\n"));
			assertEquals(ProblemKind.BUILDS_ON_MISSING, problem.kind());
			assertFalse(problem.advice().isEmpty());
		}
	}

	@Test
	void itself() throws IOException {
		write("van/sub/s.bay", "sign s\n");
		for (String path : List.of(".", "..", "../..", "../van", "sub", "../../" + shop.getFileName() + "/van/")) {
			RuleProject project = van("builds_on \"" + path + "\"\n");
			assertEquals(ProblemKind.BUILDS_ON_ITSELF, only(project).kind(), path);
		}
		MarkedText.check("""
				builds_on "."
				          ^^^ error builds-on-itself: `.` is this project itself. > Take it out, or move what both need to a project of its own.
				""", RuleProject.unread(shop.resolve("van")));
	}

	@Test
	void circles() throws IOException {
		write("b/b.bay", "builds_on \"../c\"\nsign b\n");
		write("c/c.bay", "builds_on \"../van\"\nsign c\n");
		RuleProject project = van("builds_on \"../b\"\nsign a\n");
		assertEquals("`../b` builds on this project in turn: van \u2192 b \u2192 c \u2192 van.", only(project).message());
		assertEquals(List.of("c", "b", "a"), project.snapshot().rules().signs().stream().map(sign -> sign.name()).sorted(java.util.Comparator.reverseOrder()).toList());
		// a circle of others is told there, and here as an error there
		write("c/c.bay", "builds_on \"../b\"\nsign c\n");
		project = open("van");
		assertEquals(ProblemKind.BUILDS_ON_ERRORS, only(project).kind());
		assertTrue(only(project).message().contains("builds on this project in turn"), only(project)::message);
		for (String folder : List.of("b", "c")) {
			assertEquals(ProblemKind.BUILDS_ON_ITSELF, only(open(folder)).kind());
		}
	}

	@Test
	void aDeepRowOfProjects() throws IOException {
		for (int i = 0; i < 40; i++) {
			write("p" + i + "/p.bay", (i < 39 ? "builds_on \"../p" + (i + 1) + "\"\nbuilds_on \"../p" + Math.min(39, i + 2) + "\"\n" : "") + "sign s" + i + "\n");
		}
		RuleProject project = van("builds_on \"../p0\"\n");
		assertEquals(List.of(), told(project).stream().filter(text -> !text.startsWith("builds-on-not-taken")).toList());
		assertEquals(40, project.snapshot().rules().signs().size());
	}

	@Test
	void aRowThatIsTooDeep() throws IOException {
		for (int i = 0; i < 200; i++) {
			write("p" + i + "/p.bay", "builds_on \"../p" + (i + 1) + "\"\nsign s" + i + "\n");
		}
		RuleProject project = van("builds_on \"../p0\"\n");
		assertEquals(ProblemKind.BUILDS_ON_ERRORS, only(project).kind());
		assertTrue(only(project).message().contains("more than 50 projects in a row build on each other"), only(project)::message);
	}

	@Test
	void linksThatGoInCirclesAndPipes() throws IOException, InterruptedException {
		Files.createSymbolicLink(shop.resolve("round"), shop.resolve("about"));
		Files.createSymbolicLink(shop.resolve("about"), shop.resolve("round"));
		assertEquals(ProblemKind.BUILDS_ON_UNREADABLE, only(van("builds_on \"../round\"\n")).kind());
		Files.createSymbolicLink(shop.resolve("shared/loop"), shop.resolve("shared"));
		assertEquals(List.of(), told(van("builds_on \"../shared\"\n" + VAN)));
		assertEquals(0, new ProcessBuilder("mkfifo", shop.resolve("pipe.baypack").toString()).start().waitFor());
		assertEquals("`../pipe.baypack` is a pipe or a device, and is not read.", only(van("builds_on \"../pipe.baypack\"\n")).message());
		Files.createSymbolicLink(shop.resolve("other_name"), shop.resolve("shared"));
		assertEquals(List.of(), told(van("builds_on \"../shared\"\nbuilds_on \"../other_name\"\n" + VAN)));
	}

	@Test
	void aFolderOfEverything() throws IOException {
		Path all = Files.createDirectory(shop.resolve("all"));
		for (int i = 0; i < 20_100; i++) {
			Files.createFile(all.resolve("f" + i));
		}
		Problem problem = only(van("builds_on \"../all\"\n"));
		assertEquals("`../all` holds more than 20000 files and folders, which no project of rules does.", problem.message());
	}

	// ---- what was taken over ---------------------------------------------------------------------------------------

	@Test
	void whatWasNotTakenOverIsTold() throws IOException {
		write("van/van.bay", "");
		RuleProject project = open("van");
		MarkedText.check("""
				builds_on "../shared"
				          ^^^^^^^^^^^ warning builds-on-not-taken: Nobody has said yet that `../shared` was looked at as it is now, so no change there will be told.
				""", project);
		String advice = only(project).advice();
		project.update("zz_fixture.bay", "builds_on \"../shared\" " + advice.substring(advice.indexOf("meaning"), advice.length() - 1) + "\n");
		assertEquals(List.of(), told(project));
		takeOver(project);
		assertEquals(List.of(), told(project));
	}

	@Test
	void aChangeThereIsToldWithWhatHasChanged() throws IOException {
		RuleProject project = van("builds_on \"../shared\"\n" + VAN);
		assertTrue(project.source("van.bay").orElseThrow().text().contains("\n          \"repairs mend_wires "), project.source("van.bay").orElseThrow()::text);
		write("shared/net.bay", SHARED.replace("// ", "").replace("below 50 Ohm", "below 45 Ohm").replace("rule no_talk_goes_on", "rule goes_on")
				.replace("takes 5 min", "takes 6 min"));
		assertTrue(project.snapshot().isChangedBeneath());
		assertTrue(project.lookBeneath());
		Problem problem = only(project);
		assertEquals("`../shared` has changed since it was taken over: new rule `goes_on`; gone rule `no_talk_goes_on`; changed rule `bus_short`;"
				+ " changed test `bus_ohms`.", problem.message());
		assertEquals(ProblemKind.BUILDS_ON_CHANGED, problem.kind());
		takeOver(project);
		assertEquals(List.of(), told(project));
		write("shared/more.bay", "sign lamp \"Lamp\"\n");
		assertTrue(project.lookBeneath());
		assertEquals("`../shared` has changed since it was taken over: no rule, no test and no repair, but what they speak of.", only(project).message());
		assertFalse(project.lookBeneath());
	}

	@Test
	void aChangeIsToldAlsoWhereOnlyTheFingerprintWasWritten() throws IOException {
		write("van/van.bay", "");
		RuleProject project = open("van");
		MarkedText.check("""
				builds_on "../shared" meaning "00000000"
				          ^^^^^^^^^^^ warning builds-on-changed: `../shared` has changed since it was taken over; what it said then was not written down.
				""", project);
	}

	@Test
	void layoutProvenanceAndJobsAreNoChange() throws IOException {
		RuleProject project = van("builds_on \"../shared\"\n" + VAN);
		write("shared/net.bay", "// a remark\n" + SHARED.replace("  given", "      given").replace("R. Falk", "S. Berg").replace("50 Ohm : confirms", "0.05 kOhm : confirms")
				+ "review bus_short by \"A\" on 2026-03-02 agrees meaning \"00000000\"\n");
		assertTrue(project.lookBeneath());
		assertEquals(List.of(), told(project));
	}

	/** What it builds on has a sign-off of its own, which says nothing of the rules here; and the one here says nothing of those there. */
	@Test
	void aSignOffIsForTheOwnRules() throws IOException {
		write("shared/agreed.bay", "sign_off { agree 1 }\n");
		RuleProject project = van("builds_on \"../shared\"\n" + VAN);
		assertEquals(Optional.empty(), project.snapshot().rules().signOff());
		assertEquals(List.of(), check(project).breaches());
		project.update("own.bay", "sign_off { agree 2 }\nrule own { given bus_silent then refers \"x\" source practice because \"x\" by \"A\" on 2026-01-01 }\nsign bus_silent\n"
				+ "review own by \"B\" on 2026-01-02 agrees meaning \"00000000\"\n");
		assertEquals(List.of(), project.snapshot().problems().stream().filter(problem -> problem.id().equals("sign-off-twice")).toList());
		assertEquals(2, project.snapshot().rules().signOff().orElseThrow().agree());
		assertTrue(check(project).breaches().stream().anyMatch(flaw -> flaw.id().equals("not-agreed:own")));
		assertTrue(check(project).breaches().stream().noneMatch(flaw -> flaw.span().isElsewhere()), () -> check(project).breaches().toString());
	}

	@Test
	void whatComesBackIsFoundAgain() throws IOException {
		RuleProject project = van("builds_on \"../shared\"\n" + VAN);
		Files.move(shop.resolve("shared"), shop.resolve("moved"));
		assertTrue(project.lookBeneath());
		assertEquals(ProblemKind.BUILDS_ON_MISSING, only(project).kind());
		Files.move(shop.resolve("moved"), shop.resolve("shared"));
		assertTrue(project.snapshot().isChangedBeneath());
		assertTrue(project.lookBeneath());
		assertEquals(List.of(), told(project));
	}

	// ---- packs -----------------------------------------------------------------------------------------------------

	private void pack(String folder, String file) throws IOException, PackException {
		RuleProject project = open(folder);
		PackWriter.write(new PackContents(project.snapshot().rules(), check(project), project.snapshot().problems(), ToolVersion.CURRENT), shop.resolve(file));
	}

	@Test
	void aPackIsBuiltOnLikeAFolder() throws IOException, PackException {
		pack("shared", "shared.baypack");
		RuleProject folder = van("builds_on \"../shared\"\n" + VAN);
		String byFolder = folder.source("van.bay").orElseThrow().text();
		write("van/van.bay", byFolder.replace("../shared", "../shared.baypack"));
		RuleProject project = open("van");
		assertEquals(List.of(), told(project), "the fingerprint of a pack is that of what it was made of");
		assertEquals(ids(folder), ids(project));
		Span sign = project.snapshot().rules().sign("no_talk").orElseThrow().span();
		assertEquals("../shared.baypack", sign.file());
		assertTrue(project.source(sign.file()).orElseThrow().text().startsWith("no_talk", sign.offset()));
		write("shared/net.bay", SHARED.replace("below 50 Ohm", "below 45 Ohm"));
		pack("shared", "shared.baypack");
		assertTrue(project.lookBeneath());
		assertEquals("`../shared.baypack` has changed since it was taken over: changed rule `bus_short`.", only(project).message());
	}

	@Test
	void aPackMayLieInTheProject() throws IOException, PackException {
		Files.createDirectories(shop.resolve("van/packs"));
		pack("shared", "van/packs/shared.baypack");
		RuleProject project = van("builds_on \"packs/shared.baypack\"\n" + VAN);
		assertEquals(List.of(), told(project));
		assertEquals(List.of("van.bay"), project.files());
	}

	@Test
	void aPackOfAProjectThatBuildsOnAnotherNeedsNoOther() throws IOException, PackException {
		RuleProject van = van("builds_on \"../shared\"\n" + VAN);
		PackWriter.write(new PackContents(van.snapshot().rules(), check(van), van.snapshot().problems(), ToolVersion.CURRENT), shop.resolve("van.baypack"));
		assertEquals(2, PackReader.read(shop.resolve("van.baypack")).rules().rules().size());
		write("other/o.bay", "builds_on \"../van.baypack\"\nfamily heron \"Heron\" like tarn\n");
		RuleProject other = open("other");
		takeOver(other);
		assertEquals(List.of(), told(other));
	}

	/** They are looked at where they lie; a pack of this project leaves them out and still says all else. */
	@Test
	void picturesOfTheOtherStayThere() throws IOException, PackException {
		byte[] jpeg = { (byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xC0, 0, 8, 8, 0, 17, 0, 31, 1, (byte) 0xFF, (byte) 0xD9 };
		Files.write(shop.resolve("shared/wires.jpg"), jpeg);
		write("shared/more.bay", "part plug { picture \"wires.jpg\" \"Behind the dash\" fault loose }\n");
		RuleProject project = van("builds_on \"../shared\"\n" + VAN);
		assertEquals(List.of(), told(project));
		PackWriter.write(new PackContents(project.snapshot().rules(), check(project), project.snapshot().problems(), ToolVersion.CURRENT), shop.resolve("van.baypack"));
		assertEquals(List.of(), PackReader.read(shop.resolve("van.baypack")).rules().part("plug").orElseThrow().pictures());
		RuleProject shared = open("shared");
		PackWriter.write(new PackContents(shared.snapshot().rules(), check(shared), shared.snapshot().problems(), ToolVersion.CURRENT,
				new java.util.TreeMap<>(java.util.Map.of("wires.jpg", jpeg))), shop.resolve("shared.baypack"));
		write("van/van.bay", project.source("van.bay").orElseThrow().text().replace("../shared", "../shared.baypack"));
		assertEquals(List.of(), told(open("van")), "a pack with pictures is built on like its folder");
		Files.delete(shop.resolve("shared/wires.jpg"));
		write("van/van.bay", project.source("van.bay").orElseThrow().text());
		assertEquals(ProblemKind.BUILDS_ON_ERRORS, only(open("van")).kind());
	}

	@Test
	void aPackThatCannotBeRead() throws IOException, PackException {
		write("broken.baypack", "no pack");
		write("van/van.bay", "");
		Problem problem = only(van("builds_on \"../broken.baypack\"\n"));
		assertEquals(ProblemKind.BUILDS_ON_UNREADABLE, problem.kind());
		MarkedText.check("""
				builds_on "../broken.baypack"
				          ^^^^^^^^^^^^^^^^^^^ error builds-on-unreadable: The rule pack `../broken.baypack` cannot be read: The file is no rule pack.
				""".replace("The file is no rule pack.", problem.message().substring(problem.message().indexOf(": ") + 2)), RuleProject.unread(shop.resolve("van")));
	}

	/** Typing a path looks at nothing but what it names, and keeps nothing of what it named before. */
	@Test
	void aPathThatIsBeingTyped() throws IOException {
		RuleProject project = van("");
		String text = "builds_on \"../shared\"\n" + VAN;
		for (int i = 0; i <= text.length(); i++) {
			project.update("van.bay", text.substring(0, i));
			project.snapshot();
		}
		assertEquals(ProblemKind.BUILDS_ON_NOT_TAKEN, only(project).kind());
		assertEquals(List.of(shop.resolve("shared")), List.copyOf(project.snapshot().beneath().keySet()));
	}

	@Test
	void aProjectWithoutAFolderSaysSo() {
		RuleProject project = RuleProject.inMemory("none");
		project.update("a.bay", "builds_on \"../shared\"\n");
		assertEquals(ProblemKind.BUILDS_ON_MISSING, only(project).kind());
		assertThrows(IllegalStateException.class, () -> project.reload("a.bay"));
		assertEquals(Severity.ERROR, only(project).severity());
		assertEquals(List.of(), Stream.of(only(project)).filter(problem -> problem.advice().isEmpty()).toList());
	}

	@Test
	void manyEditsReadTheOtherProjectOnce() throws IOException {
		RuleProject project = van("builds_on \"../shared\"\n" + VAN);
		String text = project.source("van.bay").orElseThrow().text();
		project.snapshot();
		Object before = project.snapshot().rules().builtOn().get(0).rules();
		List<Object> seen = new ArrayList<>();
		for (int i = 0; i < 20; i++) {
			project.update("van.bay", text + "// " + i + "\n");
			seen.add(project.snapshot().rules().builtOn().get(0).rules());
		}
		assertTrue(seen.stream().allMatch(rules -> rules == before));
	}
}
