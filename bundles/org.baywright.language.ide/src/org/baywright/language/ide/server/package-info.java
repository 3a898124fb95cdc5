/**
 * The language server: what an editor asks over the Language Server Protocol 3.17, answered by
 * {@link org.baywright.language.ide.EditorServices} over a {@link org.baywright.language.ide.live.LiveProject} for each
 * folder.
 */
package org.baywright.language.ide.server;
