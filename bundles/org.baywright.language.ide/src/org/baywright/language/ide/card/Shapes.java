package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.ide.card.Shape.Sort;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.EnumLiteralDeclaration;
import org.eclipse.xtext.Grammar;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.TerminalRule;

/** Reads shapes out of the grammar. */
final class Shapes {

	/** Rules that make one value, though they have parts. */
	private static final Set<String> AMOUNTS = Set.of("Quantity");
	private static final Set<String> DATES = Set.of("Date");
	private static final Set<String> NUMBERS = Set.of("Decimal", "SignedNumber");
	private static final String CONDITION = "Condition";

	private final Grammar grammar;

	Shapes(Grammar grammar) {
		this.grammar = grammar;
	}

	AbstractRule rule(String name) {
		return GrammarUtil.findRuleForName(grammar, name);
	}

	/** Returns the shape of an element of the grammar, its cardinality included. */
	Optional<Shape> of(AbstractElement element) {
		return of(element, "");
	}

	private Optional<Shape> of(AbstractElement element, String feature) {
		return plain(element, feature).map(shape -> times(shape, element));
	}

	private static Shape times(Shape shape, AbstractElement element) {
		if (GrammarUtil.isMultipleCardinality(element)) {
			return new Shape.Many(shape, "", GrammarUtil.isOptionalCardinality(element) ? 0 : 1);
		}
		return GrammarUtil.isOptionalCardinality(element) ? new Shape.Maybe(shape) : shape;
	}

	private Optional<Shape> plain(AbstractElement element, String feature) {
		if (element instanceof Keyword keyword) {
			return Optional.of(new Shape.Word(keyword.getValue()));
		}
		if (element instanceof EnumLiteralDeclaration literal) {
			return Optional.of(new Shape.Word(literal.getLiteral().getValue()));
		}
		if (element instanceof Assignment assignment) {
			return of(assignment.getTerminal(), assignment.getFeature());
		}
		if (element instanceof CrossReference reference) {
			AbstractRule rule = ((RuleCall) reference.getTerminal()).getRule();
			return Optional.of(new Shape.Value(Sort.REFERENCE, feature, (EClass) reference.getType().getClassifier(), rule));
		}
		if (element instanceof RuleCall call) {
			return Optional.of(called(call.getRule(), feature));
		}
		if (element instanceof Alternatives choice) {
			return Optional.of(choice(choice.getElements().stream().flatMap(each -> of(each, feature).stream()).toList(), feature));
		}
		if (element instanceof Group group) {
			return Optional.of(row(parts(group.getElements(), feature)));
		}
		if (element instanceof Action) {
			return Optional.empty();
		}
		throw new IllegalStateException("no shape for " + element.eClass().getName());
	}

	private Shape called(AbstractRule rule, String feature) {
		String name = rule.getName();
		if (name.equals(CONDITION)) {
			List<Shape> parts = new ArrayList<>(List.of(new Shape.Maybe(new Shape.Word("not"))));
			parts.addAll(((Shape.Row) of(rule("Atom").getAlternatives()).orElseThrow()).parts());
			return new Shape.Condition(new Shape.Row(parts));
		}
		if (AMOUNTS.contains(name) || DATES.contains(name) || rule instanceof TerminalRule || GrammarUtil.isDatatypeRule(rule)) {
			return new Shape.Value(sort(name, feature), feature, null, rule);
		}
		return of(rule.getAlternatives(), feature).orElseThrow();
	}

	private static Sort sort(String rule, String feature) {
		if (AMOUNTS.contains(rule)) {
			return Sort.AMOUNT;
		}
		if (DATES.contains(rule)) {
			return Sort.DATE;
		}
		if (NUMBERS.contains(rule)) {
			return Sort.NUMBER;
		}
		return switch (rule) {
		case "STRING" -> Sort.TEXT;
		case "Unit" -> Sort.UNIT;
		case "Name", "ValueName" -> feature.equals("name") ? Sort.NAME : Sort.PLAIN;
		default -> Sort.PLAIN;
		};
	}

	/** Returns the shapes of neighbours; a thing and, behind a comma, more of the same are one list. */
	List<Shape> parts(List<AbstractElement> elements, String feature) {
		List<Shape> parts = new ArrayList<>();
		for (AbstractElement element : elements) {
			Optional<Shape> shape = of(element, feature);
			if (shape.isEmpty()) {
				continue;
			}
			Shape last = parts.isEmpty() ? null : parts.get(parts.size() - 1);
			if (shape.get() instanceof Shape.Many more && more.item() instanceof Shape.Row row && row.parts().size() == 2
					&& row.parts().get(0) instanceof Shape.Word comma && row.parts().get(1).equals(last)) {
				parts.set(parts.size() - 1, new Shape.Many(last, comma.text(), more.least() + 1));
			} else if (shape.get() instanceof Shape.Row row && element instanceof Group) {
				parts.addAll(row.parts());
			} else {
				parts.add(shape.get());
			}
		}
		return parts;
	}

	private static Shape row(List<Shape> parts) {
		return parts.size() == 1 ? parts.get(0) : new Shape.Row(List.copyOf(parts));
	}

	// ---- choices: each option begins with words of its own -------------------------------------------------------

	private static Shape choice(List<Shape> options, String feature) {
		List<Shape> all = new ArrayList<>();
		options.forEach(option -> all.addAll(spread(option)));
		return new Shape.Choice(all.stream().distinct().toList(), feature);
	}

	private static List<Shape> spread(Shape shape) {
		if (shape instanceof Shape.Choice choice) {
			return choice.options().stream().flatMap(option -> spread(option).stream()).toList();
		}
		if (!(shape instanceof Shape.Row row)) {
			return List.of(shape);
		}
		List<Shape> found = new ArrayList<>();
		for (List<Shape> parts : spread(row.parts())) {
			found.add(row(parts));
		}
		return found;
	}

	private static List<List<Shape>> spread(List<Shape> parts) {
		if (parts.isEmpty()) {
			return List.of(List.of());
		}
		Shape first = parts.get(0);
		List<Shape> rest = parts.subList(1, parts.size());
		if (first instanceof Shape.Row row) {
			return spread(joined(row.parts(), rest));
		}
		List<List<Shape>> found = new ArrayList<>();
		if (first instanceof Shape.Word word) {
			(word.isSign() ? List.of(rest) : spread(rest)).forEach(tail -> found.add(joined(List.of(word), tail)));
		} else if (first instanceof Shape.Choice choice) {
			for (Shape option : choice.options()) {
				List<Shape> words = option instanceof Shape.Row row ? row.parts() : List.of(option);
				boolean only = words.stream().allMatch(part -> part instanceof Shape.Word);
				(only ? spread(rest) : List.of(rest)).forEach(tail -> found.add(joined(words, tail)));
			}
		} else if (first instanceof Shape.Maybe maybe && maybe.part() instanceof Shape.Word word && !word.isSign()) {
			spread(rest).forEach(tail -> found.add(tail));
			spread(rest).forEach(tail -> found.add(joined(List.of(word), tail)));
		} else {
			found.add(parts);
		}
		return found;
	}

	private static List<Shape> joined(List<Shape> head, List<Shape> tail) {
		List<Shape> all = new ArrayList<>(head);
		all.addAll(tail);
		return all;
	}
}
