package org.baywright.language.syntax;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.baywright.language.bay.Element;
import org.baywright.language.index.Kind;
import org.baywright.language.text.Advice;
import org.baywright.language.text.DateText;
import org.baywright.language.text.SourceText;
import org.baywright.language.text.Spelling;
import org.baywright.model.Mend;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;
import org.baywright.model.unit.Units;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** Says syntax errors plainly: what was found, and what would fit there. */
public final class SyntaxProblems {

	private static final int MOST_CHOICES = 8;
	private static final int SHORTEST_SLIP = 3;
	private static final Pattern WORD = Pattern.compile("[\\p{L}_][\\p{L}_0-9]*");
	private static final Pattern DECIMAL_COMMA = Pattern.compile("\\d+,\\d+");
	private static final Pattern BRACES = Pattern.compile("}[\\s}]*}");
	private static final String TYPOGRAPHIC_QUOTES = "\u201C\u201D\u201E\u00AB\u00BB";

	/** Whoever has so many has not written rules, but opened something else. */
	private static final int MOST_TOLD = 50;

	private final SourceText source;
	private final List<ILeafNode> leaves;

	private SyntaxProblems(SourceText source, List<ILeafNode> leaves) {
		this.source = source;
		this.leaves = leaves.stream().filter(leaf -> leaf.getGrammarElement() instanceof AbstractElement).toList();
	}

	/**
	 * Returns the problems of a file's syntax.
	 *
	 * @param source the text
	 * @param root the root of the tree; null if there is none
	 * @param leaves the visible leaves of the tree, in order
	 * @param errors nodes at which the parser reported something
	 */
	public static List<Problem> of(SourceText source, INode root, List<ILeafNode> leaves, List<INode> errors) {
		SyntaxProblems said = new SyntaxProblems(source, leaves);
		List<INode> ordered = new ArrayList<>(errors);
		ordered.sort(Comparator.comparingInt(INode::getOffset));
		List<Problem> problems = new ArrayList<>();
		int lastLine = 0;
		for (INode error : ordered) {
			Found found = Found.of(error, source.text().length());
			boolean strayBrace = found.text().equals("}") && !problems.isEmpty();
			Problem problem = said.say(error, found);
			// what the parser says of the rest of a line, or of a brace left over, follows from the first error
			if (problem.span().line() != lastLine && !strayBrace) {
				if (problems.size() == MOST_TOLD) {
					problems.add(new Problem(ProblemKind.SYNTAX, problem.span(),
							"From here on more of the text cannot be read; it is not told line by line.",
							"Put right what is told first. If this is no text of rules, take the file out of the project."));
					break;
				}
				problems.add(problem);
				lastLine = problem.span().line();
			}
		}
		problems.addAll(said.decimalCommas(root, problems));
		return problems;
	}

	/** Returns the leaves of a tree that are neither space nor comment, in order; none if there is no tree. */
	public static List<ILeafNode> visible(INode root) {
		List<ILeafNode> leaves = new ArrayList<>();
		if (root != null) {
			for (ILeafNode leaf : root.getLeafNodes()) {
				if (!leaf.isHidden()) {
					leaves.add(leaf);
				}
			}
		}
		return leaves;
	}

	/** A comma with digits on both sides and no blank can be read as a list, but is not meant as one. */
	private List<Problem> decimalCommas(INode root, List<Problem> known) {
		List<Problem> problems = new ArrayList<>();
		Matcher comma = DECIMAL_COMMA.matcher(source.text());
		while (root != null && comma.find()) {
			int at = source.text().indexOf(',', comma.start());
			ILeafNode leaf = NodeModelUtils.findLeafNodeAtOffset(root, at);
			if (leaf != null && leaf.getGrammarElement() instanceof Keyword
					&& known.stream().noneMatch(problem -> problem.span().offset() == comma.start())) {
				problems.add(decimalComma(comma));
			}
		}
		return problems;
	}

	private Problem decimalComma(Matcher comma) {
		Span span = source.span(comma.start(), comma.end() - comma.start());
		return Advice.write(span, List.of(comma.group().replace(',', '.')), ", with a point").problem(ProblemKind.SYNTAX, span,
				"`" + comma.group() + "` is written with a comma.");
	}

	/** The word at which the parser gave up; empty at the end of the file. */
	private record Found(String text, int offset) {

		static Found of(INode error, int end) {
			String[] data = error.getSyntaxErrorMessage().getIssueData();
			if (data != null && data.length == 2) {
				return new Found(data[1], Integer.parseInt(data[0]));
			}
			boolean hidden = error instanceof ILeafNode leaf && leaf.isHidden() && !error.getText().isBlank();
			return hidden ? new Found(error.getText(), error.getOffset()) : new Found("", end);
		}
	}

	private Problem say(INode error, Found found) {
		Optional<Problem> code = found.text().equals(CodeInSign.NO_RULE) ? CodeInSign.at(source.text(), found.offset())
				.map(wrong -> problem(wrong.from(), wrong.to() - wrong.from(), "A sign holds no trouble code.",
						Advice.words(wrong.advice())))
				: Optional.empty();
		if (code.isPresent()) {
			return code.get();
		}
		if (found.text().isEmpty()) {
			return atEnd(error);
		}
		Optional<Problem> slip = slip(found);
		if (slip.isPresent()) {
			return slip.get();
		}
		ILeafNode before = understoodBefore(found.offset());
		if (before != null && isBetweenElements(error, before)) {
			before = null;
		}
		List<String> choices = before == null ? topLevel(error) : Expectation.after(before);
		String word = found.text().strip();
		String message = "`" + shorten(word) + "` does not fit here.";
		Span span = source.span(found.offset(), Math.max(1, found.text().stripTrailing().length()));
		Advice advice = advice(span, word, before, choices);
		boolean nameWanted = !choices.isEmpty() && choices.stream()
				.allMatch(choice -> choice.equals("a name") || choice.startsWith("the name"));
		if (nameWanted && WORD.matcher(word).matches() && isKeyword(error, word)) {
			message = "`" + word + "` is a word of the language, so it cannot be a name as it stands.";
			advice = Advice.write(span, List.of("^" + word), ", or choose another name");
		} else if (choices.contains("`}`") && topLevel(error).contains("`" + word + "`") && isFirstInLine(found.offset())) {
			Element open = enclosing(before);
			message = "`" + word + "` begins before " + (open == null ? "the element above" : name(open)) + " ends.";
			int above = source.text().substring(0, found.offset()).stripTrailing().length();
			advice = new Advice("Add `}` before it, or what is missing there.", List.of(
					Advice.tidy("Close the element above", source.span(above, 0), "\n" + braces(open, found.offset()).stripTrailing())));
		}
		return advice.problem(ProblemKind.SYNTAX, span, message);
	}

	private boolean isFirstInLine(int offset) {
		String text = source.text();
		return text.substring(text.lastIndexOf('\n', Math.max(0, offset - 1)) + 1, offset).isBlank();
	}

	private Problem atEnd(INode error) {
		String text = source.text();
		int end = text.stripTrailing().length();
		ILeafNode before = understoodBefore(text.length());
		Element open = enclosing(before == null ? error : before);
		String what = open == null ? "the element" : name(open);
		List<String> choices = before == null ? List.of() : Expectation.after(before);
		Span span = source.span(Math.max(0, end - 1), Math.min(1, end));
		String gap = text.endsWith("\n") ? "" : "\n";
		Advice advice = choices.contains("`}`") ? new Advice("Add `}` at its end, or what is missing in it.",
				List.of(Advice.tidy("Close the element", source.span(text.length(), 0), gap + braces(open, text.length()))))
				: advice(span, "", before, choices);
		return advice.problem(ProblemKind.SYNTAX, span, "The text ends before " + what + " is complete.");
	}

	/** Returns a brace in a line of its own for each that an element opens before a place and does not close. */
	private String braces(Element open, int to) {
		INode node = open == null ? null : NodeModelUtils.findActualNodeFor(open);
		int from = node == null ? to : node.getOffset();
		int depth = 0;
		for (ILeafNode leaf : leaves) {
			if (leaf.getOffset() >= from && leaf.getOffset() < to) {
				depth += leaf.getText().equals("{") ? 1 : leaf.getText().equals("}") ? -1 : 0;
			}
		}
		StringBuilder out = new StringBuilder();
		for (int i = Math.max(1, depth); i > 0; i--) {
			out.append("  ".repeat(i - 1)).append("}\n");
		}
		return out.toString();
	}

	/** Slips of the hand that the parser sees only by their consequences. */
	private Optional<Problem> slip(Found found) {
		String word = found.text();
		if (word.startsWith("\"") && !isWhole(word.strip())) {
			return Optional.of(problem(found.offset(), word.stripTrailing().length(), "This text has no quote at its end.",
					closeText(found.offset(), word.stripTrailing())));
		}
		if (word.startsWith("/*")) {
			return Optional.of(problem(found.offset(), 2, "This comment has no end.", new Advice("Write */ at its end.",
					List.of(Advice.tidy("Close the comment", source.span(source.text().length(), 0), " */")))));
		}
		if (TYPOGRAPHIC_QUOTES.indexOf(word.charAt(0)) >= 0) {
			return Optional.of(problem(found.offset(), 1, "Quotes are written straight here, as \".",
					new Advice("Replace the typographic quotes by \".", List.of(straight(found.offset())))));
		}
		Matcher braces = BRACES.matcher(source.text()).region(found.offset(), source.text().length());
		if (braces.lookingAt()) {
			return Optional.of(problem(found.offset(), braces.end() - found.offset(),
					"`" + shorten(braces.group().replaceAll("\\s", "")) + "` does not fit here.", takeOut(source.span(found.offset(), braces.end() - found.offset()))));
		}
		if (word.equals(";")) {
			return Optional.of(problem(found.offset(), 1, "Lines end without `;` here.", takeOut(source.span(found.offset(), 1))));
		}
		int from = source.text().lastIndexOf('\n', Math.max(0, found.offset() - 1)) + 1;
		Matcher date = DateText.PATTERN.matcher(source.text()).region(from, source.text().length());
		while (date.find() && date.start() <= found.offset()) {
			if (date.end() > found.offset()) {
				Span span = source.span(date.start(), date.end() - date.start());
				return Optional.of(DateText.advice(span, date.group()).problem(ProblemKind.SYNTAX, span,
						"`" + date.group() + "` is no date as it is written here."));
			}
		}
		Matcher comma = DECIMAL_COMMA.matcher(source.text()).region(from, source.text().length());
		while (comma.find() && comma.start() <= found.offset()) {
			if (comma.end() >= found.offset()) {
				return Optional.of(decimalComma(comma));
			}
		}
		return Optional.empty();
	}

	/** A brace at the end of the line opens the element; of one further in only the author knows whether it is said. */
	private Advice closeText(int offset, String open) {
		String said = open.endsWith("{") ? open.substring(0, open.length() - 1).stripTrailing() : open;
		boolean clear = said.indexOf('{') < 0 && said.indexOf('}') < 0;
		return new Advice("Write \" at its end, on the same line.",
				clear ? List.of(Advice.tidy("Close the text", source.span(offset + said.length(), 0), "\"")) : List.of());
	}

	/** All typographic quotes in the rest of the line. */
	private Mend straight(int offset) {
		List<Mend.Piece> pieces = new ArrayList<>();
		String text = source.text();
		for (int at = offset; at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '\r'; at++) {
			if (TYPOGRAPHIC_QUOTES.indexOf(text.charAt(at)) >= 0) {
				pieces.add(new Mend.Piece(source.span(at, 1), "\""));
			}
		}
		return new Mend.Tidy("Write straight quotes", pieces);
	}

	private Advice takeOut(Span span) {
		String title = "Take it out";
		boolean says = source.text().substring(span.offset(), span.offset() + span.length()).codePoints().anyMatch(Character::isLetterOrDigit);
		return new Advice("Take it out.", List.of(says ? Advice.replace(title, span, "") : Advice.tidy(title, span, "")));
	}

	private static boolean isWhole(String quoted) {
		return quoted.length() > 1 && quoted.endsWith("\"") && !quoted.endsWith("\\\"");
	}

	private Advice advice(Span span, String word, ILeafNode before, List<String> choices) {
		List<String> words = choices.stream().filter(choice -> choice.startsWith("`"))
				.map(choice -> choice.substring(1, choice.length() - 1)).toList();
		// of a word of the language nobody would say that it is no unit
		Optional<String> unit = choices.contains(Expectation.UNIT) ? Units.standard().suggest(word) : Optional.empty();
		if (unit.isPresent()) {
			return Advice.meant(span, unit.get());
		}
		if (word.length() >= SHORTEST_SLIP && WORD.matcher(word).matches()) {
			Optional<String> near = Spelling.nearest(word.toLowerCase(Locale.ROOT),
					words.stream().filter(choice -> WORD.matcher(choice).matches()).toList());
			if (near.isPresent()) {
				return Advice.meant(span, near.get());
			}
		}
		if (choices.isEmpty() || word.equals("}")) {
			return before == null || choices.isEmpty() ? takeOut(span) : follows(before, choices);
		}
		return before == null ? Advice.words("Here begins a new element, with a word such as `rule`, `test`, `sign` or `part`.")
				: follows(before, choices);
	}

	private static Advice follows(ILeafNode before, List<String> choices) {
		return Advice.words("After `" + shorten(before.getText()) + "` comes " + list(choices) + ".");
	}

	/** Says descriptions before words of the language, and words before signs that mean the same. */
	private static String list(List<String> all) {
		List<String> choices = new ArrayList<>(all);
		if (choices.contains("`below`")) {
			choices.removeIf(choice -> choice.startsWith("`<") || choice.startsWith("`>"));
		}
		choices.sort(Comparator.comparing(choice -> choice.startsWith("`")));
		StringBuilder out = new StringBuilder();
		int shown = Math.min(choices.size(), MOST_CHOICES);
		for (int i = 0; i < shown; i++) {
			boolean last = i == choices.size() - 1;
			out.append(i == 0 ? "" : last ? " or " : ", ").append(choices.get(i));
		}
		return shown < choices.size() ? out.append(" and so on").toString() : out.toString();
	}

	private static List<String> topLevel(INode error) {
		EObject root = error.getRootNode().getGrammarElement();
		return root == null ? List.of()
				: Expectation.elements(GrammarUtil.getGrammar(root));
	}

	/** The last visible leaf in front of a place that the parser could put into its tree. */
	private ILeafNode understoodBefore(int offset) {
		int from = 0;
		int to = leaves.size();
		while (from < to) {
			int middle = (from + to) / 2;
			if (leaves.get(middle).getOffset() < offset) {
				from = middle + 1;
			} else {
				to = middle;
			}
		}
		return from == 0 ? null : leaves.get(from - 1);
	}

	/** Whether the words between two elements are wrong, and not those of the element in front. */
	private static boolean isBetweenElements(INode error, ILeafNode before) {
		return before.getText().equals("}") && error.getParent() == error.getRootNode();
	}

	private static boolean isKeyword(INode error, String word) {
		EObject root = error.getRootNode().getGrammarElement();
		return root != null && GrammarUtil.getAllKeywords(GrammarUtil.getGrammar(root))
				.contains(word);
	}

	private static Element enclosing(INode error) {
		for (EObject element = NodeModelUtils.findActualSemanticObjectFor(error); element != null; element = element
				.eContainer()) {
			if (element instanceof Element found) {
				return found;
			}
		}
		return null;
	}

	private static String name(Element element) {
		EStructuralFeature feature = element.eClass().getEStructuralFeature("name");
		String word = Kind.word(element.eClass());
		Object name = feature == null ? null : element.eGet(feature);
		return name == null ? "the " + word : "the " + word + " `" + name + "`";
	}

	private static String shorten(String text) {
		return text.length() <= 30 ? text : text.substring(0, 28) + "…";
	}

	private Problem problem(int offset, int length, String message, Advice advice) {
		return advice.problem(ProblemKind.SYNTAX, source.span(offset, length), message);
	}
}
