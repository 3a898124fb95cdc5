package org.baywright.pack.manifest;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

import org.baywright.model.Severity;

/**
 * What a pack is, without its rules.
 *
 * @param version version of the pack's format
 * @param project name of the rule project
 * @param tool version of Baywright that made it
 * @param fingerprint SHA-256 of {@code rules.json}, 64 hexadecimal digits: two packs with the same one hold the same
 *            rules
 * @param entries the other entries by name
 * @param counts how many elements of each kind the pack holds
 * @param checks ids of the checks that were made, sorted
 * @param flaws what the checks found and what stands, by place
 * @param problems what the language remarked, by place; never an error
 * @param builtOn what the project builds on, by path; all of it is in the pack too
 * @param signOff what the project asks for before its rules count as agreed, if it does
 * @param reviewed what peers said of rules and chains, in the order of these; without those of which nobody said anything
 * @param cases finished jobs that the rules bring to their known end
 */
public record PackManifest(FormatVersion version, String project, String tool, String fingerprint,
		SortedMap<String, Entry> entries, SortedMap<String, Integer> counts, List<String> checks, List<Standing> flaws,
		List<Remark> problems, List<BuiltOn> builtOn, Optional<SignOff> signOff, List<Reviewed> reviewed, int cases) {

	public PackManifest {
		entries = Collections.unmodifiableSortedMap(new TreeMap<>(entries));
		counts = Collections.unmodifiableSortedMap(new TreeMap<>(counts));
		checks = List.copyOf(checks);
		flaws = List.copyOf(flaws);
		problems = List.copyOf(problems);
		builtOn = List.copyOf(builtOn);
		reviewed = List.copyOf(reviewed);
	}

	/** Size in bytes and SHA-256 of an entry. */
	public record Entry(int bytes, String sha256) {
	}

	/**
	 * Another project or rule pack, as it was when the pack was made.
	 *
	 * @param path where it lay, as a way from the folder of the project
	 * @param project its name
	 * @param meaning fingerprint of what it said
	 */
	public record BuiltOn(String path, String project, String meaning) {
	}

	/**
	 * What a project asks for before its rules count as agreed.
	 *
	 * @param agree how many must agree with each rule and chain as it stands; 0 for no such demand
	 * @param withoutAuthor whether the author of a rule does not count
	 * @param hazards who must agree with rules that touch a hazard
	 * @param met whether nothing breaches it; where something does, the pack is a draft
	 */
	public record SignOff(int agree, boolean withoutAuthor, List<OfHazard> hazards, boolean met) {

		public SignOff {
			hazards = List.copyOf(hazards);
		}
	}

	/** Rules that touch a hazard need one who agrees and has a qualification. */
	public record OfHazard(String hazard, String qualification) {
	}

	/**
	 * What peers said of a rule or a chain.
	 *
	 * @param rule its name
	 * @param meaning fingerprint of what it means in this pack
	 * @param opinions all that was said, also of earlier meanings
	 */
	public record Reviewed(String rule, String meaning, List<Opinion> opinions) {

		public Reviewed {
			opinions = List.copyOf(opinions);
		}
	}

	/**
	 * A peer's opinion.
	 *
	 * @param reviewer who
	 * @param date when
	 * @param agrees whether the peer agrees or objects
	 * @param meaning fingerprint of what was read
	 * @param stands whether an agreement counts for the rule as it is in this pack, or an objection to that is open
	 */
	public record Opinion(String reviewer, LocalDate date, boolean agrees, String meaning, boolean stands) {
	}

	/**
	 * A flaw that stands.
	 *
	 * @param id stable id of the flaw
	 * @param check id of the check that found it
	 * @param severity how much it matters
	 * @param at where, as {@code file:line}; empty if it stands nowhere
	 * @param message one plain sentence
	 * @param story what shows it, one sentence each
	 * @param meaning fingerprint of the meaning it was found on
	 * @param accepted why it may stand, if the author said so
	 */
	public record Standing(String id, String check, Severity severity, Optional<String> at, String message,
			List<String> story, String meaning, Optional<Accepted> accepted) {

		public Standing {
			story = List.copyOf(story);
		}

		/** Returns whether it is a warning that nobody has accepted. */
		public boolean isOpen() {
			return severity == Severity.WARNING && accepted.isEmpty();
		}
	}

	/** The author's word that a flaw may stand. */
	public record Accepted(String reason, Optional<String> author, Optional<LocalDate> date) {
	}

	/**
	 * A remark of the language.
	 *
	 * @param id stable id of the kind of problem
	 * @param severity how much it matters
	 * @param at where, as {@code file:line}; empty if it stands nowhere
	 * @param message what is wrong
	 * @param advice what to do, or the empty text
	 */
	public record Remark(String id, Severity severity, Optional<String> at, String message, String advice) {
	}

	/** Returns whether the pack was written although the sign-off is not met. */
	public boolean isDraft() {
		return signOff.filter(asked -> !asked.met()).isPresent();
	}

	/** Returns the warnings that nobody has accepted. */
	public List<Standing> openFlaws() {
		return flaws.stream().filter(Standing::isOpen).toList();
	}

	/** Returns the flaws that the author accepted. */
	public List<Standing> acceptedFlaws() {
		return flaws.stream().filter(flaw -> flaw.accepted().isPresent()).toList();
	}

	/** Returns how many elements of a kind there are, such as {@code rules}; 0 for an unknown kind. */
	public int count(String kind) {
		return counts.getOrDefault(kind, 0);
	}
}
