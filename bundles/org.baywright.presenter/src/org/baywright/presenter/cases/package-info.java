/** The view of finished jobs: which the rules bring to their known end, which rule decided, and why others fail. */
package org.baywright.presenter.cases;
