package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.baywright.language.bay.Acceptance;
import org.baywright.language.bay.Case;
import org.baywright.language.bay.Chain;
import org.baywright.language.bay.Code;
import org.baywright.language.bay.Element;
import org.baywright.language.bay.Exclusive;
import org.baywright.language.bay.Family;
import org.baywright.language.bay.Fault;
import org.baywright.language.bay.FaultConclusion;
import org.baywright.language.bay.Hazard;
import org.baywright.language.bay.Law;
import org.baywright.language.bay.Module;
import org.baywright.language.bay.Part;
import org.baywright.language.bay.Remark;
import org.baywright.language.bay.Repair;
import org.baywright.language.bay.Review;
import org.baywright.language.bay.Reviewer;
import org.baywright.language.bay.Rule;
import org.baywright.language.bay.RuleFile;
import org.baywright.language.bay.Sign;
import org.baywright.language.bay.SignOff;
import org.baywright.language.bay.State;
import org.baywright.language.bay.Test;
import org.baywright.language.bay.Tool;
import org.baywright.language.bay.Trait;
import org.baywright.language.bay.Workshop;
import org.baywright.language.index.FamilyTree;
import org.baywright.language.index.FileSymbols;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Symbol;
import org.baywright.language.text.SourceText;
import org.baywright.model.LeftOut;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/**
 * Translates one parsed file. An element with an error that leaves its meaning unknown is left out of the model; its
 * name stays known, so that one slip does not cause errors everywhere.
 */
public final class FileTranslator {

	private static final Comparator<Problem> ORDER = Comparator.comparing(Problem::span).thenComparing(Problem::severity)
			.thenComparing(Problem::id).thenComparing(Problem::message);

	/** Problems that hold whatever else an element with a syntax error says. */
	private static final Set<ProblemKind> CERTAIN = EnumSet.of(ProblemKind.UNKNOWN_NAME, ProblemKind.UNKNOWN_VALUE,
			ProblemKind.UNKNOWN_UNIT, ProblemKind.UNIT_MISMATCH, ProblemKind.DUPLICATE_NAME, ProblemKind.CODE_FORM,
			ProblemKind.VIN_FORM, ProblemKind.WRONG_DATE);

	private final Context context;
	private final List<INode> syntaxErrors;
	private final Declarations declarations;
	private final Workshops workshops;
	private final Clauses clauses;
	private final Work work;
	private final Rules rules;
	private final Jobs jobs;
	private final Peers peers;
	private final RuleBase.Builder out;
	private final List<String> dropped = new ArrayList<>();
	private final Map<String, Case> cases = new HashMap<>();

	private FileTranslator(SourceText source, List<INode> syntaxErrors, ProjectIndex index) {
		this.syntaxErrors = syntaxErrors;
		context = new Context(source, index);
		FamilyTree families = new FamilyTree(context::find);
		Limits limits = new Limits(context);
		Values values = new Values(context, limits);
		clauses = new Clauses(context);
		Conditions conditions = new Conditions(context, families, values);
		Scopes scopes = new Scopes(context, conditions);
		declarations = new Declarations(context, families, limits, values, scopes);
		workshops = new Workshops(context, limits);
		work = new Work(context, declarations, limits, values, scopes);
		rules = new Rules(context, conditions, values, clauses, scopes);
		jobs = new Jobs(context, families, limits, values);
		peers = new Peers(context, clauses);
		out = new RuleBase.Builder(source.file());
	}

	/**
	 * Translates a file.
	 *
	 * @param source its text
	 * @param content its syntax tree, which may have holes
	 * @param syntaxErrors nodes at which the syntax is wrong
	 * @param index the names of the project
	 */
	public static FileTranslation translate(SourceText source, RuleFile content, List<INode> syntaxErrors,
			ProjectIndex index) {
		FileTranslator translator = new FileTranslator(source, syntaxErrors, index);
		for (Element element : content.getElements()) {
			translator.element(element);
		}
		if (!syntaxErrors.isEmpty()) {
			translator.unread(content);
		}
		List<Problem> problems = translator.context.report.problems();
		problems.sort(ORDER);
		return new FileTranslation(translator.out, problems, translator.dropped, translator.context.used());
	}

	/** What seems to be missing may stand where nothing could be read. */
	private void unread(RuleFile content) {
		Unread unread = new Unread(context.source.text());
		for (Element element : content.getElements()) {
			ICompositeNode node = NodeModelUtils.findActualNodeFor(element);
			if (node != null && !hasSyntaxError(element)) {
				unread.read(node.getOffset(), node.getEndOffset());
			}
		}
		unread.leftOut().ifPresent(out.leftOut::add);
	}

	private void element(Element element) {
		if (!hasSyntaxError(element)) {
			translate(element);
			return;
		}
		int before = context.report.problems().size();
		translate(element);
		// what is missing may be what the parser could not read
		List<Problem> added = context.report.problems().subList(before, context.report.problems().size());
		added.removeIf(problem -> !CERTAIN.contains(problem.kind()));
	}

	private void translate(Element element) {
		context.report.begin();
		if (!isNamed(element) || isSecond(element)) {
			drop(element);
			return;
		}
		checkParts(element);
		clauses.once(element);
		EmptyTexts.report(element, context);
		if (element instanceof Family family) {
			out.families.add(declarations.family(family));
		} else if (element instanceof State state) {
			out.states.add(declarations.state(state));
		} else if (element instanceof Tool tool) {
			out.tools.add(new org.baywright.model.Tool(tool.getName(), Context.title(tool.getTitle(), tool.getName()),
					tool.getCost() == null ? BigDecimal.ZERO : tool.getCost(), name(tool)));
		} else if (element instanceof Workshop workshop) {
			out.workshops.add(workshops.workshop(workshop));
		} else if (element instanceof Hazard hazard) {
			out.hazards.add(declarations.hazard(hazard));
		} else if (element instanceof Module module) {
			out.modules.add(declarations.module(module));
		} else if (element instanceof Code code) {
			add(declarations.code(code), out.codes, element);
		} else if (element instanceof Sign sign) {
			out.signs.add(declarations.sign(sign));
		} else if (element instanceof Part part) {
			out.parts.add(declarations.part(part));
		} else if (element instanceof Test test) {
			add(work.test(test), out.tests, element);
		} else if (element instanceof Repair repair) {
			out.repairs.add(work.repair(repair));
		} else {
			whole(element);
		}
	}

	/** Elements that are right only as a whole. */
	private void whole(Element element) {
		if (element instanceof Exclusive exclusive) {
			addWhole(declarations.exclusive(exclusive), out.exclusives, element);
		} else if (element instanceof Law law) {
			addWhole(rules.law(law), out.laws, element);
		} else if (element instanceof Chain chain) {
			Optional<org.baywright.model.Chain> made = rules.chain(chain);
			addWhole(made, out.chains, element);
			if (made.isPresent() && out.chains.contains(made.get())) {
				out.rules.addAll(made.get().rules());
				out.laws.addAll(made.get().laws());
			}
		} else if (element instanceof Rule rule) {
			addWhole(rules.rule(rule), out.rules, element);
		} else if (element instanceof Case job) {
			addWhole(jobs.job(job), out.cases, element);
		} else if (element instanceof Review review) {
			addWhole(peers.review(review), out.reviews, element);
		} else if (element instanceof Remark remark) {
			addWhole(peers.remark(remark), out.remarks, element);
		} else if (element instanceof SignOff signOff) {
			addWhole(Optional.of(peers.signOff(signOff)), out.signOffs, element);
		} else if (element instanceof Reviewer reviewer) {
			addWhole(peers.reviewer(reviewer), out.reviewers, element);
		} else if (element instanceof Acceptance acceptance) {
			addWhole(peers.acceptance(acceptance), out.acceptances, element);
		}
	}

	private <T> void add(Optional<T> translated, List<T> to, Element element) {
		if (translated.isPresent()) {
			to.add(translated.get());
		} else {
			drop(element);
		}
	}

	private <T> void addWhole(Optional<T> translated, List<T> to, Element element) {
		boolean right = translated.isPresent() && !context.report.isBroken() && !hasSyntaxError(element);
		add(right ? translated : Optional.empty(), to, element);
	}

	private void drop(Element element) {
		EStructuralFeature feature = element.eClass().getEStructuralFeature("name");
		Object name = feature == null ? null : element.eGet(feature);
		String kind = Kind.word(element.eClass());
		dropped.add(name == null ? kind : kind + " " + name);
		if (element instanceof Rule || element instanceof Law) {
			Set<String> decides = new TreeSet<>();
			EcoreUtil2.getAllContentsOfType(element, FaultConclusion.class).forEach(said -> decides.addAll(references(said)));
			out.leftOut.add(new LeftOut(element instanceof Law, decides, references(element)));
		}
	}

	/** Returns the names that an element speaks of, as they are written. */
	private static Set<String> references(EObject element) {
		Set<String> names = new TreeSet<>();
		ICompositeNode node = NodeModelUtils.findActualNodeFor(element);
		if (node != null) {
			for (INode part : node.getAsTreeIterable()) {
				if (part.getGrammarElement() instanceof CrossReference) {
					names.add(NodeModelUtils.getTokenText(part));
				}
			}
		}
		return names;
	}

	private Span name(EObject element) {
		return context.source.span(element, element.eClass().getEStructuralFeature("name"));
	}

	/** The parser goes on behind an error as well as it can; what it then takes for an element may lack its name. */
	private static boolean isNamed(Element element) {
		EStructuralFeature feature = element.eClass().getEStructuralFeature("name");
		return feature == null || element.eGet(feature) != null;
	}

	private boolean hasSyntaxError(Element element) {
		ICompositeNode node = NodeModelUtils.findActualNodeFor(element);
		if (node == null) {
			return true;
		}
		int from = node.getOffset();
		int to = node.getEndOffset();
		String text = context.source.text();
		for (INode error : syntaxErrors) {
			int at = Math.min(error.getOffset(), text.length());
			// an error right behind an element may be the part of it that the parser could not read
			if (error.getEndOffset() >= from && (at <= to || at <= nextWord(text, to))) {
				return true;
			}
		}
		return false;
	}

	private static int nextWord(String text, int from) {
		int at = from;
		while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
			at++;
		}
		return at;
	}

	/** Reports a name that is taken already, and returns whether it is. */
	private boolean isSecond(EObject element) {
		Kind kind = Kind.of(element.eClass());
		if (kind == null) {
			return element instanceof Case job && isSecondJob(job);
		}
		String name = FileSymbols.reference(element);
		for (Symbol other : context.find(kind.isSubject() ? Key.subject(name) : Key.of(kind, name))) {
			if (other.element() == element) {
				return false;
			}
			boolean twoTraits = kind == Kind.TRAIT && other.kind() == Kind.TRAIT;
			if (!twoTraits) {
				boolean here = other.file().equals(context.source.file());
				context.report.error(ProblemKind.DUPLICATE_NAME, name(element),
						"There is already " + other.kind().aWord() + " `" + name + "`" + (here ? "." : " in " + other.file() + "."),
						"Choose another name.");
				return true;
			}
		}
		return false;
	}

	private boolean isSecondJob(Case job) {
		if (cases.putIfAbsent(job.getName(), job) == null) {
			return false;
		}
		context.report.error(ProblemKind.DUPLICATE_NAME, name(job),
				"There is already a job \"" + job.getName() + "\" in this file.", "Choose another name.");
		return true;
	}

	/** Traits share the name space of all that a condition can speak of. */
	private void checkParts(Element element) {
		if (element instanceof Family family) {
			for (Trait trait : family.getTraits()) {
				if (trait.getName() != null) {
					isSecond(trait);
				}
			}
		} else if (element instanceof Part part) {
			for (Fault fault : part.getFaults()) {
				if (fault.getName() != null && !isInPart(part, fault)) {
					isSecond(fault);
				}
			}
		}
	}

	private static boolean isInPart(Part part, Fault fault) {
		return part.getFaults().stream()
				.anyMatch(other -> other != fault && fault.getName().equals(other.getName()));
	}
}
