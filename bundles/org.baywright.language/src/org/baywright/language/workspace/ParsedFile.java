package org.baywright.language.workspace;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.baywright.language.bay.BayFactory;
import org.baywright.language.bay.BuildsOn;
import org.baywright.language.bay.RuleFile;
import org.baywright.language.index.FileSymbols;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.index.Symbol;
import org.baywright.language.syntax.SyntaxProblems;
import org.baywright.language.syntax.Unreadable;
import org.baywright.language.text.Nesting;
import org.baywright.language.text.SourceText;
import org.baywright.language.translate.FileTranslation;
import org.baywright.language.translate.FileTranslator;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.resource.XtextResource;

/** One file of a project: its text, its syntax tree, and what was made of it. */
final class ParsedFile {

	private final SourceText source;
	private final XtextResource resource;
	private final RuleFile content;
	private final List<BuildsOn> buildsOn;
	private final List<INode> syntaxErrors;
	private final List<Problem> textProblems;
	private FileTranslation translation;
	private long linkedAt;

	ParsedFile(String file, RuleText text, OptionalInt tooDeepAt, XtextResource resource, long version) {
		this.resource = resource;
		linkedAt = version;
		source = new SourceText(file, text.text());
		IParseResult result = resource.getParseResult();
		content = result != null && result.getRootASTElement() instanceof RuleFile rules ? rules
				: BayFactory.eINSTANCE.createRuleFile();
		buildsOn = content.getElements().stream().filter(BuildsOn.class::isInstance).map(BuildsOn.class::cast)
				.filter(element -> element.getPath() != null).toList();
		syntaxErrors = new ArrayList<>();
		if (result != null) {
			result.getSyntaxErrors().forEach(syntaxErrors::add);
		}
		textProblems = new ArrayList<>(encoding(text.wrongAt()));
		INode root = result == null ? null : result.getRootNode();
		List<ILeafNode> leaves = SyntaxProblems.visible(root);
		List<Problem> syntax = SyntaxProblems.of(source, root, leaves, syntaxErrors);
		tooDeepAt.ifPresent(at -> {
			Problem tooDeep = tooDeep(at);
			textProblems.add(tooDeep);
			// what the parser makes of the line that was kept from it says nothing
			syntax.removeIf(problem -> problem.span().line() == tooDeep.span().line());
		});
		List<Problem> unreadable = Unreadable.of(source, leaves);
		// the parser stumbles over what does not show, and then over the rest of the line
		syntax.removeIf(problem -> unreadable.stream().anyMatch(hidden -> isHidden(hidden)
				&& hidden.span().line() == problem.span().line() && hidden.span().offset() <= problem.span().offset()));
		textProblems.addAll(syntax);
		unreadable.stream().filter(problem -> syntax.stream().noneMatch(known -> overlap(known.span(), problem.span())))
				.filter(problem -> text.wrongAt().isEmpty() || problem.kind() != ProblemKind.LOST_LETTER).forEach(textProblems::add);
	}

	private static boolean isHidden(Problem problem) {
		return problem.kind() == ProblemKind.HIDDEN_CHARACTER || problem.kind() == ProblemKind.LOST_LETTER;
	}

	private Problem tooDeep(int at) {
		return new Problem(ProblemKind.TOO_DEEP, source.span(at, 1),
				"Conditions are nested more than " + Nesting.MOST + " deep here, which is not read.",
				"Take out brackets that are not needed, or write several rules.");
	}

	private List<Problem> encoding(OptionalInt wrongAt) {
		if (wrongAt.isEmpty()) {
			return List.of();
		}
		return List.of(new Problem(ProblemKind.NOT_UTF8, source.span(wrongAt.getAsInt(), 1),
				"The file holds bytes that are no text in UTF-8.",
				"Save the file with the encoding UTF-8, and write the letter at this place again."));
	}

	SourceText source() {
		return source;
	}

	XtextResource resource() {
		return resource;
	}

	/** Forgets references to trees of other files, which may have been replaced since. */
	void linkAnew(long version) {
		if (linkedAt != version) {
			linkedAt = version;
			resource.relink();
		}
	}

	List<Symbol> symbols() {
		return FileSymbols.of(source.file(), content);
	}

	/** Returns where the file says that the project builds on another, as far as a path is written there. */
	List<BuildsOn> buildsOn() {
		return buildsOn;
	}

	/** Returns what is wrong with the file. A place that is no right text already is not judged by its meaning too. */
	List<Problem> problems() {
		List<Problem> all = new ArrayList<>(textProblems);
		for (Problem problem : translation.problems()) {
			if (textProblems.stream().noneMatch(text -> overlap(text.span(), problem.span()))) {
				all.add(problem);
			}
		}
		return all;
	}

	private static boolean overlap(Span one, Span other) {
		return one.offset() < other.offset() + other.length() && other.offset() < one.offset() + one.length();
	}

	/** Returns the translation, or null if it has to be made again. */
	FileTranslation translation() {
		return translation;
	}

	FileTranslation translate(ProjectIndex index) {
		translation = FileTranslator.translate(source, content, syntaxErrors, index);
		return translation;
	}
}
