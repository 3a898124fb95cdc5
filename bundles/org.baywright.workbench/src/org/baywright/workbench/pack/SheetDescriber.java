package org.baywright.workbench.pack;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.charset.StandardCharsets;

import org.eclipse.core.runtime.QualifiedName;
import org.eclipse.core.runtime.content.IContentDescription;
import org.eclipse.core.runtime.content.ITextContentDescriber;

/** Tells the sheets of rule packs from other web pages, by their title. */
public final class SheetDescriber implements ITextContentDescriber {

	/** The title stands in the first lines. */
	private static final int HEAD = 2000;
	private static final String TITLE = " – diagnostic rules</title>";

	@Override
	public int describe(InputStream contents, IContentDescription description) throws IOException {
		return judge(new String(contents.readNBytes(HEAD), StandardCharsets.UTF_8));
	}

	@Override
	public int describe(Reader contents, IContentDescription description) throws IOException {
		char[] head = new char[HEAD];
		int length = 0;
		for (int read; length < HEAD && (read = contents.read(head, length, HEAD - length)) > 0;) {
			length += read;
		}
		return judge(new String(head, 0, length));
	}

	private static int judge(String head) {
		return head.contains(TITLE) ? VALID : INVALID;
	}

	@Override
	public QualifiedName[] getSupportedOptions() {
		return new QualifiedName[0];
	}
}
