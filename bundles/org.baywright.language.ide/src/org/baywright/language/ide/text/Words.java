package org.baywright.language.ide.text;

import java.util.ArrayList;
import java.util.List;
import org.antlr.runtime.ANTLRStringStream;
import org.antlr.runtime.CommonToken;
import org.antlr.runtime.Token;
import org.baywright.language.ide.text.Word.Kind;
import org.baywright.language.parser.antlr.internal.InternalBayLexer;
import org.baywright.language.vocabulary.Vocabulary;

/** Cuts a text into words, whatever is wrong in it. */
public final class Words {

	private Words() {
	}

	/** Returns the words and comments of a text in their order, without the blanks. */
	public static List<Word> of(String text) {
		InternalBayLexer lexer = new InternalBayLexer(new ANTLRStringStream(text));
		List<Word> tokens = new ArrayList<>();
		int behind = 0;
		for (Token next = lexer.nextToken(); next.getType() != Token.EOF; next = lexer.nextToken()) {
			CommonToken token = (CommonToken) next;
			int from = token.getStartIndex();
			int to = Math.min(token.getStopIndex() + 1, text.length());
			if (from >= behind && to > from && token.getType() != InternalBayLexer.RULE_WS) {
				Word made = token(token.getType(), text, from, to);
				tokens.add(made);
				behind = made.end();
			}
		}
		return tokens;
	}

	private static Word token(int type, String text, int from, int to) {
		if (text.startsWith("/*", from) && type != InternalBayLexer.RULE_ML_COMMENT) {
			return new Word(Kind.COMMENT, text.substring(from), from);
		}
		if (text.charAt(from) == '"' && type != InternalBayLexer.RULE_STRING) {
			return new Word(Kind.STRING, text.substring(from, endOfLine(text, from)), from);
		}
		Kind kind = switch (type) {
		case InternalBayLexer.RULE_ID -> Kind.NAME;
		case InternalBayLexer.RULE_NUMBER -> Kind.NUMBER;
		case InternalBayLexer.RULE_STRING -> Kind.STRING;
		case InternalBayLexer.RULE_SL_COMMENT, InternalBayLexer.RULE_ML_COMMENT -> Kind.COMMENT;
		case InternalBayLexer.RULE_ANY_OTHER, Token.INVALID_TOKEN_TYPE -> Kind.OTHER;
		default -> Kind.KEYWORD;
		};
		return new Word(kind, text.substring(from, to), from);
	}

	/** Returns the offset of the line's end, without the characters that end it. */
	public static int endOfLine(String text, int offset) {
		int at = offset;
		while (at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
			at++;
		}
		return at;
	}

	/** Returns the offset of the beginning of a line. */
	public static int startOfLine(String text, int offset) {
		int at = Math.min(offset, text.length());
		while (at > 0 && text.charAt(at - 1) != '\n' && text.charAt(at - 1) != '\r') {
			at--;
		}
		return at;
	}

	/** Returns the blanks with which the line at an offset begins. */
	public static String indent(String text, int offset) {
		int start = startOfLine(text, offset);
		int at = start;
		while (at < text.length() && (text.charAt(at) == ' ' || text.charAt(at) == '\t')) {
			at++;
		}
		return text.substring(start, at);
	}

	/** Returns whether only blanks stand before an offset in its line. */
	public static boolean isFirstInLine(String text, int offset) {
		return text.substring(startOfLine(text, offset), offset).isBlank();
	}

	/**
	 * Returns the number of the word that begins the element in which an offset stands, or -1 if no element begins before
	 * it. A word that begins an element and stands at the very beginning of a line always begins one, so that a missing
	 * brace does no harm to what follows.
	 */
	public static int elementAt(String text, List<Word> tokens, int offset) {
		int depth = 0;
		int found = -1;
		for (int i = 0; i < tokens.size() && tokens.get(i).offset() < offset; i++) {
			Word token = tokens.get(i);
			if (token.is("{")) {
				depth++;
			} else if (token.is("}")) {
				depth = Math.max(0, depth - 1);
			} else if (beginsElement(text, tokens, i, depth)) {
				depth = 0;
				found = i;
			}
		}
		return found;
	}

	/** Returns whether a word begins an element at a depth of braces. */
	public static boolean beginsElement(String text, List<Word> tokens, int index, int depth) {
		Word token = tokens.get(index);
		if (token.kind() != Kind.KEYWORD || !Vocabulary.beginsElement(token.text())) {
			return false;
		}
		boolean ofFamily = token.is("family") && index > 0 && tokens.get(index - 1).is("base");
		boolean base = token.is("base") && (index + 1 == tokens.size() || !tokens.get(index + 1).is("family"));
		boolean head = startOfLine(text, token.offset()) == token.offset();
		return !ofFamily && !base && (head || depth == 0 && isFirstInLine(text, token.offset()));
	}

	/** Returns the number of the first word behind an element, given the number of the word that begins it. */
	public static int endOfElement(String text, List<Word> tokens, int start) {
		int depth = 0;
		for (int i = start; i < tokens.size(); i++) {
			Word token = tokens.get(i);
			if (i > start && !(i == start + 1 && tokens.get(start).is("base")) && beginsElement(text, tokens, i, depth)) {
				return i;
			}
			if (token.is("{")) {
				depth++;
			} else if (token.is("}") && --depth <= 0) {
				return i + 1;
			}
		}
		return tokens.size();
	}
}
