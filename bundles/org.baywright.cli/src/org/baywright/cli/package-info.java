/**
 * The command line: one class for each command. Commands read arguments and choose what is shown; the work is done in
 * {@link org.baywright.cli.work}, what is shown is made in {@link org.baywright.cli.report}. Nothing here may load the
 * language before a command needs it, so that help and version come at once.
 */
package org.baywright.cli;
