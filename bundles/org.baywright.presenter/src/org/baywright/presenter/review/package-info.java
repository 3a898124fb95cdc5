/** Peer review without a display: what a change of the rules does to vehicles, told as a reviewer reads it. */
package org.baywright.presenter.review;
