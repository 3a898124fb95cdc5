/** Wizards: new project, family, rule and file; examples; the export of a rule pack. */
package org.baywright.workbench.wizard;
