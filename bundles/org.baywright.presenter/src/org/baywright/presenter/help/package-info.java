/** The help as pages to read: which there are, and how each is set. */
package org.baywright.presenter.help;
