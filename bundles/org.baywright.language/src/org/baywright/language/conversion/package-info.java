/** Between the text of a rule file and the values it stands for. */
package org.baywright.language.conversion;
