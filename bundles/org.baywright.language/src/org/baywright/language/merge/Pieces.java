package org.baywright.language.merge;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.baywright.language.BayStandaloneSetup;
import org.baywright.language.bay.Acceptance;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.BuildsOn;
import org.baywright.language.bay.Element;
import org.baywright.language.bay.Law;
import org.baywright.language.bay.Review;
import org.baywright.language.bay.RuleFile;
import org.baywright.language.bay.Workshop;
import org.baywright.language.index.FileSymbols;
import org.baywright.language.index.Refs;
import org.baywright.language.text.Nesting;
import org.baywright.language.vocabulary.Vocabulary;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.IParser;

/**
 * A file cut into pieces, which make up its text again.
 *
 * @param pieces the pieces in their order
 * @param end the blanks behind the last one
 */
public record Pieces(List<Piece> pieces, String end) {

	private static final String HEAD = "at the beginning of ";
	private static final String TAIL = "at the end of ";
	private static final Pattern EMPTY_LINE = Pattern.compile("\\n[ \\t]*\\n\\s*");

	/** Numbers those of the same name, over all files of a project. */
	static final class Numbers {
		private final Map<Piece.Key, Integer> seen = new HashMap<>();

		private Piece.Key next(String kind, String name) {
			return new Piece.Key(kind, name, seen.merge(new Piece.Key(kind, name, 0), 1, Integer::sum));
		}
	}

	/** Returns the file as one piece, for one that is no text of rules. */
	static Pieces whole(String file, String text) {
		return new Pieces(List.of(new Piece(new Piece.Key(Piece.FILE, file, 1), new Piece.Gap("", true), text)), "");
	}

	/**
	 * Cuts a file.
	 *
	 * @param file its path
	 * @param text its text, with lines that end in a line feed
	 * @return nothing if it cannot be read as rules
	 */
	public static Optional<Pieces> of(String file, String text) {
		return of(file, text, new Numbers());
	}

	static Optional<Pieces> of(String file, String text, Numbers numbers) {
		return parse(text).map(content -> {
			List<Piece> pieces = new ArrayList<>();
			int from = 0;
			for (Element element : content.getElements()) {
				ICompositeNode node = NodeModelUtils.findActualNodeFor(element);
				if (from == 0) {
					from = head(file, text, node.getOffset(), pieces);
				}
				int end = endOfLine(text, node.getEndOffset());
				add(pieces, numbers.next(kind(element), name(element)), text.substring(from, end));
				from = end;
			}
			String rest = text.substring(from);
			if (!rest.isBlank()) {
				add(pieces, new Piece.Key(Piece.COMMENT, (from == 0 ? HEAD : TAIL) + file, 1), rest.stripTrailing());
			}
			return new Pieces(List.copyOf(pieces), rest.substring(rest.stripTrailing().length()));
		});
	}

	/** Returns the syntax tree of a text; nothing if anything in it is wrong. */
	static Optional<RuleFile> parse(String text) {
		if (Nesting.of(text).tooDeepAt().isPresent()) {
			return Optional.empty();
		}
		IParseResult result = BayStandaloneSetup.injector().getInstance(IParser.class).parse(new StringReader(text));
		return !result.hasSyntaxErrors() && result.getRootASTElement() instanceof RuleFile content ? Optional.of(content) : Optional.empty();
	}

	/** A comment at the beginning belongs to the file when an empty line parts it from the first element. */
	private static int head(String file, String text, int first, List<Piece> pieces) {
		String before = text.substring(0, first);
		String comment = before.stripTrailing();
		if (comment.isBlank()) {
			return 0;
		}
		int end = -1;
		if (EMPTY_LINE.matcher(before.substring(comment.length())).lookingAt()) {
			end = comment.length();
		} else {
			Matcher empty = EMPTY_LINE.matcher(comment);
			for (int at = silentEnd(comment, 0); at >= 0; at = silentEnd(comment, at)) {
				if (empty.region(at, comment.length()).lookingAt()) {
					end = at;
				}
			}
		}
		if (end < 0) {
			return 0;
		}
		add(pieces, new Piece.Key(Piece.COMMENT, HEAD + file, 1), text.substring(0, end));
		return end;
	}

	/** Returns where the next comment from an offset on ends, without the end of its line; -1 if there is none. */
	private static int silentEnd(String text, int from) {
		int at = from;
		while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
			at++;
		}
		if (at >= text.length()) {
			return -1;
		}
		int end = Nesting.endOfSilent(text, at);
		return end > at ? text.substring(0, end).stripTrailing().length() : -1;
	}

	/** Returns where a comment on the same line ends; the given offset if something else follows there. */
	private static int endOfLine(String text, int from) {
		int at = from;
		int end = from;
		while (at < text.length() && text.charAt(at) != '\n') {
			if (Character.isWhitespace(text.charAt(at))) {
				at++;
				continue;
			}
			int silent = text.charAt(at) == '/' ? Nesting.endOfSilent(text, at) : at;
			if (silent == at || text.substring(at, silent).stripTrailing().contains("\n")) {
				return from;
			}
			end = text.substring(0, silent).stripTrailing().length();
			at = end;
		}
		return end;
	}

	private static void add(List<Piece> pieces, Piece.Key key, String text) {
		String body = text.stripLeading();
		pieces.add(new Piece(key, new Piece.Gap(text.substring(0, text.length() - body.length()), pieces.isEmpty()), body));
	}

	/** Returns the word with which an element begins. */
	static String kind(Element element) {
		return Vocabulary.of(element.eClass().getName()).map(org.baywright.language.vocabulary.Element::word)
				.orElseGet(() -> element.eClass().getName().toLowerCase(Locale.ROOT));
	}

	/** Returns what tells an element apart from others of its kind. */
	private static String name(Element element) {
		String name = FileSymbols.reference(element);
		if (name != null) {
			return name;
		} else if (element instanceof Law law) {
			return law.getTitle();
		} else if (element instanceof Review review) {
			return "of " + Refs.first(review, BayPackage.Literals.REVIEW__RULE).orElse("") + " by " + review.getReviewer() + " on "
					+ NodeModelUtils.getTokenText(NodeModelUtils.findActualNodeFor(review.getDate()));
		} else if (element instanceof Acceptance acceptance) {
			return acceptance.getFlaw();
		} else if (element instanceof BuildsOn buildsOn) {
			return buildsOn.getPath();
		} else if (element instanceof Workshop) {
			return ""; // a project has one
		}
		INode node = NodeModelUtils.findActualNodeFor(element);
		return NodeModelUtils.getTokenText(node).strip().replaceAll("\\s+", " ").replaceFirst("^" + kind(element) + " ", "");
	}
}
