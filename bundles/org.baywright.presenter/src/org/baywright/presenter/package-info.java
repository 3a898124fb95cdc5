/** What the screens show, without a screen: each presenter turns rules and reports into what a view draws. */
package org.baywright.presenter;
