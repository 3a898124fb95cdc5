/** A project while it is being edited: texts in, problems and flaws out, from the newest texts only. */
package org.baywright.language.ide.live;
