package org.baywright.language.ide.complete;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.baywright.language.ide.complete.Proposal.Kind;
import org.baywright.language.ide.text.Words;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.services.BayGrammarAccess;

/** Proposes what can be written at a place. */
public final class Completion {

	/** More than this nobody reads; typing on narrows the choice. */
	public static final int MOST = 400;

	private static final int SKELETON_RANK = 500;
	private static final Comparator<Ranked> ORDER = Comparator.comparingInt(Ranked::rank)
			.thenComparing(ranked -> ranked.proposal().label()).thenComparing(ranked -> ranked.proposal().text());

	private final BayGrammarAccess grammar;
	private final Clock clock;

	/**
	 * @param grammar the grammar
	 * @param clock tells the date of today
	 */
	public Completion(BayGrammarAccess grammar, Clock clock) {
		this.grammar = grammar;
		this.clock = clock;
	}

	/** A proposal and how far down it stands. */
	record Ranked(int rank, Proposal proposal) {
	}

	/**
	 * Returns what can be written, best first.
	 *
	 * @param index names of the project
	 * @param text the file
	 * @param offset the cursor
	 * @param pictures finds the pictures of the project, where one can be named
	 */
	public List<Proposal> at(ProjectIndex index, String text, int offset, Supplier<List<String>> pictures) {
		Site site = Site.at(index, text, offset);
		if (site.isMute()) {
			return List.of();
		}
		List<Ranked> found = new ArrayList<>();
		boolean between = site.element() < 0;
		if (!between) {
			Follow follow = new Follow(grammar.getElementRule());
			follow.read(site.before(), site.start());
			inside(site, follow, pictures, found);
			between = follow.isComplete() && site.isFirstInLine();
		}
		if (between) {
			skeletons(site, found);
		}
		Map<String, Proposal> byLabel = new LinkedHashMap<>();
		// what begins with the letters that are typed stands above what only holds them
		String typed = site.typed();
		Comparator<Ranked> order = Comparator.<Ranked, Boolean>comparing(one -> !one.proposal().label().toLowerCase(Locale.ROOT).startsWith(typed))
				.thenComparing(ORDER);
		found.stream().sorted(order).map(Ranked::proposal)
				.forEach(proposal -> byLabel.putIfAbsent(proposal.label() + '\n' + proposal.text(), proposal));
		return byLabel.values().stream().limit(MOST).toList();
	}

	private void inside(Site site, Follow follow, Supplier<List<String>> pictures, List<Ranked> found) {
		Set<Wanted> done = new LinkedHashSet<>();
		Names names = new Names(site);
		Lines lines = new Lines(site, follow, today());
		for (Map.Entry<Follow.Place, Trail> entry : follow.expected().entrySet()) {
			Wanted wanted = Wanted.of(entry.getKey());
			if (!done.add(wanted)) {
				continue;
			}
			Frame frame = entry.getKey().frame();
			Trail trail = entry.getValue();
			Amounts amounts = new Amounts(site, frame, trail);
			switch (wanted.sort()) {
			case WORD -> lines.word(wanted, frame, trail, found);
			case REFERENCE -> names.add(wanted, frame, trail, found);
			case UNIT -> amounts.units(wanted, found);
			case NUMBER -> amounts.numbers(wanted, found);
			case TEXT -> lines.text(wanted, pictures, found);
			case DATE -> lines.date(found);
			case NONE -> {
				// the author finds a new name, nobody else can
			}
			}
		}
	}

	private void skeletons(Site site, List<Ranked> found) {
		List<Skeleton> all = templates(site);
		for (int i = 0; i < all.size(); i++) {
			Skeleton skeleton = all.get(i);
			if (site.matches(skeleton.label(), "")) {
				Skeleton placed = skeleton.indented(Words.indent(site.text(), site.start()));
				found.add(new Ranked(SKELETON_RANK + i, new Proposal(placed.label(), placed.detail(), code(placed), Kind.SKELETON,
						site.start(), site.offset() - site.start(), placed.text(), placed.slots())));
			}
		}
	}

	private static String code(Skeleton skeleton) {
		return "```\n" + skeleton.text().strip() + "\n```";
	}

	private List<Skeleton> templates(Site site) {
		return Skeletons.all(site.textsAfter("by").stream().findFirst().map(text -> text.substring(1, text.length() - 1))
				.orElse("<author>"), today());
	}

	/** Returns skeletons of whole elements, the usual ones first. */
	public List<Skeleton> templates() {
		return Skeletons.all("<author>", today());
	}

	private LocalDate today() {
		return LocalDate.now(clock);
	}
}
