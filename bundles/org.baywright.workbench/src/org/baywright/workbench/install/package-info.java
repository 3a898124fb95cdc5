/** Whether an installation works. */
package org.baywright.workbench.install;
