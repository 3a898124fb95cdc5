/** A job on the bench by questions and answers. */
package org.baywright.cli.bench;
