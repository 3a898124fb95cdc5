package org.baywright.presenter.picture;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.analysis.Verdict;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Named;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.words.Limits;
import org.baywright.model.words.Words;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.Say;

/** Makes nodes and edges of rules. */
final class PictureMaker {

	private static final String OR = " / ";
	private static final String ABOUT = "From left to right: what is found, the rules that ask for it, and what they say. A dashed line is one of several ways.";

	private final RuleBase base;
	private final Words words;
	private final Map<String, Node> nodes = new LinkedHashMap<>();
	private final Map<List<Object>, Edge> edges = new LinkedHashMap<>();

	PictureMaker(RuleBase base) {
		this.base = base;
		words = new Words(base);
	}

	Picture picture(RuleScope scope) {
		List<Rule> rules = scope.rules(base);
		rules.forEach(this::add);
		return new Picture(title(scope, rules.size()), ABOUT, List.copyOf(nodes.values()), List.copyOf(edges.values()),
				rules.size());
	}

	private String title(RuleScope scope, int count) {
		String family = scope.family().map(name -> " for " + words.family(name)).orElse("");
		String around = "";
		if (scope.around() instanceof RuleScope.Around.OneSign one) {
			around = " about “" + words.sign(one.sign()) + "”";
		} else if (scope.around() instanceof RuleScope.Around.OneFault one) {
			around = " about “" + words.fault(one.fault()) + "”";
		} else if (scope.around() instanceof RuleScope.Around.OneRule one) {
			around = " around “" + base.rule(one.rule()).map(Rule::title).orElse(one.rule()) + "”";
		}
		return Say.upper(Say.count(count, "rule")) + around + family;
	}

	private void add(Rule rule) {
		String test = rule.test().map(words::test).orElse("");
		Node node = node("rule:" + rule.name(), rule.test().isPresent() ? Node.Kind.RULE_WITH_TEST : Node.Kind.RULE,
				rule.title(), test, rule.span());
		rule.given().forEach(given -> asks(node.id(), given, Edge.Kind.GIVEN, false));
		for (Outcome outcome : rule.outcomes()) {
			String label = words.result(rule, outcome);
			for (Conclusion conclusion : outcome.conclusions()) {
				Verdict.of(conclusion).ifPresent(
						verdict -> edge(node.id(), verdict(verdict).id(), Edge.Kind.FOLLOWS, label, outcome.span()));
			}
		}
	}

	// ---- what is given -----------------------------------------------------------------------------------------

	private void asks(String rule, Condition condition, Edge.Kind kind, boolean denied) {
		condition.visit(
				(Condition.And and) -> parts(rule, and.parts(), kind, denied, denied),
				(Condition.Or or) -> parts(rule, or.parts(), kind, denied, !denied),
				(Condition.Not not) -> asks(rule, not.part(), kind, !denied),
				(Condition.Atom atom) -> atom(rule, atom, kind, denied));
	}

	private void parts(String rule, List<Condition> parts, Edge.Kind kind, boolean denied, boolean oneIsEnough) {
		Edge.Kind inner = oneIsEnough && parts.size() > 1 ? Edge.Kind.ALTERNATIVE : kind;
		parts.forEach(part -> asks(rule, part, inner, denied));
	}

	private void atom(String rule, Condition.Atom atom, Edge.Kind kind, boolean denied) {
		String not = denied ? "not " : "";
		atom.visit(
				(Condition.TraitIs is) -> { },
				(Condition.SignIs is) -> edge(sign(is.sign()).id(), rule, kind, is.present() != denied ? "" : "absent", is.span()),
				(Condition.TestIs is) -> {
					Node test = node("test:" + is.test(), Node.Kind.TEST, words.test(is.test()), "", span(base.test(is.test())));
					String values = base.test(is.test()).map(found -> Limits.say(is.values(), found.domain())).orElse("?");
					edge(test.id(), rule, kind, not + values, is.span());
				},
				(Condition.CodeIs is) -> {
					Node code = node("code:" + is.code(), Node.Kind.CODE, words.code(is.code()), "", span(base.code(is.code())));
					edge(code.id(), rule, kind, not + Say.lower(is.reading()), is.span());
				},
				(Condition.ModuleIs is) -> {
					Node module = node("module:" + is.module(), Node.Kind.MODULE, words.module(is.module()), "",
							span(base.module(is.module())));
					edge(module.id(), rule, kind, is.answers() != denied ? "answers" : "silent", is.span());
				},
				(Condition.VerdictIs is) -> edge(verdict(new Verdict(is.fault(), is.verdict())).id(), rule, kind,
						is.stands() != denied ? "" : "not", is.span()),
				(Condition.Unexplained is) -> edge(sign(is.sign()).id(), rule, kind, not + "unexplained", is.span()));
	}

	private Node sign(String name) {
		return node("sign:" + name, Node.Kind.SIGN, words.sign(name), "", span(base.sign(name)));
	}

	private Node verdict(Verdict verdict) {
		if (verdict.isReferral()) {
			return node("refers:" + verdict.fault(), Node.Kind.REFERRAL, "Refers to " + verdict.fault(), "", Span.NONE);
		}
		Node.Kind kind = switch (verdict.kind()) {
		case CONFIRMED -> Node.Kind.CONFIRMED;
		case SUSPECTED -> Node.Kind.SUSPECTED;
		case CLEARED -> Node.Kind.CLEARED;
		};
		return node(verdict.kind().word() + ":" + verdict.fault(), kind, words.fault(verdict.fault()),
				verdict.kind().word(), span(base.fault(verdict.fault())));
	}

	private static Span span(Optional<? extends Named> named) {
		return named.map(Named::span).orElse(Span.NONE);
	}

	private Node node(String id, Node.Kind kind, String title, String detail, Span span) {
		return nodes.computeIfAbsent(id, key -> new Node(id, kind, title, detail, span));
	}

	/** What follows between the same two things is drawn once, with all results that lead there. */
	private void edge(String from, String to, Edge.Kind kind, String label, Span span) {
		List<Object> key = kind == Edge.Kind.FOLLOWS ? List.of(from, to, kind) : List.of(from, to, kind, label);
		edges.merge(key, new Edge(from, to, kind, label, span), (old, more) -> old.label().equals(label) ? old
				: new Edge(from, to, kind, old.label() + OR + label, old.span()));
	}
}
