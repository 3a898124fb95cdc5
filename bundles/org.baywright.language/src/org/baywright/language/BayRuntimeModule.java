package org.baywright.language;

import org.baywright.language.conversion.BayValueConverters;
import org.baywright.language.syntax.FoundToken;
import org.baywright.language.syntax.TolerantParser;
import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.parser.IParser;
import org.eclipse.xtext.parser.antlr.ISyntaxErrorMessageProvider;

/** Binds what the language does in its own way. */
public class BayRuntimeModule extends AbstractBayRuntimeModule {

	@Override
	public Class<? extends IValueConverterService> bindIValueConverterService() {
		return BayValueConverters.class;
	}

	@Override
	public Class<? extends IParser> bindIParser() {
		return TolerantParser.class;
	}

	/** Keeps what {@link org.baywright.language.syntax.SyntaxProblems} needs. */
	public Class<? extends ISyntaxErrorMessageProvider> bindISyntaxErrorMessageProvider() {
		return FoundToken.class;
	}
}
