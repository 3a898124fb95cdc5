/** The view of flaws: what the checks found, grouped by kind, each with its story, its lines and what to do. */
package org.baywright.presenter.flaws;
