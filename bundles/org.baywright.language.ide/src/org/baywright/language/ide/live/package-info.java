/** A project while it is being edited: texts in, problems and findings out, from the newest texts only. */
package org.baywright.language.ide.live;
