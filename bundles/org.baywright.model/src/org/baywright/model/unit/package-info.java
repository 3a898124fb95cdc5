/**
 * Units of measure. Authors write units as the trade does; here they are read as codes of the Unified Code for Units of
 * Measure (UCUM) and converted exactly.
 *
 * <p>The definitions come from the UCUM library, which is loaded only when two different units meet.
 */
package org.baywright.model.unit;
