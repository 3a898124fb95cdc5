package org.baywright.language.syntax;

import java.util.Map;
import java.util.Set;
import org.antlr.runtime.BitSet;
import org.antlr.runtime.IntStream;
import org.antlr.runtime.NoViableAltException;
import org.antlr.runtime.RecognitionException;
import org.antlr.runtime.Token;
import org.antlr.runtime.TokenStream;
import org.baywright.language.bay.RuleFile;
import org.baywright.language.parser.antlr.internal.InternalBayParser;
import org.baywright.language.services.BayGrammarAccess;
import org.eclipse.emf.ecore.EObject;

/**
 * The generated parser stops at the first text between elements that is no element. This one skips it, up to the next
 * word that begins an element, and goes on.
 */
final class TolerantInternalParser extends InternalBayParser {

	private final BayGrammarAccess grammar;
	private final BitSet elementStarts = new BitSet();

	TolerantInternalParser(TokenStream input, BayGrammarAccess grammar) {
		super(input, grammar);
		this.grammar = grammar;
	}

	@Override
	public void setTokenTypeMap(Map<Integer, String> tokenTypeMap) {
		super.setTokenTypeMap(tokenTypeMap);
		Set<String> words = Expectation.elementWords(grammar);
		tokenTypeMap.forEach((type, name) -> {
			if (name.length() > 2 && words.contains(name.substring(1, name.length() - 1))) {
				elementStarts.add(type);
			}
		});
	}

	@Override
	protected Object recoverFromMismatchedToken(IntStream stream, int wanted, BitSet follow)
			throws RecognitionException {
		boolean betweenElements = wanted == Token.EOF && getCurrentNode() != null
				&& getCurrentNode().getSemanticElement() instanceof RuleFile;
		if (!betweenElements) {
			return super.recoverFromMismatchedToken(stream, wanted, follow);
		}
		EObject file = getCurrentNode().getSemanticElement();
		while (input.LA(1) != Token.EOF) {
			if (elementStarts.member(input.LA(1))) {
				element(file);
			} else {
				skip();
			}
		}
		return input.LT(1);
	}

	/** What the generated parser does for each element of a file. */
	private void element(EObject file) throws RecognitionException {
		int before = input.index();
		newCompositeNode(grammar.getRuleFileAccess().getElementsElementParserRuleCall_1_0());
		pushFollow(elementStarts);
		EObject element = ruleElement();
		state._fsp--;
		if (element != null) {
			add(file, "elements", element, "org.baywright.language.Bay.Element");
		}
		afterParserOrEnumRuleCall();
		if (input.index() == before) {
			input.consume();
		}
	}

	private void skip() {
		reportError(new NoViableAltException("", 0, 0, input));
		while (input.LA(1) != Token.EOF && !elementStarts.member(input.LA(1))) {
			input.consume();
		}
		appendSkippedTokens();
		state.errorRecovery = false;
	}
}
