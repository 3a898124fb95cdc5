package org.baywright.analysis.check;

import java.util.List;

import org.baywright.analysis.proof.Check;

/** All checks there are. */
public final class Checks {

	private static final List<Check> ALL = List.of(new Circle(), new ImpossibleVehicle(), new Contradiction(),
			new ExclusiveFaults(), new SuspectedAndCleared(), new TwoEnds(), new DeadRule(), new UnreachableConclusion(),
			new DuplicateRule(), new RedundantRule(), new Gap(), new BandGap(), new BandOverlap(), new UnusedResult(),
			new UnfoundFault(), new UnsplitFaults(), new BlindEvidence(), new ConfirmedWithoutTest(), new MissingRepair(),
			new UnverifiedRepair(), new VerifyWrongModule(), new VerifyWithoutCycle(), new VerifyWithoutOwnTest(),
			new ChangeUntold(), new VerifySilentModule(), new VerifyNotRepeated(), new VerifyExpectsFault(), new VerifyCannotFail(), new DearTest(),
			new HazardWithoutCaution(), new SkillBelowHazard(), new LicenceWithoutReference(), new TestWithoutPlace(),
			new DisturbedEvidence(), new CodeTwice(), new SharedVin(), new VinOfOtherFamily(), new FailingJob(), new JobCameBack(),
			new JobWithTwoEnds(), new ObjectionStands(), new SettledByAuthor(), new StaleReview(), new ReviewBeforeRule(),
			new UnknownQualification(), new AuthorAgrees(), new NotAgreed(), new HazardNotAgreed(), new Undecided(), new StaleAcceptance());

	private Checks() {
	}

	/** Returns the checks in the order in which they report; the last ones look at what the others found. */
	public static List<Check> all() {
		return ALL;
	}

	/** Returns the ids of all checks, sorted. */
	public static List<String> ids() {
		return ALL.stream().map(check -> check.about().id()).sorted().toList();
	}

	/** Returns whether a check finds breaches of the sign-off where a project has one. */
	public static boolean isOfSignOff(String id) {
		return ALL.stream().anyMatch(check -> check.about().id().equals(id) && check.about().signOff());
	}

	/** Returns the one instance of a check. */
	static <C extends Check> C get(Class<C> type) {
		return ALL.stream().filter(type::isInstance).map(type::cast).findFirst().orElseThrow();
	}
}
