/** The bench: one vehicle, its findings entered one by one, what the rules make of them, and what is done then, to a verified repair or a referral. */
package org.baywright.presenter.bench;
