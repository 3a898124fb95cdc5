/** The whole plan for a complaint: its figures, its tree as a picture, as a page to print and as lines of text. */
package org.baywright.presenter.plan;
