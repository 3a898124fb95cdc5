/** The ten-minute walk: a view that leads from one step to the next. */
package org.baywright.workbench.walk;
