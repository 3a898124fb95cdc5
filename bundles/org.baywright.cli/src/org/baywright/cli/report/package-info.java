/** A checked project, and what was found in it as text for people, JSON, SARIF and JUnit XML. */
package org.baywright.cli.report;
