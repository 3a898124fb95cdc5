package org.baywright.language.syntax;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.index.Kind;
import org.baywright.language.services.BayGrammarAccess;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EClassifier;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CompoundElement;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.EnumLiteralDeclaration;
import org.eclipse.xtext.Grammar;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.TerminalRule;
import org.eclipse.xtext.TypeRef;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;

/** What may follow a word of a rule file, in the words of a technician. Words of the language are in backquotes. */
final class Expectation {

	/** A unit, where one may follow. */
	static final String UNIT = "a unit, such as V";

	private final Set<String> found = new LinkedHashSet<>();
	private final Set<AbstractElement> seen = new LinkedHashSet<>();

	private Expectation() {
	}

	/** Returns the words that begin an element. */
	static Set<String> elementWords(BayGrammarAccess grammar) {
		Expectation expectation = new Expectation();
		expectation.first(grammar.getElementRule().getAlternatives());
		Set<String> words = new LinkedHashSet<>();
		expectation.found.forEach(word -> words.add(word.substring(1, word.length() - 1)));
		return words;
	}

	/** Returns what may stand at the beginning of a file and between elements. */
	static List<String> elements(Grammar grammar) {
		Expectation expectation = new Expectation();
		expectation.first(GrammarUtil.findRuleForName(grammar, "Element").getAlternatives());
		return List.copyOf(expectation.found);
	}

	/** Returns what may follow a leaf that the parser understood, in the order of the grammar. */
	static List<String> after(ILeafNode leaf) {
		Expectation expectation = new Expectation();
		EObject element = leaf.getGrammarElement();
		if (element instanceof EnumLiteralDeclaration) {
			expectation.endOfRule(leaf);
		} else if (element instanceof AbstractElement matched) {
			expectation.next(matched, leaf);
		}
		return List.copyOf(expectation.found);
	}

	private void next(AbstractElement element, INode node) {
		if (GrammarUtil.isMultipleCardinality(element)) {
			first(element);
		}
		EObject container = element.eContainer();
		if (container instanceof Group group) {
			List<AbstractElement> parts = group.getElements();
			for (int i = parts.indexOf(element) + 1; i < parts.size(); i++) {
				first(parts.get(i));
				if (!isOptional(parts.get(i))) {
					return;
				}
			}
		}
		if (container instanceof AbstractElement outer) {
			next(outer, node);
		} else {
			endOfRule(node);
		}
	}

	/** Goes on behind the call that led to the node. */
	private void endOfRule(INode node) {
		for (INode caller = node.getParent(); caller != null; caller = caller.getParent()) {
			EObject element = caller.getGrammarElement();
			if (element instanceof RuleCall || element instanceof CrossReference) {
				next((AbstractElement) element, caller);
				return;
			}
			// an action at the beginning of a rule takes the place of the call in the tree
			if (element instanceof Action action && action.getFeature() == null && caller.getParent() != null) {
				for (RuleCall call : GrammarUtil.containedRuleCalls(calledIn(caller.getParent()))) {
					if (call.getRule() == GrammarUtil.containingRule(action)) {
						next(call, caller);
					}
				}
				return;
			}
		}
	}

	private static AbstractRule calledIn(INode node) {
		EObject element = node.getGrammarElement();
		if (element instanceof AbstractRule rule) {
			return rule;
		}
		return element instanceof RuleCall call ? call.getRule() : GrammarUtil.containingRule(element);
	}

	private void first(AbstractElement element) {
		if (element instanceof Keyword keyword) {
			found.add("`" + keyword.getValue() + "`");
		} else if (element instanceof Assignment assignment) {
			String phrase = phrase(assignment);
			if (phrase == null) {
				first(assignment.getTerminal());
			} else {
				found.add(phrase);
			}
		} else if (element instanceof CrossReference reference) {
			found.add(phrase(reference));
		} else if (element instanceof RuleCall call) {
			first(call);
		} else if (element instanceof Alternatives alternatives) {
			alternatives.getElements().forEach(this::first);
		} else if (element instanceof CompoundElement group) {
			for (AbstractElement part : group.getElements()) {
				first(part);
				if (!isOptional(part)) {
					return;
				}
			}
		} else if (element instanceof EnumLiteralDeclaration literal) {
			found.add("`" + literal.getLiteral().getValue() + "`");
		}
	}

	private void first(RuleCall call) {
		AbstractRule rule = call.getRule();
		String phrase = phrase(rule);
		if (phrase != null) {
			found.add(phrase);
		} else if (!(rule instanceof TerminalRule) && seen.add(call)) {
			first(rule.getAlternatives());
		}
	}

	private static boolean isOptional(AbstractElement element) {
		return element instanceof Action || GrammarUtil.isOptionalCardinality(element)
				|| element instanceof Group group && group.getElements().stream().allMatch(Expectation::isOptional);
	}

	private static String phrase(Assignment assignment) {
		if (!(assignment.getTerminal() instanceof RuleCall call)) {
			return null;
		}
		return switch (call.getRule().getName()) {
		case "Decimal" -> Set.of("spn", "fmi", "seen").contains(assignment.getFeature()) ? "a whole number" : "a number";
		case "AlphaNumeric" -> assignment.getFeature().equals("sub") ? "two digits, such as 16"
				: "the code as the scan tool shows it, such as U3003";
		default -> null;
		};
	}

	private static String phrase(CrossReference reference) {
		TypeRef type = reference.getType();
		EClassifier classifier = type == null ? null : type.getClassifier();
		if (classifier == BayPackage.Literals.SUBJECT) {
			return "the name of a sign, test, code, module, trait or fault";
		}
		if (classifier == BayPackage.Literals.FAULT) {
			return "a fault, such as battery.discharged";
		}
		if (classifier == BayPackage.Literals.NAMED_VALUE) {
			return "the name of a value";
		}
		Kind kind = classifier instanceof EClass known ? Kind.of(known) : null;
		return kind == null ? "a name" : "the name of " + kind.aWord();
	}

	private static String phrase(AbstractRule rule) {
		return switch (rule.getName()) {
		case "Name", "ValueName", "ID", "QualifiedName", "NamedValue" -> "a name";
		case "STRING" -> "a text in quotes";
		case "Quantity", "Band" -> "a value with its unit, such as 12.4 V";
		case "SignedNumber", "NUMBER" -> "a number";
		case "Unit" -> UNIT;
		case "Date" -> "a date, such as 2026-03-02";
		case "Condition" -> "a condition, such as no_crank";
		case "StateSetting" -> "a state and its value, such as ignition on";
		default -> null;
		};
	}
}
