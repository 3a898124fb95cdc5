/**
 * The one service through which the editor, the command line and the language server read rule projects.
 *
 * <p>{@link org.baywright.language.workspace.RuleProject} holds the texts; each
 * {@link org.baywright.language.workspace.Snapshot} is immutable and may be handed to any thread.
 */
package org.baywright.language.workspace;
