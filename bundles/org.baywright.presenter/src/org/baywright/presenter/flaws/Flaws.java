package org.baywright.presenter.flaws;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.check.Kinds;
import org.baywright.model.ProblemKind;
import org.baywright.model.Severity;
import org.baywright.presenter.ProjectState;

/**
 * What the view of flaws shows.
 *
 * @param state what is known of the project
 * @param filter what is shown of it
 * @param headline how the rules stand, in one or two sentences
 * @param tone whether that is good
 * @param groups what the filter shows, the worst first
 * @param hidden how many flaws the filter hides
 */
public record Flaws(ProjectState state, Filter filter, String headline, Tone tone, List<Group> groups, int hidden) {

	private static final Comparator<Item> BY_PLACE = Comparator.comparing((Item item) -> item.place().span())
			.thenComparing(Item::severity).thenComparing(Item::id);
	private static final Comparator<Group> WORST_FIRST = Comparator.comparing(Group::severity)
			.thenComparing(group -> !group.kind().startsWith(Group.TEXT)).thenComparing(Group::kind);
	/** Kinds of problems of the text that say what is missing in it. */
	private static final Set<ProblemKind> MISSING = EnumSet.of(ProblemKind.ACCEPTED_WITHOUT_REASON, ProblemKind.EMPTY_RULE,
			ProblemKind.EMPTY_TEXT, ProblemKind.JOB_WITHOUT_END, ProblemKind.JOB_WITHOUT_FAMILY, ProblemKind.NO_PROVENANCE,
			ProblemKind.REPAIR_FIXES_NOTHING, ProblemKind.TEST_NEITHER);

	public Flaws {
		groups = List.copyOf(groups);
	}

	/** Returns what is shown of a project. */
	public static Flaws of(ProjectState state, Filter filter) {
		List<Item> all = items(state);
		List<Item> shown = all.stream().filter(filter::shows).sorted(BY_PLACE).toList();
		Headline headline = Headline.of(state);
		long filtered = all.stream().filter(item -> item.accepted().isEmpty() && !filter.shows(item)).count();
		String text = filtered == 0 ? headline.text()
				: "Filtered, " + shown.size() + " of " + (shown.size() + filtered) + " shown. " + headline.text();
		return new Flaws(state, filter, text, headline.tone(), groups(shown), all.size() - shown.size());
	}

	/** Returns the same project through another filter. */
	public Flaws with(Filter other) {
		return of(state, other);
	}

	/** Returns another state of the project through the same filter. */
	public Flaws with(ProjectState other) {
		return of(other, filter);
	}

	/** Returns the shown flaw with an id, so that a selection outlives a new check. */
	public Optional<Item> find(String id) {
		return groups.stream().flatMap(group -> group.items().stream()).filter(item -> item.id().equals(id)).findFirst();
	}

	/** Returns what to say in place of an empty list. */
	public String emptyText() {
		if (!groups.isEmpty()) {
			return "";
		} else if (hidden > 0) {
			return hidden == 1 ? "One flaw is not shown: it was accepted, or the filter hides it."
					: hidden + " flaws are not shown: they were accepted, or the filter hides them.";
		}
		return headline;
	}

	private static List<Item> items(ProjectState state) {
		List<Item> items = new ArrayList<>();
		state.problems().forEach(problem -> items.add(Items.of(problem)));
		state.report().ifPresent(report -> report.flaws().forEach(flaw -> items.add(Items.of(flaw))));
		return items;
	}

	private static List<Group> groups(List<Item> items) {
		Map<String, List<Item>> byKind = new LinkedHashMap<>();
		for (Item item : items) {
			String kind = Kinds.get(item.kind()).map(RuleCheck::id).orElseGet(() -> ofText(item));
			byKind.computeIfAbsent(kind, key -> new ArrayList<>()).add(item);
		}
		List<Group> groups = new ArrayList<>();
		byKind.forEach((kind, found) -> groups.add(new Group(kind, title(kind),
				found.stream().map(Item::severity).min(Comparator.naturalOrder()).orElse(Severity.NOTE), found)));
		groups.sort(WORST_FIRST);
		return groups;
	}

	private static String ofText(Item item) {
		return ProblemKind.of(item.kind()).filter(MISSING::contains).isPresent() ? Group.MISSING : item.severity() == Severity.ERROR ? Group.TEXT : Group.DOUBTFUL;
	}

	private static String title(String kind) {
		return switch (kind) {
		case Group.TEXT -> "The text itself is wrong or cannot be read";
		case Group.MISSING -> "Something is missing in the text";
		case Group.DOUBTFUL -> "Something in the text is worth a second look";
		default -> Kinds.get(kind).map(RuleCheck::summary).orElseThrow();
		};
	}
}
