/** The view of findings: what the checks found, grouped by kind, each with its story, its lines and what to do. */
package org.baywright.presenter.findings;
