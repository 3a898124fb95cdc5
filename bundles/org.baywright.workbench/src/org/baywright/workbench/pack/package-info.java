/** What is written for others, opened from the workbench: rule packs and sheets. */
package org.baywright.workbench.pack;
