package org.baywright.model;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * The kinds of problems of a text: what is wrong with a rule file itself, before anything is proved. The help page on
 * problems of the text has a section on each, found by its id.
 */
public enum ProblemKind {

	ACCEPTED_WITHOUT_REASON(Severity.ERROR, "a flaw is accepted without a reason"),
	AGREE_NUMBER(Severity.ERROR, "a sign-off asks for something else than a number of people"),
	AND_IN_OR(Severity.ERROR, "a condition can be read in two ways"),
	BELOW_NEEDS_NUMBER(Severity.ERROR, "a result that is no number cannot be below or above"),
	BUILDS_ON_CHANGED(Severity.WARNING, "what is built on has changed"),
	BUILDS_ON_ERRORS(Severity.ERROR, "what is built on has errors"),
	BUILDS_ON_ITSELF(Severity.ERROR, "a project builds on itself"),
	BUILDS_ON_MISSING(Severity.ERROR, "what is built on is not there"),
	BUILDS_ON_NOT_TAKEN(Severity.WARNING, "nobody has said what was taken over"),
	BUILDS_ON_UNREADABLE(Severity.ERROR, "what is built on cannot be read"),
	CHAIN_FAULT_TWICE(Severity.ERROR, "a fault lies at two places of a chain"),
	CHAIN_LIMITS_FALL(Severity.WARNING, "a point is right where the one before it is wrong"),
	CHAIN_RULE_TAKEN(Severity.ERROR, "a chain makes a rule that is there already"),
	CHAIN_SHORT(Severity.ERROR, "a chain has fewer than two points"),
	CHANGED_MEANWHILE(Severity.ERROR, "a file was saved by somebody else while it was laid out"),
	CLAUSE_TWICE(Severity.ERROR, "a part of an element is written twice"),
	CODE_FORM(Severity.ERROR, "a trouble code is not written as its standard asks"),
	CODE_RESERVED(Severity.WARNING, "a kind of failure that the standard reserves"),
	CODE_UNREAD(Severity.NOTE, "a condition asks whether a code is unread"),
	COMMA_FOR_OR(Severity.WARNING, "a comma where any of the states will do"),
	CYCLE_SHORT(Severity.ERROR, "a cycle goes nowhere"),
	CYCLE_TWICE(Severity.ERROR, "a family says twice what a cycle is"),
	CYCLE_UNLIKE(Severity.ERROR, "a cycle comes from two sides, in unlike ways"),
	DUPLICATE_NAME(Severity.ERROR, "two elements have the same name"),
	EMPTY_RULE(Severity.ERROR, "a rule that comes to no conclusion"),
	EMPTY_TEXT(Severity.ERROR, "there is nothing between the quotes"),
	EXPECT_WITHOUT_TEST(Severity.ERROR, "a rule expects a result but runs no test"),
	FAMILY_CIRCLE(Severity.ERROR, "a family builds on itself"),
	FAULT_TWICE(Severity.ERROR, "a fault is named twice"),
	FILE_PASSED_OVER(Severity.WARNING, "a pipe or a device stands among the rule files"),
	HIDDEN_CHARACTER(Severity.ERROR, "something stands in the text that does not show"),
	JOB_ON_BASE(Severity.ERROR, "a job on a family that no vehicle belongs to"),
	JOB_WITHOUT_END(Severity.ERROR, "a job that does not say what the cause was"),
	JOB_WITHOUT_FAMILY(Severity.ERROR, "a job that does not say what vehicle it was done on"),
	LAW_VERDICT(Severity.ERROR, "a law speaks of a verdict"),
	LIKE_OR_HAS(Severity.ERROR, "like and has are mixed up"),
	LIMIT_OFF_STEP(Severity.WARNING, "a limit lies between two steps of the test"),
	LIMIT_OUT_OF_RANGE(Severity.WARNING, "a limit lies outside of what the test can give"),
	LOST_LETTER(Severity.ERROR, "a program did not know a letter here"),
	MAKE_SAFE_HOW(Severity.ERROR, "nobody knows how it is made safe"),
	MET_WITHOUT_EXPECT(Severity.ERROR, "an outcome compares with an expected result that is not named"),
	MODULE_NOT_ON_VEHICLE(Severity.ERROR, "a job on a vehicle that does not have the module"),
	NAME_NEEDED(Severity.ERROR, "a value is needed that has a name"),
	NEGATIVE_DURATION(Severity.ERROR, "a time below zero"),
	NOTHING_BEYOND(Severity.ERROR, "no result lies on that side of the expected one"),
	NOT_FITTED(Severity.WARNING, "a module that no vehicle meant here has"),
	NOT_UTF8(Severity.ERROR, "a file is not written in UTF-8"),
	NO_PROVENANCE(Severity.WARNING, "a rule does not say where its knowledge comes from"),
	NUMBER_NEEDED(Severity.ERROR, "a number is needed"),
	NUMBER_TOO_LONG(Severity.ERROR, "a number has more digits than can be meant"),
	OTHERWISE_TAKES_EXPECTED(Severity.ERROR, "otherwise also takes the expected result"),
	OUTCOME_TWICE(Severity.ERROR, "one result leads to two outcomes of the same kind"),
	OUTCOME_WITHOUT_TEST(Severity.ERROR, "an outcome in a rule that runs no test"),
	PICTURE_MISSING(Severity.ERROR, "a picture is not there"),
	PICTURE_OUTSIDE(Severity.ERROR, "a picture does not lie in the project"),
	PICTURE_TOO_LARGE(Severity.ERROR, "a picture is larger than it needs to be"),
	PICTURE_TYPE(Severity.ERROR, "a file that cannot be shown as a picture"),
	POINT_TWICE(Severity.ERROR, "a test is twice in a chain"),
	RANGE_REVERSED(Severity.ERROR, "a range ends before it begins"),
	READING_OFF_STEP(Severity.WARNING, "a reading lies between two steps of the test"),
	READING_OUT_OF_RANGE(Severity.ERROR, "a reading lies outside of what the test can give"),
	READING_TWICE(Severity.ERROR, "a finding is given twice"),
	REPAIR_FIXES_NOTHING(Severity.ERROR, "a repair does not say which fault it puts right"),
	SEEN_WITH_EFFORT(Severity.ERROR, "a test that is seen with another says itself how it is done"),
	SEEN_WITH_SEEN(Severity.ERROR, "a test is seen with one that is not done by itself"),
	SIGN_OFF_TWICE(Severity.ERROR, "a project has two sign-offs"),
	STATES_DISAGREE(Severity.WARNING, "a rule and its test are for different states of the vehicle"),
	STATUS_BYTE(Severity.ERROR, "a status that is no byte"),
	STEP_ZERO(Severity.ERROR, "a step of 0 tells no two values apart"),
	SYNTAX(Severity.ERROR, "a word does not fit where it stands"),
	SYSTEM_TWICE(Severity.WARNING, "a system is named twice"),
	TEST_BOTH(Severity.ERROR, "a test with a measured value and named results"),
	TEST_NEITHER(Severity.ERROR, "a test that does not say what it can give"),
	TEXT_TOO_LONG(Severity.ERROR, "a text is longer than anybody reads"),
	THEN_WITH_TEST(Severity.ERROR, "a conclusion that belongs to no result of the test"),
	TOO_DEEP(Severity.ERROR, "brackets are nested deeper than anybody can read"),
	TOO_MANY_STEPS(Severity.ERROR, "a range has too many steps"),
	TOOL_TWICE(Severity.WARNING, "a tool is named twice"),
	TRAIT_MISSING(Severity.WARNING, "a family lacks a trait that tells its vehicles apart here"),
	TRAIT_NOT_IN_FAMILY(Severity.ERROR, "a family does not have this trait"),
	TRAIT_UNLIKE(Severity.ERROR, "a trait comes from two sides, with unlike values"),
	TRIED_CODE(Severity.ERROR, "a code cannot be tried"),
	TRIED_MISSING(Severity.WARNING, "what comes and goes is tried once only"),
	UNIT_MISMATCH(Severity.ERROR, "a unit measures something else"),
	UNIT_MISSING(Severity.ERROR, "a number has no unit"),
	UNKNOWN_NAME(Severity.ERROR, "a name that is defined nowhere, or is something else"),
	UNKNOWN_UNIT(Severity.ERROR, "a unit that is not known"),
	UNKNOWN_VALUE(Severity.ERROR, "a value that its element does not have"),
	UNREADABLE_FILE(Severity.ERROR, "a file cannot be read"),
	UNREADABLE_FOLDER(Severity.ERROR, "a folder cannot be read"),
	VALUE_TWICE(Severity.ERROR, "a value is listed twice"),
	VIN_CHECK_DIGIT(Severity.ERROR, "the ninth character of a VIN does not fit the others"),
	VIN_FORM(Severity.ERROR, "a VIN is not written as its standard asks"),
	VIN_NOT_OF_FAMILY(Severity.WARNING, "a VIN does not begin like those of the family"),
	VIN_OF_SYSTEM(Severity.ERROR, "a system has no numbers"),
	WHERE_NOT_TRAIT(Severity.ERROR, "`where` names something else than a trait"),
	WHOLE_NUMBER_NEEDED(Severity.ERROR, "a trait counts in whole numbers"),
	WORKSHOP_TWICE(Severity.ERROR, "a project has two workshops"),
	WRONG_DATE(Severity.ERROR, "a day that is not in the calendar"),
	WRONG_PREDICATE(Severity.ERROR, "a condition asks in a way that does not fit the finding"),
	WRONG_SUBJECT(Severity.ERROR, "a test disturbs something that cannot be found");

	private final Severity severity;
	private final String title;

	ProblemKind(Severity severity, String title) {
		this.severity = severity;
		this.title = title;
	}

	/** Returns the stable id by which reports, marks and help know the kind: lower case words with hyphens. */
	public String id() {
		return name().toLowerCase(Locale.ROOT).replace('_', '-');
	}

	/** Returns how much every problem of the kind matters. */
	public Severity severity() {
		return severity;
	}

	/** Returns what is wrong, in a few words that go on behind the id. */
	public String title() {
		return title;
	}

	/** Returns the kind with an id. */
	public static Optional<ProblemKind> of(String id) {
		return Arrays.stream(values()).filter(kind -> kind.id().equals(id)).findFirst();
	}
}
