/** Which names are visible where, for the platform's services such as content assist and rename. */
package org.baywright.language.scoping;
