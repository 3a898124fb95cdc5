/** The view of findings. What it shows is made by {@code org.baywright.presenter.findings}. */
package org.baywright.workbench.view.findings;
