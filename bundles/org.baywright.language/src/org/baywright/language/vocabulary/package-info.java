/** The words of the language: its elements, their clauses and what each word means, in one place. */
package org.baywright.language.vocabulary;
