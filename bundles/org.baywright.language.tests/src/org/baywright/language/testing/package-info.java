/** Helpers for tests of the language: sample projects and texts with the findings marked in them. */
package org.baywright.language.testing;
