package org.baywright.language.vocabulary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.baywright.language.BayStandaloneSetup;
import org.baywright.language.services.BayGrammarAccess;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.Grammar;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.junit.jupiter.api.Test;

/** The vocabulary says of the language what the grammar says, and leaves nothing out. */
class VocabularyTest {

	private static final Grammar GRAMMAR = BayStandaloneSetup.injector().getInstance(BayGrammarAccess.class).getGrammar();

	@Test
	void hasEachElementOfTheGrammar() {
		List<String> rules = ((Alternatives) rule("Element").getAlternatives()).getElements().stream()
				.map(choice -> ((RuleCall) choice).getRule().getName()).toList();
		Set<String> known = Vocabulary.elements().stream().map(Element::rule).collect(Collectors.toCollection(TreeSet::new));
		known.remove("VerifyBlock");
		assertEquals(new TreeSet<>(rules), known);
		for (String rule : rules) {
			Element element = Vocabulary.of(rule).orElseThrow();
			assertTrue(first(rule(rule).getAlternatives()).contains(element.word()), rule);
			first(rule(rule).getAlternatives()).forEach(word -> assertTrue(Vocabulary.beginsElement(word), word));
			assertEquals(block(rule(rule)) == null, element.isLine(), rule);
		}
	}

	@Test
	void hasEachClauseOfTheGrammarInItsOrder() {
		for (Element element : Vocabulary.elements()) {
			List<String> written = new ArrayList<>();
			for (AbstractElement clause : clauses(rule(element.rule()))) {
				written.add(part(clause) + new TreeSet<>(first(clause)));
			}
			assertEquals(written, element.clauses().stream().map(clause -> clause.part() + new TreeSet<>(clause.words())).toList(),
					element.rule());
		}
	}

	/** What the grammar keeps only the last of would be lost without a word. */
	@Test
	void whatIsKeptOnceMayBeGivenOnce() {
		for (Element element : Vocabulary.elements()) {
			List<AbstractElement> written = clauses(rule(element.rule()));
			for (int i = 0; i < written.size(); i++) {
				boolean kept = EcoreUtil2.eAllOfType(written.get(i), Assignment.class).stream()
						.anyMatch(assignment -> assignment.getOperator().equals("="));
				if (kept) {
					assertTrue(element.clauses().get(i).isOnce(), element.clauses().get(i).toString());
				}
			}
		}
	}

	@Test
	void explainsEachWordOfTheLanguageAndNoOther() {
		Set<String> words = GrammarUtil.getAllKeywords(GRAMMAR).stream().filter(word -> Character.isLetter(word.charAt(0)))
				.collect(Collectors.toCollection(TreeSet::new));
		assertEquals(words, new TreeSet<>(Vocabulary.words()));
	}

	@Test
	void knowsWhichWordsConclude() {
		first(rule("Conclusion").getAlternatives()).forEach(word -> assertTrue(Vocabulary.concludes(word), word));
		for (String rule : List.of("Conclusion", "StandingValue")) {
			first(rule(rule).getAlternatives()).forEach(word -> assertTrue(Vocabulary.isVerdict(word), word));
		}
		assertEquals(Set.of(), Vocabulary.words().stream()
				.filter(word -> Vocabulary.concludes(word) && !first(rule("Conclusion").getAlternatives()).contains(word))
				.collect(Collectors.toSet()));
	}

	private static AbstractRule rule(String name) {
		return GrammarUtil.findRuleForName(GRAMMAR, name);
	}

	/** Returns what is repeated between the braces of a rule; null if it has none. */
	private static AbstractElement block(AbstractRule rule) {
		for (Keyword brace : EcoreUtil2.eAllOfType(rule, Keyword.class)) {
			if (brace.getValue().equals("{") && brace.eContainer() instanceof Group group) {
				return group.getElements().stream().filter(GrammarUtil::isMultipleCardinality).findFirst().orElseThrow();
			}
		}
		return null;
	}

	private static List<AbstractElement> clauses(AbstractRule rule) {
		AbstractElement block = block(rule);
		return block == null ? List.of() : block instanceof Alternatives choice ? choice.getElements() : List.of(block);
	}

	private static String part(AbstractElement clause) {
		return clause instanceof Assignment assignment && assignment.getTerminal() instanceof RuleCall call
				&& call.getRule() instanceof ParserRule ? call.getRule().getName() : "";
	}

	/** Returns the words with which an element of the grammar can begin. */
	private static Set<String> first(AbstractElement element) {
		Set<String> words = new LinkedHashSet<>();
		if (element instanceof Keyword keyword) {
			words.add(keyword.getValue());
		} else if (element instanceof Assignment assignment) {
			words.addAll(first(assignment.getTerminal()));
		} else if (element instanceof RuleCall call) {
			words.addAll(first(call.getRule().getAlternatives()));
		} else if (element instanceof Group group) {
			for (AbstractElement part : group.getElements()) {
				words.addAll(first(part));
				if (!GrammarUtil.isOptionalCardinality(part) && !(part instanceof org.eclipse.xtext.Action)) {
					return words;
				}
			}
		} else {
			for (EObject part : element.eContents()) {
				if (part instanceof AbstractElement inner) {
					words.addAll(first(inner));
				}
			}
		}
		return words;
	}
}
