/** The layout of rule files. */
package org.baywright.language.formatting2;
