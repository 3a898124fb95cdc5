/** The export of a rule pack as a dialog shows it. */
package org.baywright.presenter.packing;
