/** Help inside the window: a view of pages that needs no browser. */
package org.baywright.workbench.help;
