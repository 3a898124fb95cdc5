package org.baywright.language.ide.mining;

import java.util.List;

/**
 * What is known of a thing, told at the line that declares it.
 *
 * @param offset where the thing's name stands
 * @param text a few words, such as "3 rules"
 * @param references names of the rules, repairs and jobs that are counted, sorted
 */
public record Mining(int offset, String text, List<String> references) {

	public Mining {
		references = List.copyOf(references);
	}
}
