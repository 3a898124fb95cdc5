package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.ide.complete.Completion;
import org.baywright.language.ide.complete.Proposal;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Symbol;
import org.baywright.language.vocabulary.Vocabulary;

/** Knows what fits at a place of a line, and what names there are called: it asks completion, as an author would. */
final class Fitting {

	/** What is waited or driven has no test that would say what its values are. */
	private static final Set<String> PREPARING = Set.of("wait", "drive");

	/** What is begun with a name and a title alone. */
	private static final Set<String> ADDED = Set.of("sign", "test", "part", "module", "tool", "hazard");

	private final Completion completion;

	Fitting(Completion completion) {
		this.completion = completion;
	}

	Bits.Knowing knowing(ProjectIndex index, Sheet sheet, String key, Piece piece) {
		// most options of a choice ask for the same
		Map<String, List<Proposal>> asked = new HashMap<>();
		return new Bits.Knowing() {
			@Override
			public String title(Shape.Value shape, String name, List<Integer> path) {
				if (shape.type() == BayPackage.Literals.NAMED_VALUE) {
					return choices(index, sheet, key, piece, path).stream().filter(one -> one.name().equals(name)).map(Change.Named::title).findFirst().orElse(name);
				}
				Kind kind = Kind.of(shape.type());
				List<Symbol> found = index.get(kind == null ? Key.subject(name) : Key.of(kind, name));
				String title = found.isEmpty() ? "" : titleOf(found.get(0));
				return title.isEmpty() ? name : title;
			}

			@Override
			public boolean fits(Shape option, List<Integer> path) {
				return Fitting.fits(option, more -> asked.computeIfAbsent(path + more, none -> proposals(index, sheet, key, piece, path, more)));
			}
		};
	}

	private static String titleOf(Symbol symbol) {
		var feature = symbol.element().eClass().getEStructuralFeature("title");
		return feature != null && symbol.element().eGet(feature) instanceof String title ? title : "";
	}

	/** Asks completion what could be written there; of words it says which fit what stands before. */
	private static boolean fits(Shape option, Function<String, List<Proposal>> proposals) {
		List<String> words = Bits.words(option);
		StringBuilder before = new StringBuilder();
		for (String word : words) {
			List<Proposal> here = proposals.apply(before.toString());
			boolean known = Vocabulary.help(word).isPresent() && here.stream().anyMatch(proposal -> proposal.kind() == Proposal.Kind.WORD);
			if (known && here.stream().noneMatch(proposal -> proposal.label().equals(word) || proposal.label().startsWith(word + " "))) {
				return false;
			}
			before.append(word).append(' ');
		}
		// what is chosen further on decides there whether it fits
		if (!words.isEmpty() && asksFurther(option, words.size())) {
			return true;
		}
		Shape.Value first = Bits.firstValue(option);
		boolean amount = first != null && first.sort() == Shape.Sort.AMOUNT;
		boolean value = first != null && first.type() == BayPackage.Literals.NAMED_VALUE;
		if (!amount && !value || !words.isEmpty() && PREPARING.contains(words.get(0))) {
			return true;
		}
		String inside = before + (before.toString().endsWith("any of ") ? "( " : "");
		return value == (isValue(proposals.apply("")) || isValue(proposals.apply(inside)));
	}

	/** Says whether a choice stands behind the words with which a shape begins. */
	private static boolean asksFurther(Shape option, int words) {
		if (!(option instanceof Shape.Row row) || words >= row.parts().size()) {
			return false;
		}
		Shape next = row.parts().get(words);
		return (next instanceof Shape.Many many ? many.item() : next) instanceof Shape.Choice;
	}

	private static boolean isValue(List<Proposal> proposals) {
		return proposals.stream().anyMatch(proposal -> proposal.kind() == Proposal.Kind.VALUE);
	}

	private List<Proposal> proposals(ProjectIndex index, Sheet sheet, String key, Piece piece, List<Integer> path, String more) {
		String before = Writing.before(piece, path) + " " + more;
		// what can be written depends on the element alone and on the names of the project
		int begin = sheet.words().isEmpty() ? sheet.text().length() : sheet.offset();
		String text = sheet.text().substring(begin, sheet.words().isEmpty() ? begin : sheet.end());
		int from;
		int to;
		if (sheet.words().isEmpty()) {
			from = begin;
			to = begin;
		} else if (key.startsWith(Cards.HEAD)) {
			from = sheet.offset();
			to = sheet.headEnd();
		} else {
			int clause = Integer.parseInt(key.substring(0, key.indexOf('/')));
			int number = Integer.parseInt(key.substring(key.indexOf('/') + 1));
			List<Sheet.Part> same = sheet.clauses().stream().filter(part -> part.clause() == clause).toList();
			if (number < same.size()) {
				from = same.get(number).offset();
				to = same.get(number).end();
			} else {
				TextEdit edit = new Rewriting(sheet).add(clause, new Piece.Word("")).get(0);
				from = edit.offset();
				to = edit.offset() + edit.length();
				before = edit.text().contains("{") ? " {\n  " + before : "\n  " + before;
			}
		}
		String whole = text.substring(0, from - begin) + before + "\n" + text.substring(Math.min(to - begin, text.length()));
		return completion.at(index, whole, from - begin + before.length(), List::of);
	}

	List<Change.Named> choices(ProjectIndex index, Sheet sheet, String key, Piece piece, List<Integer> path) {
		List<Change.Named> found = new ArrayList<>();
		for (Proposal proposal : proposals(index, sheet, key, piece, path, "")) {
			if (proposal.kind().ordinal() >= Proposal.Kind.FAMILY.ordinal() && proposal.kind().ordinal() <= Proposal.Kind.VALUE.ordinal()) {
				String detail = proposal.detail();
				int dot = detail.indexOf(" · ");
				boolean value = proposal.kind() == Proposal.Kind.VALUE;
				String title = dot < 0 ? proposal.label() : value ? detail.substring(0, dot) : detail.substring(dot + 3);
				found.add(new Change.Named(proposal.label(), title, value ? "" : dot < 0 ? detail : detail.substring(0, dot)));
			}
		}
		if (Pieces.at(piece, path) instanceof Piece.Value value) {
			fresh(value.shape()).ifPresent(kind -> found.add(Change.Named.fresh(kind)));
		}
		return found;
	}

	/** Returns the kind of what can be added where a name is asked for: all of it is its name and its title, to begin with. */
	private static Optional<String> fresh(Shape.Value shape) {
		// where anything can be asked about, what is missing mostly is a sign
		String kind = shape.type() == BayPackage.Literals.SUBJECT ? Kind.SIGN.word() : Kind.of(shape.type()) == null ? "" : Kind.of(shape.type()).word();
		return ADDED.contains(kind) ? Optional.of(kind) : Optional.empty();
	}
}
