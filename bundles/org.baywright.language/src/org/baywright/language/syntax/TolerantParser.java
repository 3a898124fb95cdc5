package org.baywright.language.syntax;

import org.baywright.language.parser.antlr.BayParser;
import org.baywright.language.parser.antlr.internal.InternalBayParser;
import org.eclipse.xtext.parser.antlr.XtextTokenStream;

/** A parser that goes on behind text which is no element, so that one stray character does not hide a whole file. */
public class TolerantParser extends BayParser {

	@Override
	protected InternalBayParser createParser(XtextTokenStream stream) {
		return new TolerantInternalParser(stream, getGrammarAccess());
	}
}
