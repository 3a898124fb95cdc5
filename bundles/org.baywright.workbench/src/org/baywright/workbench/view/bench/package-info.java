/** The bench for one vehicle. What it shows is made by {@code org.baywright.presenter.bench}. */
package org.baywright.workbench.view.bench;
