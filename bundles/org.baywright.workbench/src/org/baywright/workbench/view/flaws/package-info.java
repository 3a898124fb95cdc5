/** The view of flaws. What it shows is made by {@code org.baywright.presenter.flaws}. */
package org.baywright.workbench.view.flaws;
