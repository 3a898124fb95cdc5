package org.baywright.language.vocabulary;

import static org.baywright.language.vocabulary.Clause.Times.GATHERED;
import static org.baywright.language.vocabulary.Clause.Times.MANY;
import static org.baywright.language.vocabulary.Clause.Times.ONCE;
import static org.baywright.language.vocabulary.Clause.Times.ONCE_LIST;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.vocabulary.Clause.Times;

/**
 * What stands beside the grammar: which elements there are, which clauses they have, and what each word means. Whoever
 * needs to know the words of the language reads this: layout, completion, folding, colours, help, the check for what is
 * given twice. A test holds it against the grammar, so nothing can be forgotten.
 */
public final class Vocabulary {

	private static final Map<String, Element> ELEMENTS = new LinkedHashMap<>();
	/** Those that stand in a file by themselves, by each word with which they can begin: asked for each word of a text. */
	private static final Map<String, Element> BEGINNING = new HashMap<>();
	private static final Map<String, String> HELP = new LinkedHashMap<>();
	private static final Set<String> CONCLUDING = Set.of("confirms", "suspects", "clears", "refers", "proves");
	private static final Set<String> VERDICTS = Set.of("confirms", "suspects", "clears", "refers", "proves", "nothing",
			"confirmed", "suspected", "cleared", "unexplained");
	/** Words within an element or a clause before which the author may begin a new line. */
	private static final Map<String, Set<String>> BREAKS = Map.ofEntries(Map.entry("Law", Set.of("then")),
			Map.entry("Rule", Set.of("except", "where")), Map.entry("Reach", Set.of("except", "where")), Map.entry("Sign", Set.of("for")),
			Map.entry("Chain", Set.of("where")), Map.entry("Code", Set.of("runs")), Map.entry("Module", Set.of("takes")),
			Map.entry("Precaution", Set.of("do_not_drive", "do_not_start", "make_safe")), Map.entry("Review", Set.of("by", "meaning")),
			Map.entry("Remark", Set.of("by", "meaning")), Map.entry("Reviewer", Set.of("qualified")),
			Map.entry("Acceptance", Set.of("because", "by")), Map.entry("BuildsOn", Set.of("meaning")));

	static {
		vehicle();
		found();
		rules();
		work();
		jobs();
	}

	private Vocabulary() {
	}

	private static void vehicle() {
		element("Family", "family", "A kind of vehicle, told apart by traits.")
				.part("Trait", "trait", "Tells vehicles of a family apart: named values, or whole numbers in a range.")
				.part("VinPattern", "vin", "How identification numbers begin (ISO 3779); `?` stands for any character.")
				.part("Cycle", "cycle", "What cycling a state means, so that modules test themselves again: its values and the waits between them.");
		BEGINNING.put("base", ELEMENTS.get("Family"));
		BEGINNING.put("system", ELEMENTS.get("Family"));
		word("base", "A base family is only there to be built on; no vehicle belongs to it.");
		word("like", "The family also has the traits of the one that it is like, and rules for that one reach it.");
		word("system", "What unlike families are fitted with; what is written for it reaches all that have it.");
		word("has", "The systems that the family is fitted with.");
		word("check_digit", "The market asks for a check digit in position 9 (49 CFR 565).");
		element("State", "state", "What the vehicle must be put into.");
		element("Tool", "tool", "A tool, with its cost in the project's own money.");
		element("Workshop", "workshop", "What the shop that works by the rules has, and what its work costs. A project has one.")
				.clause("hour", ONCE, "What an hour of work costs, in the project's own money.").draft("hour <60>")
				.part("Scan", "scan", "What reading modules takes: `each` of those that say nothing themselves, or `all` at once.")
				.draft("scan each takes <5> min")
				.clause("lacks", ONCE_LIST, "The tools that are not at hand.").clause("skill", ONCE);
		word("each", "`scan each` says what reading one module takes of which nobody says it.");
		word("all", "`scan all` says what reading at once all modules that answer takes.");
		element("Hazard", "hazard", "A danger: what protects from it, who may work on it, and where that is written.")
				.text("caution", "The hazards that it warns of; within a hazard, what protects from it.")
				.text("licensed", "Whose work it is, where that takes a licence.")
				.text("reference", "Where it is written, with the edition.");
		element("Module", "module", "A control unit that can be asked over the network.");
		word("answers", "The module was asked and answered. `answers in` names the states in which it must answer.");
		word("silent", "The module was asked and did not answer. Its codes are then unread.");
		element("Code", "code", "A trouble code, kept by one module.");
		word("dtc", "Five characters in the form of SAE J2012 and ISO 15031-6; the failure type stands after `sub`.");
		word("sub", "The failure type of a code: the two digits after its dash (ISO 15031-6).");
		word("j1939", "A code in the form of SAE J1939-73, with `spn` and `fmi`.");
		word("spn", "The suspect parameter number (SAE J1939-73).");
		word("fmi", "The failure mode identifier (SAE J1939-73).");
		word("runs", "What the module needs so that it tests for the code: a state, a drive, a wait.");
		word("raw", "A maker's own form of a code; it is never changed.");
	}

	private static void found() {
		element("Sign", "sign", "What the customer or the technician notices. It is present or absent once somebody has looked.");
		word("do_not_drive", "As long as the sign is there the vehicle must not be driven; why stands behind.");
		word("do_not_start", "As long as the sign is there the vehicle must not be started; why stands behind.");
		word("make_safe", "What must be done before anything else while the sign is there.");
		word("intermittent", "The sign comes and goes; that it is absent on the day proves nothing.");
		element("Part", "part", "A part of the vehicle and what can be wrong with it.")
				.part("Picture", "picture", "A photo or a drawing: a PNG or JPEG file of the project, and what it shows in words.")
				.draft("picture \"<file>\" \"<what it shows>\"")
				.part("Fault", "fault", "What can be wrong with a part. It is named with its part, such as `battery.flat`.");
		word("hazards", "What is dangerous about the part.");
		word("seen", "In how many jobs the fault was the cause.");
		element("Exclusive", "exclusive", "Faults of which only one can be the cause.");
		element("Test", "test", "Measures a quantity in steps, or has named results.")
				.clause("measures", ONCE, "The unit, the lowest and the highest value, and the step that the instrument can show.")
				.clause("results", ONCE_LIST, "The named results of a test.")
				.part("Reach", "for", "The vehicles: families and all that are like them, or `every family`.").times(ONCE)
				.clause("seen_with", ONCE, "The test while which it is seen, at no further effort; that one says how it is done.")
				.clause("at", ONCE, "The part that the test works on; in a remark, the line of the rule that it speaks of, as it was written then.")
				.text("place", "Where on the vehicle it is, in words.").times(ONCE)
				.part("Picture", "picture").draft("picture \"<file>\" \"<what it shows>\"").clause("needs", MANY, "The tools that it takes.")
				.clause("in", MANY, "The state that the vehicle is put into, such as `in ignition on`.")
				.text("prepare", "What to do before the test.")
				.part("Preparation", "wait", "Leaves the vehicle alone for a time, such as `wait 1 h`.", "drive",
						"Drives, at a speed and for a time: `drive above 20 km/h for 1 min`.", "do",
						"Does what the text says, such as `do \"Charge to full.\"`.")
				.clause("takes", ONCE, "How long it takes, such as `8 min`.").draft("takes <5> min")
				.clause("cost", ONCE, "The price, in the project's own money.")
				.clause("skill", ONCE, "Who may do it: `basic`, `trained` or `licensed`.")
				.text("fits", "A substitute part or a dummy load that is fitted for the test.")
				.clause("disturbs", MANY, "What cannot be trusted after the test.").clause("caution", MANY);
		word("step", "What the instrument can show; a limit is a whole number of steps.");
		word("over", "What the instrument shows above its range, as a result: `over open_line \"open line\"`.");
		word("under", "What the instrument shows below its range, as a result.");
		word("basic", "Anybody in the workshop may do it.");
		word("trained", "Who does it must have been taught how.");
		word("present", "Somebody has looked, and it is there.");
		word("absent", "Somebody has looked, and it is not there.");
		word("active", "The module finds the fault of the code right now (ISO 14229-1 status bit 0; SAE J1939-73: active).");
		word("stored", "The code is confirmed, but its fault is not found right now (ISO 14229-1 status bit 3; SAE J1939-73: previously active).");
		word("pending", "The fault was found and is not confirmed yet (ISO 14229-1 status bit 2).");
		word("untested", "The module has not tested for the code since its codes were cleared (ISO 14229-1 status bit 4).");
		word("status", "The status byte of a code, two digits as the tool shows them: `status 2F` (ISO 14229-1).");
		word("missing", "The code is absent, untested or unread.");
		word("unread", "The module is silent, so nobody knows whether it holds the code.");
		word("unexplained", "The sign is present, and no fault is confirmed that other rules for this sign can confirm.");
		word("confirmed", "Other rules have proved the fault.");
		word("suspected", "Other rules suspect the fault.");
		word("cleared", "Other rules have cleared the fault.");
		word("is", "The result is this value, or lies in this band.");
		word("any", "`is any of (…)` names several values or bands.");
		word("of", "`is any of (…)` names several values or bands.");
		word("not", "The opposite, and somebody has found that it is so.");
		word("and", "Both must hold; a comma says the same.");
		word("or", "At least one of them must hold.");
		word("below", "Less than the limit; also written `<`.");
		word("at_most", "The limit or less; also written `<=`.");
		word("above", "More than the limit; also written `>`.");
		word("at_least", "The limit or more; also written `>=`.");
	}

	private static void rules() {
		element("Law", "law", "What physics or wiring makes impossible. It holds in every situation.");
		word("when", "What must hold for the law to ask for something.");
		word("never", "What cannot be together.");
		element("Rule", "rule", "Names the vehicles, what is given, the test to run, and what follows from its result.")
				.clause("for", GATHERED)
				.clause("given", MANY, "What must hold. A condition on a finding holds only when somebody has made it and it is so.")
				.clause("in", MANY).clause("run", ONCE, "The test to run.")
				.clause("expect", ONCE_LIST, "The expected result; the outcomes are then met, below, above and otherwise.")
				.part("Outcome", "on", "A result and what it proves. In a job, the family of the vehicle.", "met",
						"The result is as expected.", "below", "above", "otherwise", "Every result that no other outcome names.",
						"then", "What follows, in a rule without a test.")
				.clause("because", GATHERED, "The reason, in a sentence or two.").draft("because \"<why>\"")
				.clause("source", ONCE, "Where the knowledge comes from: `published` with a title, `practice`, `jobs` or `memory`.")
				.draft("source <practice>").clause("by", ONCE, "Who wrote it, and when: `by \"…\" on 2026-03-02`.");
		element("Chain", "chain", "Check points in the order in which something flows: the first wrong one names the fault.")
				.clause("for", GATHERED).clause("given", MANY)
				.part("Point", "point", "A test on the way, what it must give, and the faults that lie between the point before and this one.")
				.clause("beyond", GATHERED, "The faults that are suspected when the last point is right.").clause("because", GATHERED)
				.draft("because \"<why>\"").clause("source", ONCE).draft("source <practice>").clause("by", ONCE);
		word("every", "`every family` means all vehicles.");
		word("except", "Families that are left out.");
		word("where", "Looks at the traits of the vehicle.");
		word("published", "A published work says it; its title stands behind.");
		word("practice", "What the trade commonly does.");
		word("memory", "Somebody remembers it and has still to look it up.");
		word("jobs", "Finished jobs of the project say it.");
		word("confirms", "The fault is proved.");
		word("suspects", "The fault may be the cause; something has still to prove it.");
		word("clears", "The fault is not the cause. Name exactly the faults that the result clears.");
		word("refers", "The job goes to somebody else: to whom, and with what.");
		word("proves", "`proves nothing` says that the result was not forgotten.");
		word("nothing", "`proves nothing` says that the result was not forgotten.");
	}

	private static void work() {
		element("Repair", "repair", "What puts faults right, and how it is verified.")
				.clause("fixes", GATHERED, "The faults that it puts right.").part("Reach", "for").times(ONCE).text("place").times(ONCE)
				.part("Picture", "picture").draft("picture \"<file>\" \"<what it shows>\"")
				.text("steps", "What to do, one text for each step.")
				.clause("caution", MANY).clause("needs", MANY).clause("takes", ONCE).clause("cost", ONCE)
				.clause("skill", ONCE).text("tell_customer", "What the customer must know or accept.")
				.clause("tell", MANY, "Who is told what, and why: the customer, the insurer, the maker or an authority.")
				.draft("tell <customer> \"<what they must know>\" because \"<why>\"").text("changes_for_good", "What is not as before after the repair.")
				.part("VerifyBlock", "verify", "How anybody knows that the repair worked; its steps are walked in order.")
				.times(GATHERED).draft("verify { repeat what confirmed }");
		block("VerifyBlock", "verify").part("VerifyStep", "clear", "Clears the codes of a module, if it answers.", "cycle", "set",
				"Puts the vehicle into a state, such as `set ignition on`.", "read", "Reads the codes of a module.", "expect", "wait",
				"drive", "do", "repeat", "Does a test again; `repeat what confirmed` stands for that of the confirming rule.");
		word("customer", "Who owns or drives the vehicle.");
		word("insurer", "Who insures the vehicle or the work.");
		word("maker", "Who made the vehicle or the part.");
		word("authority", "Who must be told by law.");
		word("tried", "How many times it was tried: `expect no_crank absent tried 10 times`.");
		word("times", "How many times it was tried: `expect no_crank absent tried 10 times`.");
		word("what", "`repeat what confirmed` does the test again that confirmed the fault.");
	}

	private static void jobs() {
		element("Case", "job", "A finished job with a known end. It is tried on the rules at every check.")
				.clause("on", ONCE).clause("vin", ONCE)
				.clause("found", GATHERED, "What was found out on the job. What is not told was not found out.")
				.clause("was", GATHERED, "What was the cause, or `referred`.")
				.clause("took", ONCE, "How long the job took, such as `2 h`.").clause("spent", ONCE, "What the job cost, in the project's own money.")
				.clause("afterwards", GATHERED, "What was found after the repair.")
				.clause("came_back", ONCE, "After how long the vehicle came back with the same complaint.").draft("came_back after <7> d");
		word("after", "`came_back after 7 d` says when the vehicle came back.");
		word("with", "The traits of the vehicle.");
		word("referred", "The job went to somebody else.");
		element("SignOff", "sign_off", "What the project asks for before its rules count as agreed. A project has one.")
				.clause("agree", ONCE, "How many must agree with each rule and each chain as it stands.").draft("agree <2>")
				.clause("not_by", ONCE, "Whose agreement does not count.").draft("not_by author")
				.part("HazardAgreed", "hazard").draft("hazard <hazard> by \"<qualification>\"");
		word("author", "Who wrote the rule.");
		element("Reviewer", "reviewer", "A person who reviews rules, and what the person is qualified for.");
		word("qualified", "What a reviewer is qualified for, in your own words; the sign-off asks for it in the same words.");
		element("Review", "review", "A colleague's opinion of a rule, tied to what the rule means.")
				.part("Reply", "reply", "An answer.", "settled", "The objection or the remark is settled; an objection stands no longer.")
				.draft("reply by \"<who>\" on <2026-03-02> \"<answer>\"");
		element("Remark", "remark", "A colleague's remark on a rule, on a line of it, or on a whole change. It blocks nothing.")
				.clause("at", ONCE).draft("at \"<line>\"").part("Reply", "reply", "settled").draft("reply by \"<who>\" on <2026-03-02> \"<answer>\"");
		word("change", "A change of the rules, in words: `remark on change \"Limit raised\"`.");
		word("agrees", "The colleague would work by the rule.");
		word("objects", "The colleague would not work by the rule; the note says why.");
		word("meaning", "What a rule meant when it was read, or another project when it was taken over; the check says when that has changed.");
		element("Acceptance", "accept", "Lets a warning stand, with a reason. The key is told by the check.");
		element("BuildsOn", "builds_on", "Another project, or a rule pack, whose names and rules hold here too; it is only read.");
	}

	/** Returns the elements of a file in their usual order, and behind them the blocks within elements. */
	public static List<Element> elements() {
		return List.copyOf(ELEMENTS.values());
	}

	/** Returns the element, or the block within one, that a rule of the grammar describes. */
	public static Optional<Element> of(String rule) {
		return Optional.ofNullable(ELEMENTS.get(rule));
	}

	/** Returns whether what a rule of the grammar describes stands between the braces of an element, like a clause. */
	public static boolean isPart(String owner, String rule) {
		return of(owner).stream().flatMap(element -> element.clauses().stream()).anyMatch(clause -> clause.part().equals(rule));
	}

	/** Returns whether a word begins an element of a file. */
	public static boolean beginsElement(String word) {
		return BEGINNING.containsKey(word);
	}

	/** Returns whether a word begins an element that usually stands on one line, as it has no braces, or only where somebody has answered. */
	public static boolean beginsLine(String word) {
		Element element = BEGINNING.get(word);
		return element != null && (element.isLine() || element.indexOf("reply") >= 0);
	}

	/** Returns whether the author may begin a new line before a word within an element or a clause. */
	public static boolean mayBreakBefore(String rule, String word) {
		return BREAKS.getOrDefault(rule, Set.of()).contains(word);
	}

	/** Returns whether a word begins a conclusion. */
	public static boolean concludes(String word) {
		return CONCLUDING.contains(word);
	}

	/** Returns whether a word says what is proved of a fault. */
	public static boolean isVerdict(String word) {
		return VERDICTS.contains(word);
	}

	/** Returns what a word of the language means, in Markdown. */
	public static Optional<String> help(String word) {
		return Optional.ofNullable(HELP.get(word));
	}

	/** Returns the words that are explained. */
	public static Set<String> words() {
		return HELP.keySet();
	}

	private static Clauses element(String rule, String word, String help) {
		word(word, help);
		Clauses clauses = block(rule, word);
		BEGINNING.put(word, ELEMENTS.get(rule));
		return clauses;
	}

	private static Clauses block(String rule, String word) {
		Clauses clauses = new Clauses();
		ELEMENTS.put(rule, new Element(rule, word, java.util.Collections.unmodifiableList(clauses.all)));
		return clauses;
	}

	private static void word(String word, String help) {
		if (HELP.put(word, help) != null) {
			throw new IllegalStateException("`" + word + "` is explained twice");
		}
	}

	/** The clauses of an element as they are written above: a word, its help where it first occurs, what is special. */
	private static final class Clauses {
		private final List<Clause> all = new ArrayList<>();

		Clauses clause(String word, Times times) {
			all.add(new Clause(List.of(word), "", times, word + " "));
			return this;
		}

		Clauses clause(String word, Times times, String help) {
			word(word, help);
			return clause(word, times);
		}

		/** A clause with a text in quotes. */
		Clauses text(String word, String help) {
			return clause(word, MANY, help).draft(word + " \"<>\"");
		}

		/** A clause with a text in quotes that is explained elsewhere. */
		Clauses text(String word) {
			return clause(word, MANY).draft(word + " \"<>\"");
		}

		/** A clause with a rule of its own: words with which it can begin, each with its help if that stands here. */
		Clauses part(String rule, String... wordsAndHelp) {
			List<String> words = new ArrayList<>();
			for (String text : wordsAndHelp) {
				if (text.indexOf(' ') < 0) {
					words.add(text);
				} else {
					word(words.get(words.size() - 1), text);
				}
			}
			all.add(new Clause(List.copyOf(words), rule, MANY, words.get(0) + " "));
			return this;
		}

		Clauses draft(String draft) {
			Clause last = all.remove(all.size() - 1);
			all.add(new Clause(last.words(), last.part(), last.times(), draft));
			return this;
		}

		Clauses times(Times times) {
			Clause last = all.remove(all.size() - 1);
			all.add(new Clause(last.words(), last.part(), times, last.draft()));
			return this;
		}
	}
}
