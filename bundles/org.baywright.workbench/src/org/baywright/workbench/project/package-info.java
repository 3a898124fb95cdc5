/**
 * Rule projects of the workspace: the one place where screens, editors and the builder get a project's texts, problems
 * and flaws from. Results are told on worker threads; {@link org.baywright.workbench.project.ActiveProject} tells
 * them to the screens of a window on their own thread.
 */
package org.baywright.workbench.project;
