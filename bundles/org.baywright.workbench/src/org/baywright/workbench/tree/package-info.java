/** What the platform's project tree does with rules. */
package org.baywright.workbench.tree;
