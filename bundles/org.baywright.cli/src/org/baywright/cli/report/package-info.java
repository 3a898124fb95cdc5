/** What was found, as text for people, SARIF and JUnit XML. */
package org.baywright.cli.report;
