package org.baywright.workbench.editor;

import org.eclipse.jface.text.source.DefaultCharacterPairMatcher;

/** Shows which brace belongs to the one at the cursor. */
public final class Pairs extends DefaultCharacterPairMatcher {

	/** Made by the platform. */
	public Pairs() {
		super(new char[] { '{', '}', '(', ')' });
	}
}
