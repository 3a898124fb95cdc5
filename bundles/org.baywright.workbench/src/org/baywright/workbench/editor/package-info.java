/**
 * The platform's Generic Editor with the language's services. One class for each thing the platform asks; each takes the
 * text as the editor has it, asks on a worker thread, and drops an answer that comes too late.
 */
package org.baywright.workbench.editor;
