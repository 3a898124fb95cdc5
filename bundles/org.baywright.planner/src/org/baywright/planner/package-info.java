/** What to do next on a vehicle, and the whole plan to the cause, at the least expected cost. */
package org.baywright.planner;
