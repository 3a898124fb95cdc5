package org.baywright.language;

import org.baywright.language.conversion.BayValueConverters;
import org.baywright.language.scoping.BayNames;
import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.naming.IQualifiedNameProvider;

/** Binds what the language does in its own way. */
public class BayRuntimeModule extends AbstractBayRuntimeModule {

	@Override
	public Class<? extends IValueConverterService> bindIValueConverterService() {
		return BayValueConverters.class;
	}

	@Override
	public Class<? extends IQualifiedNameProvider> bindIQualifiedNameProvider() {
		return BayNames.class;
	}
}
