package org.baywright.language.ide.complete;

import java.time.LocalDate;
import java.util.List;

/** Whole elements to begin with. */
final class Skeletons {

	private Skeletons() {
	}

	/** Returns a skeleton for each kind of element, the usual ones first. */
	static List<Skeleton> all(String author, LocalDate today) {
		String provenance = "  because \"<why>\"\n  source practice\n  by \"" + author + "\" on " + today + "\n}\n";
		return List.of(
				Skeleton.of("rule", "A rule that runs a test",
						"rule <name> \"<title>\" {\n  for every family\n  given <sign>\n  run <test>\n  on <result> : confirms <part.fault>\n"
								+ provenance),
				Skeleton.of("rule with a band", "A rule with an expected value",
						"rule <name> \"<title>\" {\n  for every family\n  given <sign>\n  run <test>\n  expect <12.4 V> .. <13.0 V>\n"
								+ "  met       : clears <part.fault>\n  otherwise : confirms <part.fault>\n" + provenance),
				Skeleton.of("rule without a test", "A rule on signs and codes alone",
						"rule <name> \"<title>\" {\n  for every family\n  given <sign>\n  then suspects <part.fault>\n" + provenance),
				Skeleton.of("rule that refers", "Where the job goes when nothing explains the sign",
						"rule <name> \"<title>\" {\n  given <sign> unexplained\n  then refers \"<to whom>\"\n" + provenance),
				Skeleton.of("chain", "Check points along a line, the first wrong one names the fault",
						"chain <name> \"<title>\" {\n  for every family\n  given <what_is_wrong>\n"
								+ "  point <first_test> expect at_least <12 V> : <part.first>\n"
								+ "  point <second_test> expect at_least <11.5 V> : <part.second>\n  beyond <part.last>\n" + provenance),
				Skeleton.of("test", "A test that measures",
						"test <name> \"<title>\" {\n  measures <V> <0> .. <18> step <0.1>\n  needs <tool>\n  in <state> <value>\n"
								+ "  takes <5> min\n}\n"),
				Skeleton.of("test with results", "A test with named results",
						"test <name> \"<title>\" {\n  results <good>, <bad>\n  takes <5> min\n}\n"),
				Skeleton.of("sign", "What somebody notices", "sign <name> \"<title>\"\n"),
				Skeleton.of("part", "A part and its faults",
						"part <name> \"<title>\" {\n  fault <broken> \"<what is wrong>\" seen <0>\n}\n"),
				Skeleton.of("repair", "A repair and how it is verified",
						"repair <name> \"<title>\" {\n  fixes <part.fault>\n  steps \"<what to do>\"\n  takes <1> h\n"
								+ "  tell_customer \"<what they must know>\"\n  verify { repeat what confirmed }\n}\n"),
				Skeleton.of("job", "A finished job",
						"job \"<Job 1>\" {\n  on <family> with <trait> <value>\n  found <sign>\n  was <part.fault>\n}\n"),
				Skeleton.of("code", "A trouble code", "code <name> \"<title>\" on <module> = dtc <P0123>\n"),
				Skeleton.of("module", "A control unit", "module <name> \"<title>\" answers in <ignition> <on>\n"),
				Skeleton.of("family", "A family of vehicles",
						"family <name> \"<title>\" {\n  trait <engine> : <diesel>, <petrol>\n  vin \"<WZZ>\"\n}\n"),
				Skeleton.of("system", "What unlike families are fitted with", "system <name> \"<title>\" {\n  trait <generation> : <first>, <second>\n}\n"),
				Skeleton.of("state", "What the vehicle is put into", "state <name> : <off>, <on>\n"),
				Skeleton.of("tool", "A tool", "tool <name> \"<title>\" cost <0>\n"),
				Skeleton.of("workshop", "What the shop has and what its work costs",
						"workshop \"<title>\" {\n  hour <60>\n  scan each takes <5> min\n}\n"),
				Skeleton.of("hazard", "A danger and its cautions",
						"hazard <name> \"<title>\" {\n  caution   \"<what protects from it>\"\n  reference \"<where it is written>\"\n}\n"),
				Skeleton.of("exclusive", "Faults of which one is the cause", "exclusive <part.fault>, <part.other>\n"),
				Skeleton.of("law", "What cannot be otherwise", "law \"<title>\" : when <condition> then <condition that follows>\n"),
				Skeleton.of("law never", "What cannot be together", "law \"<title>\" : never <condition>\n"),
				Skeleton.of("review", "A colleague's opinion of a rule",
						"review <name> by \"" + author + "\" on " + today + " agrees \"<note>\" meaning \"00000000\"\n"),
				Skeleton.of("remark", "A colleague's remark on a rule",
						"remark on <name> by \"" + author + "\" on " + today + " \"<remark>\" meaning \"00000000\"\n"),
				Skeleton.of("remark on a change", "A colleague's remark on a whole change",
						"remark on change \"<what was changed>\" by \"" + author + "\" on " + today + " \"<remark>\"\n"),
				Skeleton.of("sign_off", "What the project asks for before its rules count as agreed", "sign_off {\n  agree <2>\n  not_by author\n}\n"),
				Skeleton.of("reviewer", "Who reviews rules and what for", "reviewer \"<name>\" qualified \"<what for>\"\n"),
				Skeleton.of("accept", "Let a warning stand, with a reason",
						"accept \"<key>\" because \"<why it may stand>\"\n  by \"" + author + "\" on " + today + "\n"),
				Skeleton.of("builds_on", "Another project whose rules hold here too", "builds_on \"<../other>\"\n"));
	}
}
