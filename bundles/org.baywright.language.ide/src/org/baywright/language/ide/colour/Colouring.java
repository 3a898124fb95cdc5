package org.baywright.language.ide.colour;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.baywright.language.ide.names.Target;
import org.baywright.language.ide.names.Usages;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;
import org.baywright.language.vocabulary.Vocabulary;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.INode;

/** Colours words by what they mean; where the syntax is wrong, by what they look like. */
public final class Colouring {

	private Colouring() {
	}

	/**
	 * Returns a colour for each word that is not plain, in the order of the text.
	 *
	 * @param text the file
	 * @param root its syntax tree, or null
	 * @param names what its names mean
	 */
	public static List<Coloured> of(String text, INode root, List<Usages.Named> names) {
		TreeMap<Integer, Coloured> coloured = new TreeMap<>();
		Set<Integer> units = units(root);
		for (Usages.Named named : names) {
			int offset = named.use().offset();
			coloured.put(offset, new Coloured(offset, named.use().length(), colour(named.target()),
					named.use().declaration()));
		}
		for (Word word : Words.of(text)) {
			Colour colour = units.contains(word.offset()) ? Colour.UNIT : colour(word);
			boolean named = covers(coloured, word.offset());
			if (colour != null && !named) {
				coloured.put(word.offset(), new Coloured(word.offset(), word.text().length(), colour, false));
			}
		}
		return new ArrayList<>(coloured.values());
	}

	private static boolean covers(TreeMap<Integer, Coloured> coloured, int offset) {
		var before = coloured.floorEntry(offset);
		return before != null && offset < before.getKey() + before.getValue().length();
	}

	private static Colour colour(Target target) {
		return target.value().isPresent() ? Colour.VALUE : Colour.valueOf(target.kind().name());
	}

	private static Colour colour(Word word) {
		return switch (word.kind()) {
		case KEYWORD -> !word.isWord() ? null : Vocabulary.isVerdict(word.text()) ? Colour.VERDICT : Colour.KEYWORD;
		case NUMBER -> Colour.NUMBER;
		case STRING -> Colour.TEXT;
		case COMMENT -> Colour.COMMENT;
		default -> null;
		};
	}

	/** Returns where the words of units begin. */
	private static Set<Integer> units(INode root) {
		Set<Integer> offsets = new TreeSet<>();
		if (root != null) {
			for (INode node : root.getAsTreeIterable()) {
				if (node.getGrammarElement() instanceof RuleCall call && call.getRule().getName().equals("Unit")) {
					node.getLeafNodes().forEach(leaf -> offsets.add(leaf.getOffset()));
				}
			}
		}
		return offsets;
	}
}
