package org.baywright.analysis.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Fix;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Place;
import org.baywright.analysis.Report;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Situation;
import org.baywright.analysis.check.StaleAcceptance;
import org.baywright.model.BuiltOn;
import org.baywright.model.Family;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;

/**
 * Tells what is found in rules apart from what is found in those that they build on. The latter are checked by themselves:
 * what is found there too is told there; what comes of both together is told at a place of the rules that build on them.
 */
final class Beneath {

	private static final String STALE_ACCEPTANCE = StaleAcceptance.class.getAnnotation(RuleCheck.class).id();

	private final Supplier<Analysis> analyses;
	private Map<String, Known> known = new HashMap<>();

	/** What was found in other rules by themselves. */
	private record Known(RuleBase rules, Analysis analysis, Set<String> found) {
	}

	/** @param analyses makes an analysis for other rules */
	Beneath(Supplier<Analysis> analyses) {
		this.analyses = analyses;
	}

	/**
	 * Returns the flaws to tell, sorted by place.
	 *
	 * @param all all that was found in the rules with what they build on
	 * @param listener can stop it
	 */
	List<Flaw> toldHere(RuleBase base, List<Flaw> all, Listener listener) {
		if (base.builtOn().isEmpty()) {
			known = new HashMap<>();
			return all;
		}
		Set<String> there = checkThere(base, listener);
		List<Flaw> told = new ArrayList<>();
		for (Flaw flaw : all) {
			boolean isTold = !flaw.span().isElsewhere()
					// what was accepted there holds there; here there may be nothing left to accept
					|| !flaw.check().equals(STALE_ACCEPTANCE) && !there.contains(flaw.acceptanceKey());
			if (isTold) {
				told.add(here(base, flaw));
			}
		}
		told.sort(null);
		return told;
	}

	private Set<String> checkThere(RuleBase base, Listener listener) {
		Map<String, Known> now = new HashMap<>();
		Set<String> found = new HashSet<>();
		for (BuiltOn other : base.builtOn()) {
			Known before = known.get(other.path());
			if (before == null || before.rules() != other.rules()) {
				Analysis analysis = before == null ? analyses.get() : before.analysis();
				Report report = analysis.check(other.rules(), new Listener() {
					@Override
					public boolean isCancelled() {
						return listener.isCancelled();
					}
				});
				before = new Known(other.rules(), analysis, report.all().stream().map(Flaw::acceptanceKey).collect(Collectors.toSet()));
			}
			now.put(other.path(), before);
			found.addAll(before.found());
		}
		known = now;
		return found;
	}

	/** Returns a flaw at a place that its reader can change, with the fixes that change no other project. */
	private static Flaw here(RuleBase base, Flaw flaw) {
		List<Fix> fixes = flaw.fixes().stream().filter(fix -> isHere(base, fix)).toList();
		if (!flaw.span().isElsewhere()) {
			return with(flaw, flaw.span(), flaw.related(), fixes);
		}
		Span span = places(flaw).filter(place -> !place.isElsewhere()).findFirst().or(() -> family(base, flaw))
				.orElseGet(() -> builtOn(base, flaw.span()));
		List<Place> related = new ArrayList<>(flaw.related());
		related.removeIf(place -> place.span().equals(span));
		related.add(0, new Place(flaw.span(), "in what is built on"));
		return with(flaw, span, related, fixes);
	}

	private static Flaw with(Flaw flaw, Span span, List<Place> related, List<Fix> fixes) {
		return new Flaw(flaw.id(), flaw.check(), flaw.severity(), span, flaw.message(), related, flaw.evidence(),
				flaw.story(), flaw.meaning(), fixes, flaw.accepted(), flaw.breach());
	}

	private static Stream<Span> places(Flaw flaw) {
		Stream<Place> lines = flaw.evidence() instanceof Evidence.Core core ? core.lines().stream() : Stream.empty();
		return Stream.concat(flaw.related().stream(), lines).map(Place::span);
	}

	/** Returns the family of the vehicle that shows a flaw, if it stands here. */
	private static Optional<Span> family(RuleBase base, Flaw flaw) {
		Optional<Situation> shown = flaw.evidence() instanceof Evidence.Witness witness ? Optional.of(witness.situation())
				: flaw.evidence() instanceof Evidence.Region region ? Optional.of(region.situation()) : Optional.empty();
		return shown.flatMap(situation -> base.family(situation.family())).map(Family::span).filter(span -> !span.isElsewhere());
	}

	private static Span builtOn(RuleBase base, Span span) {
		return base.builtOn().stream().filter(other -> span.file().equals(other.path()) || span.file().startsWith(other.path() + "/"))
				.findFirst().orElse(base.builtOn().get(0)).span();
	}

	/** Whether a fix changes the texts of this project only. */
	private static boolean isHere(RuleBase base, Fix fix) {
		if (fix instanceof Fix.RemoveRule remove) {
			return isHere(base.rule(remove.rule()).map(rule -> rule.span()));
		}
		if (fix instanceof Fix.AddLine add) {
			return isHere(switch (add.kind()) {
			case "hazard" -> base.hazard(add.name()).map(found -> found.span());
			case "test" -> base.test(add.name()).map(found -> found.span());
			case "part" -> base.part(add.name()).map(found -> found.span());
			default -> base.repair(add.name()).map(found -> found.span());
			});
		}
		return fix instanceof Fix.AddElement || fix instanceof Fix.Withdraw withdraw && !withdraw.at().isElsewhere()
				|| fix instanceof Fix.ReplaceText replace && !replace.within().isElsewhere()
				|| fix instanceof Fix.RemoveText remove && !remove.span().isElsewhere()
				|| fix instanceof Fix.RewriteText rewrite && !rewrite.span().isElsewhere();
	}

	private static boolean isHere(Optional<Span> span) {
		return span.filter(place -> !place.isElsewhere()).isPresent();
	}
}
