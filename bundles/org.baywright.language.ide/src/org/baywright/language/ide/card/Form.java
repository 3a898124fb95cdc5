package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.baywright.language.ide.text.Word;
import org.baywright.language.vocabulary.Clause;
import org.baywright.language.vocabulary.Element;
import org.baywright.language.vocabulary.Vocabulary;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.Grammar;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;

/**
 * How a kind of element is filled in.
 *
 * @param element its words
 * @param head what stands before the braces
 * @param fields the head's parts that belong together
 * @param clauses the shape of each clause, in the order of the vocabulary
 * @param bare whether the braces may be left out
 */
record Form(Element element, Shape.Row head, List<Head> fields, List<Shape> clauses, boolean bare) {

	/**
	 * Parts of the head that make one field.
	 *
	 * @param label what it is called
	 * @param word the word that explains it; empty if none does
	 * @param from number of its first part
	 * @param to number of the first part behind it
	 */
	record Head(String label, String word, int from, int to) {
	}

	/** What a part is called that no word stands before. */
	private static final Map<String, String> LABELS = Map.of("text", "Code", "when", "Says", "low", "Range", "base", "Kind", "system", "Kind");

	/** Returns the forms of all elements that stand in a file by themselves, in the order of the vocabulary. */
	static Map<String, Form> all(Grammar grammar) {
		Shapes shapes = new Shapes(grammar);
		Map<String, Form> forms = new LinkedHashMap<>();
		for (Element element : Vocabulary.elements()) {
			if (Vocabulary.beginsElement(element.word()) && !Vocabulary.elements().stream().anyMatch(owner -> Vocabulary.isPart(owner.rule(), element.rule()))) {
				forms.put(element.rule(), of(element, shapes));
			}
		}
		return forms;
	}

	private static Form of(Element element, Shapes shapes) {
		List<AbstractElement> parts = ((Group) shapes.rule(element.rule()).getAlternatives()).getElements();
		int at = 0;
		while (at < parts.size() && !opens(parts.get(at))) {
			at++;
		}
		Shape.Row head = new Shape.Row(shapes.parts(parts.subList(0, at), ""));
		boolean bare = at < parts.size() && !(parts.get(at) instanceof Keyword);
		List<Shape> clauses = new ArrayList<>();
		if (at < parts.size()) {
			List<AbstractElement> block = bare ? ((Group) parts.get(at)).getElements() : parts;
			AbstractElement repeated = block.stream().filter(GrammarUtil::isMultipleCardinality)
					.filter(part -> !EcoreUtil2.eAllOfType(part, Keyword.class).isEmpty() || part != block.get(0))
					.filter(part -> block.indexOf(part) > indexOfBrace(block)).findFirst().orElseThrow();
			List<AbstractElement> all = repeated instanceof Alternatives choice ? choice.getElements() : List.of(repeated);
			for (AbstractElement clause : all) {
				Shape shape = shapes.of(clause).orElseThrow();
				clauses.add(all.size() == 1 && clause == repeated ? ((Shape.Many) shape).item() : shape);
			}
		}
		return new Form(element, head, fields(element, head.parts()), clauses, bare);
	}

	private static boolean opens(AbstractElement part) {
		return part instanceof Keyword brace ? brace.getValue().equals("{") : part instanceof Group group && indexOfBrace(group.getElements()) >= 0;
	}

	private static int indexOfBrace(List<AbstractElement> parts) {
		for (int i = 0; i < parts.size(); i++) {
			if (parts.get(i) instanceof Keyword brace && brace.getValue().equals("{")) {
				return i;
			}
		}
		return -1;
	}

	private static List<Head> fields(Element element, List<Shape> parts) {
		List<Head> fields = new ArrayList<>();
		int from = 0;
		boolean filled = false;
		for (int i = 0; i < parts.size(); i++) {
			Shape part = parts.get(i);
			if (i > from && (filled || part instanceof Shape.Maybe && from > 0)) {
				fields.add(head(element, parts, from, i));
				from = i;
			}
			filled = !(part instanceof Shape.Word);
		}
		fields.add(head(element, parts, from, parts.size()));
		return fields;
	}

	private static Head head(Element element, List<Shape> parts, int from, int to) {
		List<String> words = new ArrayList<>();
		String feature = "";
		for (Shape part : parts.subList(from, to)) {
			feature = feature.isEmpty() ? words(part, words) : feature;
		}
		words.remove(element.word());
		boolean called = feature.equals("name") || feature.equals("title");
		String label = called ? feature : words.isEmpty() ? LABELS.getOrDefault(feature, feature) : String.join(" ", words);
		return new Head(label(label.isEmpty() ? element.word() : label), words.isEmpty() ? "" : words.get(0), from, to);
	}

	/** Collects the words with which a part begins, and returns the feature of its first value. */
	private static String words(Shape part, List<String> words) {
		if (part instanceof Shape.Word word) {
			if (!word.isSign()) {
				words.add(word.text());
			}
			return "";
		}
		if (part instanceof Shape.Value value) {
			return value.feature();
		}
		if (part instanceof Shape.Maybe maybe) {
			return words(maybe.part(), words);
		}
		if (part instanceof Shape.Many many) {
			String first = words(many.item(), new ArrayList<>());
			return first.equals("name") ? "values" : first;
		}
		if (part instanceof Shape.Row row) {
			String feature = "";
			for (Shape inner : row.parts()) {
				feature = feature.isEmpty() ? words(inner, words) : feature;
			}
			return feature;
		}
		return part instanceof Shape.Choice choice ? choice.feature() : "";
	}

	/** Returns a word of the language as it is shown: with a capital letter and blanks. */
	static String label(String word) {
		String spaced = word.replaceAll("(\\p{Ll})(\\p{Lu})", "$1 $2").replace('_', ' ').toLowerCase(Locale.ROOT);
		return spaced.isEmpty() ? "" : spaced.substring(0, 1).toUpperCase(Locale.ROOT) + spaced.substring(1);
	}

	/** Returns what a clause is called. */
	String label(int clause) {
		Clause of = element.clauses().get(clause);
		return label(of.words().size() == 1 ? of.words().get(0) : of.part().isEmpty() ? of.words().get(0) : of.part());
	}

	/** Returns the form of the element that begins with a word. */
	static Optional<Form> beginning(Map<String, Form> forms, Word word, Matching matching, int at) {
		return forms.values().stream().filter(form -> form.element().word().equals(word.text())).findFirst()
				.or(() -> forms.values().stream().filter(form -> matching.longest(form.head().parts().get(0), at).isPresent()).findFirst());
	}
}
