/** What the menus and keys do. */
package org.baywright.workbench.command;
