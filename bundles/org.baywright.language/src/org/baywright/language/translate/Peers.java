package org.baywright.language.translate;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.bay.Acceptance;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.HazardAgreed;
import org.baywright.language.bay.Opinion;
import org.baywright.language.bay.Remark;
import org.baywright.language.bay.Reply;
import org.baywright.language.bay.Review;
import org.baywright.language.bay.Reviewer;
import org.baywright.language.bay.SignOff;
import org.baywright.language.index.Kind;
import org.baywright.model.ProblemKind;
import org.eclipse.emf.common.util.EList;

/** What peers say: the sign-off, reviewers, reviews, remarks and acceptances. */
final class Peers {

	/** More people than that are a typing error. */
	private static final int MOST_DIGITS = 3;

	private final Context context;
	private final Clauses clauses;

	Peers(Context context, Clauses clauses) {
		this.context = context;
		this.clauses = clauses;
	}

	/** Translates a sign-off; what is returned is right only if the report is not broken afterwards. */
	org.baywright.model.SignOff signOff(SignOff signOff) {
		List<org.baywright.model.SignOff.OfHazard> hazards = new ArrayList<>();
		for (HazardAgreed of : signOff.getHazards()) {
			Optional<String> hazard = context.resolveOne(of, BayPackage.Literals.HAZARD_AGREED__HAZARD, Kind.HAZARD);
			if (hazard.isPresent() && of.getQualification() != null) {
				hazards.add(new org.baywright.model.SignOff.OfHazard(hazard.get(), of.getQualification(), context.source.span(of)));
			}
		}
		return new org.baywright.model.SignOff(agree(signOff), !signOff.getNotBy().isEmpty(), hazards,
				context.source.span(Clauses.keyword(signOff, "sign_off")));
	}

	private int agree(SignOff signOff) {
		if (signOff.getAgree().isEmpty() || signOff.getAgree().get(0) == null) {
			return 0;
		}
		BigDecimal agree = signOff.getAgree().get(0).stripTrailingZeros();
		if (agree.signum() <= 0 || agree.scale() > 0 || agree.precision() - agree.scale() > MOST_DIGITS) {
			context.report.error(ProblemKind.AGREE_NUMBER, context.source.span(signOff, BayPackage.Literals.SIGN_OFF__AGREE, 0),
					agree.toPlainString() + " is no number of people who can agree.", "Write how many must agree, such as `agree 2`.");
			return 0;
		}
		return agree.intValueExact();
	}

	/** Translates a reviewer, or returns nothing if it is not whole. */
	Optional<org.baywright.model.Reviewer> reviewer(Reviewer reviewer) {
		return reviewer.getName() == null ? Optional.empty()
				: Optional.of(new org.baywright.model.Reviewer(reviewer.getName(), reviewer.getQualifications(), context.source.span(reviewer)));
	}

	/** Translates a review, or returns nothing if it is not whole. */
	Optional<org.baywright.model.Review> review(Review review) {
		Optional<String> rule = context.resolveOne(review, BayPackage.Literals.REVIEW__RULE, Kind.RULE);
		Optional<LocalDate> date = clauses.date(review.getDate());
		Optional<List<org.baywright.model.Reply>> replies = replies(review.getReplies());
		if (rule.isEmpty() || date.isEmpty() || review.getReviewer() == null || review.getMeaning() == null || replies.isEmpty()) {
			return Optional.empty();
		}
		return Optional.of(new org.baywright.model.Review(rule.get(), review.getReviewer(), date.get(),
				review.getOpinion() == Opinion.AGREES, text(review.getNote()), review.getMeaning(), replies.get(), context.source.span(review)));
	}

	/** Translates a remark, or returns nothing if it is not whole. */
	Optional<org.baywright.model.Remark> remark(Remark remark) {
		Optional<String> rule = remark.getChange() == null ? context.resolveOne(remark, BayPackage.Literals.REMARK__RULE, Kind.RULE) : Optional.empty();
		Optional<LocalDate> date = clauses.date(remark.getDate());
		Optional<List<org.baywright.model.Reply>> replies = replies(remark.getReplies());
		if (rule.isEmpty() && remark.getChange() == null || date.isEmpty() || remark.getAuthor() == null || remark.getNote() == null || replies.isEmpty()) {
			return Optional.empty();
		}
		return Optional.of(new org.baywright.model.Remark(rule, text(remark.getChange()), remark.getAuthor(), date.get(), remark.getNote(),
				text(remark.getMeaning()), remark.getLines().stream().findFirst(), replies.get(), context.source.span(remark)));
	}

	/** Returns the answers, or nothing if one of them is not whole. */
	private Optional<List<org.baywright.model.Reply>> replies(EList<Reply> replies) {
		List<org.baywright.model.Reply> all = new ArrayList<>();
		for (Reply reply : replies) {
			Optional<LocalDate> date = clauses.date(reply.getDate());
			if (date.isEmpty() || reply.getAuthor() == null) {
				return Optional.empty();
			}
			all.add(new org.baywright.model.Reply(reply.isSettles(), reply.getAuthor(), date.get(), text(reply.getNote()), context.source.span(reply)));
		}
		return Optional.of(all);
	}

	private static String text(String written) {
		return written == null ? "" : written;
	}

	/** Translates an acceptance, or returns nothing if it is not whole. */
	Optional<org.baywright.model.Acceptance> acceptance(Acceptance acceptance) {
		if (acceptance.getFlaw() == null || acceptance.getReason() == null) {
			return Optional.empty();
		}
		if (EmptyTexts.saysNothing(acceptance.getReason())) {
			context.report.error(ProblemKind.ACCEPTED_WITHOUT_REASON, context.source.span(acceptance), "Nothing is accepted without a reason.",
					"Write between the quotes why it may stand, for those who read the rules after you.");
			return Optional.empty();
		}
		return Optional.of(new org.baywright.model.Acceptance(acceptance.getFlaw(), acceptance.getReason(),
				Optional.ofNullable(acceptance.getAuthor()), clauses.date(acceptance.getDate()),
				context.source.span(acceptance)));
	}
}
