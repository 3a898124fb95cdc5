/** The picture of the rules. What it shows is made by {@code org.baywright.presenter.picture}. */
package org.baywright.workbench.view.picture;
