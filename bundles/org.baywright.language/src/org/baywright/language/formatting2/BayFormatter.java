package org.baywright.language.formatting2;

import org.eclipse.xtext.formatting2.AbstractJavaFormatter;

public class BayFormatter extends AbstractJavaFormatter {
}
