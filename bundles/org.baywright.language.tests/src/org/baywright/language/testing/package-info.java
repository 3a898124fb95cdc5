/** Helpers for tests of the language: sample projects and texts with the flaws marked in them. */
package org.baywright.language.testing;
