package org.baywright.language.index;

import org.eclipse.emf.ecore.EObject;

/**
 * A named thing in a project.
 *
 * @param kind what it is
 * @param name the name by which rules refer to it
 * @param file the file it stands in
 * @param element the parsed element; replaced whenever its file is parsed again
 * @param facts what other files need to know
 */
public record Symbol(Kind kind, String name, String file, EObject element, Facts facts) {
}
