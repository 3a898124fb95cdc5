/** Where the command line meets the language and the analysis. */
package org.baywright.cli.work;
