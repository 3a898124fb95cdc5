/** The picture of the rules: what is given, the rules with their tests, what follows; laid out and drawn as SVG. */
package org.baywright.presenter.picture;
