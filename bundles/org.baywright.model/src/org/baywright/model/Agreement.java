package org.baywright.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * How peers stand to a rule or a chain as it is now.
 *
 * @param name name of the rule or the chain
 * @param meaning fingerprint of what it means now
 * @param provenance who wrote it, and when
 * @param span where its name stands
 * @param reviews all reviews of it, also of earlier meanings
 * @param signOff what the project asks for, if it does and the rule is its own
 */
public record Agreement(String name, String meaning, Provenance provenance, Span span, List<Review> reviews, Optional<SignOff> signOff) {

	public Agreement {
		reviews = List.copyOf(reviews);
	}

	/** Returns how peers stand to each rule that stands in the text and each chain, in the order of the rules and then of the chains. */
	public static List<Agreement> all(RuleBase base) {
		List<Agreement> all = new ArrayList<>();
		base.rules().stream().filter(rule -> !base.isOfChain(rule.name()))
				.forEach(rule -> all.add(of(base, rule.name(), Meaning.fingerprint(rule), rule.provenance(), rule.span())));
		base.chains().forEach(chain -> all.add(of(base, chain.name(), Meaning.fingerprint(chain), chain.provenance(), chain.span())));
		return all;
	}

	/** Returns how peers stand to the rules and chains of the project itself, without those of what it builds on. */
	public static List<Agreement> own(RuleBase base) {
		return all(base).stream().filter(each -> !each.span.isElsewhere()).toList();
	}

	private static Agreement of(RuleBase base, String name, String meaning, Provenance provenance, Span span) {
		return new Agreement(name, meaning, provenance, span, base.reviewsOf(name), span.isElsewhere() ? Optional.empty() : base.signOff());
	}

	/** Returns whether a review is of what the rule means now. */
	public boolean isFresh(Review review) {
		return review.meaning().equals(meaning);
	}

	/** Returns whether somebody wrote the rule. */
	public boolean isAuthor(String person) {
		return provenance.author().filter(author -> Review.isSame(author, person)).isPresent();
	}

	/** Returns whether a review is dated before the rule. */
	public boolean isBefore(Review review) {
		return provenance.date().filter(review.date()::isBefore).isPresent();
	}

	/** Returns the agreements that count, one for each person: fresh, not before the rule, of no person who objects since, and as the sign-off asks. */
	public List<Review> agreed() {
		List<Review> agreed = new ArrayList<>();
		for (Review review : reviews) {
			boolean counts = review.agrees() && isFresh(review) && !isBefore(review) && !review.reviewer().isBlank()
					&& !(isAuthor(review.reviewer()) && signOff.filter(SignOff::withoutAuthor).isPresent())
					&& objections().stream().noneMatch(objection -> Review.isSame(objection.reviewer(), review.reviewer()));
			if (counts && agreed.stream().noneMatch(other -> Review.isSame(other.reviewer(), review.reviewer()))) {
				agreed.add(review);
			}
		}
		return agreed;
	}

	/** Returns the fresh objections that nobody has taken back or settled. */
	public List<Review> objections() {
		return reviews.stream().filter(review -> !review.agrees() && isFresh(review) && !isSettled(review)
				&& reviews.stream().noneMatch(other -> takesBack(other, review))).toList();
	}

	/** Returns whether the same reviewer has agreed with the same meaning that day or later. */
	private boolean takesBack(Review later, Review objection) {
		return later.agrees() && isFresh(later) && Review.isSame(later.reviewer(), objection.reviewer()) && !later.date().isBefore(objection.date());
	}

	/** Returns whether an objection is settled by somebody who may: the one who objected, or anybody but the author of the rule. */
	private boolean isSettled(Review objection) {
		return objection.replies().stream().anyMatch(reply -> reply.settles() && maySettle(objection, reply));
	}

	/** Returns whether the one who says that an objection is settled may say so. */
	public boolean maySettle(Review objection, Reply reply) {
		return !reply.author().isBlank() && (!isAuthor(reply.author()) || Review.isSame(reply.author(), objection.reviewer()));
	}

	/** Returns what a reviewer is qualified for, by all that the project says. */
	public static Set<String> qualifications(RuleBase base, String person) {
		Set<String> all = new TreeSet<>();
		base.reviewers().stream().filter(reviewer -> Review.isSame(reviewer.name(), person)).forEach(reviewer -> all.addAll(reviewer.qualifications()));
		return all;
	}
}
