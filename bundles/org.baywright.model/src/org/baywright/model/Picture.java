package org.baywright.model;

import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A photo or a drawing that shows something.
 *
 * @param file its path relative to the project, with forward slashes; see {@link PictureFile}
 * @param words what it shows, in words
 * @param span where it is written
 */
public record Picture(String file, String words, Span span) {

	/** Returns all pictures of a rule base, in its order. */
	public static List<Picture> of(RuleBase base) {
		return Stream.of(base.parts().stream().map(Part::pictures), base.tests().stream().map(Test::pictures), base.repairs().stream().map(Repair::pictures))
				.flatMap(pictures -> pictures).flatMap(List::stream).toList();
	}

	/** Returns the rules without some pictures; the same rules if there are none of these. */
	public static RuleBase without(RuleBase base, Predicate<Picture> which) {
		if (of(base).stream().noneMatch(which)) {
			return base;
		}
		RuleBase.Builder builder = new RuleBase.Builder(base.name()).add(base);
		UnaryOperator<List<Picture>> kept = pictures -> pictures.stream().filter(which.negate()).toList();
		builder.parts.replaceAll(part -> new Part(part.name(), part.title(), part.place(), kept.apply(part.pictures()), part.hazards(), part.faults(), part.span()));
		builder.tests.replaceAll(test -> new Test(test.name(), test.title(), test.scope(), test.domain(), test.seenWith(), test.part(), test.place(), kept.apply(test.pictures()),
				test.tools(), test.states(), test.prepare(), test.takes(), test.cost(), test.skill(), test.fits(), test.disturbs(), test.cautions(), test.span()));
		builder.repairs.replaceAll(repair -> new Repair(repair.name(), repair.title(), repair.scope(), repair.fixes(), repair.place(),
				kept.apply(repair.pictures()), repair.steps(), repair.cautions(), repair.tools(), repair.takes(), repair.cost(), repair.skill(), repair.notices(),
				repair.changesForGood(), repair.verified(), repair.verify(), repair.span()));
		return builder.build();
	}

	/** Returns the files of all pictures of a rule base, each once. */
	public static SortedSet<String> files(RuleBase base) {
		return of(base).stream().map(Picture::file).collect(Collectors.toCollection(TreeSet::new));
	}
}
