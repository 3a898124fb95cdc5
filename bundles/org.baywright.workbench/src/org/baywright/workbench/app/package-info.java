/** The application of its own: window, menus, first perspective. An installation into another workbench leaves it out. */
package org.baywright.workbench.app;
