package org.baywright.workbench.walk;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;

import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.LiveState;
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
 * @param project the project that its first step brings in
 * @param steps its steps in order, at least one
 * @param end what comes after them
 */
record Walk(String title, String about, String project, List<Step> steps, Step end) {

	/** What shows that a step is done. */
	enum Done {

		/** Nothing does. */
		UNSEEN,
		/** The project is there. */
		THERE,
		/** No error stands in the project as it is now. */
		SOUND
	}

	/**
	 * A step.
	 *
	 * @param title what it is, in a few words
	 * @param text what to do and to look at
	 * @param button what its button says
	 * @param command what its button does, as the platform writes commands with their parameters
	 * @param done what shows that it is done
	 * @param said what is said when it is done
	 */
	record Step(String title, String text, String button, String command, Done done, String said) {
	}

	/** Returns whether a step is done, by what is known of the project, if it is there. */
	static boolean isDone(Step step, Optional<LiveState> project) {
		return switch (step.done()) {
		case UNSEEN -> false;
		case THERE -> project.isPresent();
		case SOUND -> project.flatMap(LiveState::fresh).filter(checked -> !checked.snapshot().hasErrors() && !checked.report().hasErrors())
				.isPresent();
		};
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
				steps.add(step((Element) nodes.item(i)));
			}
			return new Walk(walk.getAttribute("title"), walk.getAttribute("about"), walk.getAttribute("project"), List.copyOf(steps),
					step((Element) walk.getElementsByTagName("end").item(0)));
		} catch (SAXException | ParserConfigurationException e) {
			throw new IOException("The walk of this installation cannot be read.", e);
		}
	}

	private static Step step(Element step) {
		String done = step.getAttribute("done");
		return new Step(step.getAttribute("title"), step.getTextContent().strip(), step.getAttribute("button"), step.getAttribute("command"),
				done.isEmpty() ? Done.UNSEEN : Done.valueOf(done), step.getAttribute("said"));
	}
}
