/** Trouble codes in the forms of their standards, and vehicle identification numbers. */
package org.baywright.model.code;
