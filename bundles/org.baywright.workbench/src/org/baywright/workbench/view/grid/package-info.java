/** The grid of tests and faults. What it shows is made by {@code org.baywright.presenter.grid}. */
package org.baywright.workbench.view.grid;
