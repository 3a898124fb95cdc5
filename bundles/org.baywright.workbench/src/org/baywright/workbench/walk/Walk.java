package org.baywright.workbench.walk;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;

import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;

import org.baywright.workbench.Baywright;
import org.eclipse.core.runtime.FileLocator;
import org.eclipse.core.runtime.IPath;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/**
 * A walk as its file tells it.
 *
 * @param title its title
 * @param about what it is about
 * @param steps its steps in order, at least one
 */
record Walk(String title, String about, List<Step> steps) {

	/**
	 * A step.
	 *
	 * @param title what it is, in a few words
	 * @param text what to do and to look at
	 * @param button what its button says
	 * @param command what its button does, as the platform writes commands with their parameters
	 */
	record Step(String title, String text, String button, String command) {
	}

	/**
	 * Reads the walk that comes with the workbench.
	 *
	 * @throws IOException if it cannot be read
	 */
	static Walk read() throws IOException {
		try (InputStream in = FileLocator.openStream(Baywright.instance().getBundle(), IPath.fromPortableString("help/walk.xml"), false)) {
			Element walk = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(in).getDocumentElement();
			List<Step> steps = new ArrayList<>();
			NodeList nodes = walk.getElementsByTagName("step");
			for (int i = 0; i < nodes.getLength(); i++) {
				Element step = (Element) nodes.item(i);
				steps.add(new Step(step.getAttribute("title"), step.getTextContent().strip(), step.getAttribute("button"),
						step.getAttribute("command")));
			}
			return new Walk(walk.getAttribute("title"), walk.getAttribute("about"), List.copyOf(steps));
		} catch (SAXException | ParserConfigurationException e) {
			throw new IOException("The walk of this installation cannot be read.", e);
		}
	}
}
