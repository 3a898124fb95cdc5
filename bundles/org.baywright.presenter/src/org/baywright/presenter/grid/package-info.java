/** The grid of tests and faults: which result of which test says what about which fault. */
package org.baywright.presenter.grid;
