/** The workbench: the platform's window around the language, its proofs and its presenters. Screens hold no logic. */
package org.baywright.workbench;
