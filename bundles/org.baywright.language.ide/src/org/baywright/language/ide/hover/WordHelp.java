package org.baywright.language.ide.hover;

import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** One line of the language reference for each word of the language. */
public final class WordHelp {

	private static final Map<String, String> LINES = Map.ofEntries(
			Map.entry("family", "A kind of vehicle, told apart by traits."),
			Map.entry("base", "A base family is only there to be built on; no vehicle belongs to it."),
			Map.entry("like", "The family also has the traits of the one that it is like, and rules for that one reach it."),
			Map.entry("trait", "Tells vehicles of a family apart: named values, or whole numbers in a range."),
			Map.entry("vin", "How identification numbers begin (ISO 3779); `?` stands for any character."),
			Map.entry("check_digit", "The market asks for a check digit in position 9 (49 CFR 565)."),
			Map.entry("state", "What the vehicle must be put into."),
			Map.entry("tool", "A tool, with its cost in the project's own money."),
			Map.entry("hazard", "A danger: what protects from it, who may work on it, and where that is written."),
			Map.entry("hazards", "What is dangerous about the part."),
			Map.entry("module", "A control unit that can be asked over the network."),
			Map.entry("answers", "The module was asked and answered. `answers in` names the states in which it must answer."),
			Map.entry("silent", "The module was asked and did not answer. Its codes are then unread."),
			Map.entry("code", "A trouble code, kept by one module."),
			Map.entry("dtc", "Five characters in the form of SAE J2012 and ISO 15031-6; the failure type stands after `sub`."),
			Map.entry("j1939", "A code in the form of SAE J1939-73, with `spn` and `fmi`."),
			Map.entry("raw", "A maker's own form of a code; it is never changed."),
			Map.entry("sign", "What the customer or the technician notices. It is present or absent once somebody has looked."),
			Map.entry("intermittent", "The sign comes and goes; that it is absent on the day proves nothing."),
			Map.entry("part", "A part of the vehicle and what can be wrong with it."),
			Map.entry("fault", "What can be wrong with a part. It is named with its part, such as `battery.flat`."),
			Map.entry("seen", "In how many jobs the fault was the cause."),
			Map.entry("exclusive", "Faults of which only one can be the cause."),
			Map.entry("test", "Measures a quantity in steps, or has named results."),
			Map.entry("measures", "The unit, the lowest and the highest value, and the step that the instrument can show."),
			Map.entry("results", "The named results of a test."), Map.entry("at", "The part that the test works on."),
			Map.entry("needs", "The tools that it takes."), Map.entry("prepare", "What to do before the test."),
			Map.entry("takes", "How long it takes, such as `8 min`."),
			Map.entry("cost", "The price, in the project's own money."),
			Map.entry("skill", "Who may do it: `basic`, `trained` or `licensed`."),
			Map.entry("fits", "A substitute part or a dummy load that is fitted for the test."),
			Map.entry("disturbs", "What cannot be trusted after the test."),
			Map.entry("caution", "The hazards that it warns of."),
			Map.entry("law", "What physics or wiring makes impossible. It holds in every situation."),
			Map.entry("never", "What cannot be together."),
			Map.entry("rule", "Names the vehicles, what is given, the test to run, and what follows from its result."),
			Map.entry("for", "The vehicles: families and all that are like them, or `every family`."),
			Map.entry("except", "Families that are left out."), Map.entry("where", "Looks at the traits of the vehicle."),
			Map.entry("given", "What must hold. A condition on a finding holds only when somebody has made it and it is so."),
			Map.entry("run", "The test to run."), Map.entry("expect", "The expected result; the outcomes are then met, below, above and otherwise."),
			Map.entry("met", "The result is as expected."), Map.entry("otherwise", "Every result that no other outcome names."),
			Map.entry("then", "What follows, in a rule without a test."),
			Map.entry("confirms", "The fault is proved."),
			Map.entry("suspects", "The fault may be the cause; something has still to prove it."),
			Map.entry("clears", "The fault is not the cause. Name exactly the faults that the result clears."),
			Map.entry("refers", "The job goes to somebody else: to whom, and with what."),
			Map.entry("proves", "`proves nothing` says that the result was not forgotten."),
			Map.entry("because", "The reason, in a sentence or two."),
			Map.entry("source", "Where the knowledge comes from: `published` with a title, `practice`, `jobs` or `memory`."),
			Map.entry("by", "Who wrote it, and when: `by \"…\" on 2026-03-02`."),
			Map.entry("present", "Somebody has looked, and it is there."),
			Map.entry("absent", "Somebody has looked, and it is not there."),
			Map.entry("missing", "The code is absent or unread."),
			Map.entry("unread", "The module is silent, so nobody knows whether it holds the code."),
			Map.entry("unexplained", "The sign is present, and no fault is confirmed that other rules for this sign can confirm."),
			Map.entry("confirmed", "Other rules have proved the fault."), Map.entry("suspected", "Other rules suspect the fault."),
			Map.entry("cleared", "Other rules have cleared the fault."),
			Map.entry("is", "The result is this value, or lies in this band."),
			Map.entry("below", "Less than the limit; also written `<`."), Map.entry("at_most", "The limit or less; also written `<=`."),
			Map.entry("above", "More than the limit; also written `>`."), Map.entry("at_least", "The limit or more; also written `>=`."),
			Map.entry("repair", "What puts faults right, and how it is verified."), Map.entry("fixes", "The faults that it puts right."),
			Map.entry("steps", "What to do, one text for each step."),
			Map.entry("tell_customer", "What the customer must know or accept."),
			Map.entry("changes_for_good", "What is not as before after the repair."),
			Map.entry("verify", "How anybody knows that the repair worked; its steps are walked in order."),
			Map.entry("clear", "Clears the codes of a module, if it answers."),
			Map.entry("cycle", "Lets a module test itself again, such as `cycle ignition`."),
			Map.entry("read", "Reads the codes of a module."), Map.entry("repeat", "Does a test again; `repeat what confirmed` stands for that of the confirming rule."),
			Map.entry("job", "A finished job with a known end. It is tried on the rules at every check."),
			Map.entry("found", "What was found out on the job. What is not told was not found out."),
			Map.entry("was", "What was the cause, or `referred`."),
			Map.entry("review", "A colleague's opinion of a rule, tied to what the rule means."),
			Map.entry("accept", "Lets a warning stand, with a reason. The key is told by the check."));

	private WordHelp() {
	}

	/** Returns what a word of the language means, in Markdown. */
	public static Optional<String> of(String word) {
		return Optional.ofNullable(LINES.get(word));
	}

	/** Returns the words that are explained. */
	public static Set<String> words() {
		return LINES.keySet();
	}
}
