/** The bench: one vehicle, its findings entered one by one, and what the rules make of them. */
package org.baywright.presenter.bench;
