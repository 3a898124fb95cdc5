package org.baywright.language.ide.server;

import java.util.ArrayList;
import java.util.List;
import org.baywright.language.ide.colour.Colour;
import org.baywright.language.ide.colour.Coloured;
import org.baywright.language.ide.text.Words;
import org.baywright.language.text.SourceText;
import org.baywright.model.Span;
import org.eclipse.lsp4j.SemanticTokenModifiers;
import org.eclipse.lsp4j.SemanticTokenTypes;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensLegend;

/** Says colours by the protocol's own kinds of words, which every theme of an editor knows. */
final class SemanticColours {

	private static final int NUMBERS_PER_WORD = 5;

	static final SemanticTokensLegend LEGEND = new SemanticTokensLegend(
			List.of(SemanticTokenTypes.Keyword, SemanticTokenTypes.Class, SemanticTokenTypes.Property, SemanticTokenTypes.Enum,
					SemanticTokenTypes.Struct, SemanticTokenTypes.Decorator, SemanticTokenTypes.Namespace, SemanticTokenTypes.Event,
					SemanticTokenTypes.Variable, SemanticTokenTypes.Interface, SemanticTokenTypes.Parameter,
					SemanticTokenTypes.Function, SemanticTokenTypes.Method, SemanticTokenTypes.Macro, SemanticTokenTypes.EnumMember,
					SemanticTokenTypes.Number, SemanticTokenTypes.Type, SemanticTokenTypes.String, SemanticTokenTypes.Comment,
					SemanticTokenTypes.Operator),
			List.of(SemanticTokenModifiers.Declaration));

	private SemanticColours() {
	}

	private static String type(Colour colour) {
		return switch (colour) {
		case KEYWORD -> SemanticTokenTypes.Keyword;
		case FAMILY -> SemanticTokenTypes.Class;
		case TRAIT -> SemanticTokenTypes.Property;
		case STATE -> SemanticTokenTypes.Enum;
		case TOOL -> SemanticTokenTypes.Struct;
		case HAZARD -> SemanticTokenTypes.Decorator;
		case MODULE -> SemanticTokenTypes.Namespace;
		case CODE -> SemanticTokenTypes.Event;
		case SIGN -> SemanticTokenTypes.Variable;
		case PART -> SemanticTokenTypes.Interface;
		case FAULT -> SemanticTokenTypes.Parameter;
		case TEST -> SemanticTokenTypes.Function;
		case RULE -> SemanticTokenTypes.Method;
		case REPAIR -> SemanticTokenTypes.Macro;
		case VALUE -> SemanticTokenTypes.EnumMember;
		case NUMBER -> SemanticTokenTypes.Number;
		case UNIT -> SemanticTokenTypes.Type;
		case TEXT -> SemanticTokenTypes.String;
		case COMMENT -> SemanticTokenTypes.Comment;
		case VERDICT -> SemanticTokenTypes.Operator;
		};
	}

	/** Returns the words, each by its distance from the one before; one over several lines is cut at their ends. */
	static SemanticTokens of(SourceText text, List<Coloured> words) {
		List<Integer> data = new ArrayList<>(words.size() * NUMBERS_PER_WORD);
		int line = 0;
		int column = 0;
		for (Coloured word : words) {
			int type = LEGEND.getTokenTypes().indexOf(type(word.colour()));
			int at = word.offset();
			int end = word.offset() + word.length();
			while (at < end) {
				Span rest = text.span(at, end - at);
				int pieceEnd = rest.line() == rest.endLine() ? end : endOfLine(text.text(), at);
				if (pieceEnd > at) {
					int deltaLine = rest.line() - 1 - line;
					data.addAll(List.of(deltaLine, deltaLine == 0 ? rest.column() - 1 - column : rest.column() - 1, pieceEnd - at,
							type, word.declaration() ? 1 : 0));
					line = rest.line() - 1;
					column = rest.column() - 1;
				}
				at = pieceEnd == end ? end : nextLine(text.text(), pieceEnd);
			}
		}
		return new SemanticTokens(data);
	}

	private static int endOfLine(String text, int offset) {
		return Words.endOfLine(text, offset);
	}

	private static int nextLine(String text, int lineEnd) {
		return text.startsWith("\r\n", lineEnd) ? lineEnd + 2 : lineEnd + 1;
	}
}
