/** What a change of the rules does to vehicles. */
package org.baywright.analysis.difference;
