package org.baywright.language.syntax;

import org.antlr.runtime.CommonToken;
import org.antlr.runtime.RecognitionException;
import org.antlr.runtime.Token;
import org.eclipse.xtext.diagnostics.Diagnostic;
import org.eclipse.xtext.nodemodel.SyntaxErrorMessage;
import org.eclipse.xtext.parser.antlr.SyntaxErrorMessageProvider;

/** Keeps with each syntax error the word at which the parser gave up; the words come from {@link SyntaxProblems}. */
public class FoundToken extends SyntaxErrorMessageProvider {

	@Override
	public SyntaxErrorMessage getSyntaxErrorMessage(IParserErrorContext context) {
		RecognitionException exception = context.getRecognitionException();
		Token token = exception == null ? null : exception.token;
		if (token == null || token.getType() == Token.EOF || !(token instanceof CommonToken common)) {
			return new SyntaxErrorMessage(context.getDefaultMessage(), Diagnostic.SYNTAX_DIAGNOSTIC, new String[0]);
		}
		return new SyntaxErrorMessage(context.getDefaultMessage(), Diagnostic.SYNTAX_DIAGNOSTIC,
				new String[] { Integer.toString(common.getStartIndex()), common.getText() });
	}
}
