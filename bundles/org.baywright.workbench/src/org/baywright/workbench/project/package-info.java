/**
 * Rule projects of the workspace: the one place where screens, editors and the builder get a project's texts, problems
 * and findings from. Results are told on worker threads; {@link org.baywright.workbench.project.ActiveProject} tells
 * them to screens on their own thread.
 */
package org.baywright.workbench.project;
