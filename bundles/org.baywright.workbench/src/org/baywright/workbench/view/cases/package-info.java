/** The view of finished jobs. What it shows is made by {@code org.baywright.presenter.cases}. */
package org.baywright.workbench.view.cases;
