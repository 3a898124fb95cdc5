package org.baywright.workbench.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import javax.xml.parsers.DocumentBuilderFactory;

import org.baywright.presenter.help.HelpPage;
import org.baywright.workbench.Baywright;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The contents that another workbench's help shows are the pages of ours. */
class PagesTest {

	@Test
	void theContentsListEveryPageWithItsTitle() throws Exception {
		List<String> listed = new ArrayList<>();
		try (InputStream in = Baywright.instance().getBundle().getEntry("help/toc.xml").openStream()) {
			NodeList topics = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(in).getElementsByTagName("topic");
			for (int i = 0; i < topics.getLength(); i++) {
				Element topic = (Element) topics.item(i);
				if (topic.hasAttribute("href")) {
					listed.add(Help.pageOf(topic.getAttribute("href")) + " " + topic.getAttribute("label"));
				}
			}
		}
		assertEquals(Help.book().pages().stream().map(page -> page.id() + " " + page.title()).toList(), listed);
	}

	@Test
	void everyPageIsGivenAsHtml() throws Exception {
		for (HelpPage page : Help.book().pages()) {
			try (InputStream in = new Pages().getInputStream(Baywright.ID, "help/" + page.id() + ".html", Locale.ROOT)) {
				String html = new String(in.readAllBytes(), StandardCharsets.UTF_8);
				assertTrue(html.startsWith("<!DOCTYPE html>") && html.contains("<h1>"), page.id());
			}
		}
		assertNull(new Pages().getInputStream(Baywright.ID, "help/none.html", Locale.ROOT));
		assertNull(new Pages().getInputStream(Baywright.ID, "icons/rule.png", Locale.ROOT));
	}
}
