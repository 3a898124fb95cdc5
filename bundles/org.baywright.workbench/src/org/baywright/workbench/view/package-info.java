/** What all views on a project share: following the project, working aside, telling details with links. */
package org.baywright.workbench.view;
