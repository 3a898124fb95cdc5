package org.baywright.presenter.flaws;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Fix;
import org.baywright.analysis.Place;
import org.baywright.analysis.check.HelpPages;
import org.baywright.model.Acceptance;
import org.baywright.model.Problem;
import org.baywright.model.Span;
import org.baywright.presenter.Link;

/** Makes what is shown of flaws and problems. */
final class Items {

	private Items() {
	}

	static Item of(Problem problem) {
		return new Item(problem.id() + "@" + problem.span() + "/" + problem.message(), problem.id(), problem.id(), problem.severity(),
				problem.message(), Link.to(problem.span(), ""), problem.advice(), Optional.empty(), List.of(),
				Optional.empty(), List.of(), HelpPages.page(problem.id()).isPresent());
	}

	static Item of(Flaw flaw) {
		return new Item(flaw.acceptanceKey(), flaw.id(), flaw.check(), flaw.severity(), flaw.message(),
				Link.to(flaw.span(), ""), "", evidence(flaw), flaw.related().stream().map(Items::link).toList(),
				flaw.accepted().map(Items::reason), flaw.fixes().stream().map(Fix::title).toList(),
				HelpPages.page(flaw.check()).isPresent());
	}

	private static Link link(Place place) {
		return Link.to(place.span(), place.note());
	}

	private static Optional<Item.Shown> evidence(Flaw flaw) {
		if (flaw.evidence() instanceof Evidence.Core core) {
			String title = core.lines().size() == 1 ? "This line alone makes it so:"
					: "These lines together make it so; without any one of them it would not be:";
			return shown(title, core.lines().stream().map(Items::link).toList());
		} else if (flaw.evidence() instanceof Evidence.Region) {
			return shown("Whenever all of this is so, whatever else:", story(flaw));
		} else if (flaw.evidence() instanceof Evidence.Witness) {
			return shown("For example:", story(flaw));
		} else if (flaw.evidence() instanceof Evidence.Undecided) {
			return shown("Nobody knows:", story(flaw));
		}
		return Optional.empty();
	}

	private static List<Link> story(Flaw flaw) {
		List<Link> lines = new ArrayList<>();
		flaw.story().forEach(sentence -> lines.add(new Link(sentence, Span.NONE)));
		return lines;
	}

	private static Optional<Item.Shown> shown(String title, List<Link> lines) {
		return lines.isEmpty() ? Optional.empty() : Optional.of(new Item.Shown(title, lines));
	}

	private static String reason(Acceptance acceptance) {
		return acceptance.reason() + acceptance.author().map(author -> " – " + author).orElse("")
				+ acceptance.date().map(date -> ", " + date).orElse("");
	}
}
