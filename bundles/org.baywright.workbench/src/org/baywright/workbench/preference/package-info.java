/** What a user can set. */
package org.baywright.workbench.preference;
