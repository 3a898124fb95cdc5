/** What the wizards write: drafts that know what is still missing and turn into the text of rules. */
package org.baywright.presenter.draft;
