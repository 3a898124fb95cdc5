/** The application of its own: window, menus, welcome, help. An installation into another workbench leaves it out. */
package org.baywright.application;
