package org.baywright.workbench.help;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

import org.baywright.presenter.help.HelpHtml;
import org.eclipse.help.IHelpContentProducer;

/** Gives the platform's help, where a workbench has it, the same pages as HTML. */
public final class Pages implements IHelpContentProducer {

	@Override
	public InputStream getInputStream(String plugin, String href, Locale locale) {
		if (!href.endsWith(".html")) {
			return null;
		}
		return Help.book().page(Help.pageOf(href))
				.map(page -> new ByteArrayInputStream(HelpHtml.of(page).getBytes(StandardCharsets.UTF_8))).orElse(null);
	}
}
