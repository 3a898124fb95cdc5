/** The whole plan for a complaint. What it shows is made by {@code org.baywright.presenter.plan}. */
package org.baywright.workbench.view.plan;
