package org.baywright.presenter.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Finding;
import org.baywright.analysis.Fix;
import org.baywright.analysis.Place;
import org.baywright.analysis.check.HelpPages;
import org.baywright.model.Acceptance;
import org.baywright.model.Problem;
import org.baywright.model.Span;
import org.baywright.presenter.Link;

/** Makes what is shown of findings and problems. */
final class Items {

	private Items() {
	}

	static Item of(Problem problem) {
		return new Item(problem.id() + "@" + problem.span() + "/" + problem.message(), problem.id(), problem.id(), problem.severity(),
				problem.message(), Link.to(problem.span(), ""), problem.advice(), Optional.empty(), List.of(),
				Optional.empty(), List.of(), HelpPages.page(problem.id()).isPresent());
	}

	static Item of(Finding finding) {
		return new Item(finding.acceptanceKey(), finding.id(), finding.check(), finding.severity(), finding.message(),
				Link.to(finding.span(), ""), "", evidence(finding), finding.related().stream().map(Items::link).toList(),
				finding.accepted().map(Items::reason), finding.fixes().stream().map(Fix::title).toList(),
				HelpPages.page(finding.check()).isPresent());
	}

	private static Link link(Place place) {
		return Link.to(place.span(), place.note());
	}

	private static Optional<Item.Shown> evidence(Finding finding) {
		if (finding.evidence() instanceof Evidence.Core core) {
			String title = core.lines().size() == 1 ? "This line alone makes it so:"
					: "These lines together make it so; without any one of them it would not be:";
			return shown(title, core.lines().stream().map(Items::link).toList());
		} else if (finding.evidence() instanceof Evidence.Region) {
			return shown("Whenever all of this is so, whatever else:", story(finding));
		} else if (finding.evidence() instanceof Evidence.Witness) {
			return shown("For example:", story(finding));
		} else if (finding.evidence() instanceof Evidence.Undecided) {
			return shown("Nobody knows:", story(finding));
		}
		return Optional.empty();
	}

	private static List<Link> story(Finding finding) {
		List<Link> lines = new ArrayList<>();
		finding.story().forEach(sentence -> lines.add(new Link(sentence, Span.NONE)));
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
