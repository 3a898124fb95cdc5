package org.baywright.language.ide.fix;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;

import org.baywright.language.ide.text.TextEdit;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.Hazard;
import org.baywright.model.Mend;
import org.baywright.model.Module;
import org.baywright.model.NamedValue;
import org.baywright.model.Part;
import org.baywright.model.Problem;
import org.baywright.model.Scope;
import org.baywright.model.Sign;
import org.baywright.model.Skill;
import org.baywright.model.Span;
import org.baywright.model.State;
import org.baywright.model.Test;
import org.baywright.model.Tool;
import org.baywright.model.write.RuleWriter;

/** Makes changes of texts of what would mend a problem. */
final class ProblemFixes {

	private final SortedMap<String, String> sources;
	private final Signature signature;

	ProblemFixes(SortedMap<String, String> sources, Signature signature) {
		this.sources = sources;
		this.signature = signature;
	}

	List<QuickFix> of(Problem problem) {
		String text = sources.get(problem.span().file());
		List<QuickFix> fixes = new ArrayList<>();
		if (text != null) {
			for (Mend mend : problem.mends()) {
				draft(mend, problem.span().file(), text).flatMap(draft -> draft.done(mend.title(), problem.id(), sources))
						.map(fix -> fix.mending(mend)).ifPresent(fixes::add);
			}
		}
		return fixes;
	}

	private Optional<Draft> draft(Mend mend, String file, String text) {
		if (mend instanceof Mend.Write write) {
			return Optional.of(pieces(write.pieces()));
		}
		if (mend instanceof Mend.Tidy tidy) {
			return Optional.of(pieces(tidy.pieces()));
		}
		if (mend instanceof Mend.Name name) {
			return Optional.of(pieces(List.of(new Mend.Piece(name.span(), name.text()))));
		}
		if (mend instanceof Mend.AddClauses add) {
			List<String> lines = new ArrayList<>(add.lines());
			if (add.signed()) {
				lines.add(signature.clause(text).orElse(signature.clauseOf("\"\"")));
			}
			return new Places(text).addLine(add.element(), add.name(), String.join("\n", lines))
					.map(edit -> new Draft().add(file, edit));
		}
		return mend instanceof Mend.Define define ? define(define, file, text) : Optional.empty();
	}

	private static Draft pieces(List<Mend.Piece> pieces) {
		Draft draft = new Draft();
		for (Mend.Piece piece : pieces) {
			Span span = piece.span();
			draft.add(span.file(), new TextEdit(span.offset(), span.length(), piece.text()));
		}
		return draft;
	}

	/** Defines what a name that means nothing may be meant to be; its author fills in the rest. */
	private Optional<Draft> define(Mend.Define define, String file, String text) {
		return Optional.of(define.thing() == Mend.Thing.FAULT ? fault(define.name(), file, text)
				: new Draft().add(file, new Places(text).addElement(element(define))));
	}

	private static String element(Mend.Define define) {
		RuleWriter writer = new RuleWriter();
		String name = define.name();
		return switch (define.thing()) {
		case FAMILY -> writer.text(new Family(name, "", Optional.empty(), false, List.of(), List.of(), Span.NONE));
		case STATE -> writer.text(new State(name, name, values(define, "off", "on"), Span.NONE));
		case TOOL -> writer.text(new Tool(name, "", BigDecimal.ZERO, Span.NONE));
		case HAZARD -> writer.text(new Hazard(name, "", List.of(""), List.of(), List.of(), Span.NONE));
		case MODULE -> writer.text(new Module(name, "", List.of(), List.of(), List.of(), BigDecimal.ZERO, BigDecimal.ZERO, Span.NONE));
		case SIGN -> writer.text(new Sign(name, "", Scope.EVERY, false, List.of(), Span.NONE));
		case PART -> writer.text(new Part(name, "", Optional.empty(), List.of(), List.of(), Span.NONE));
		case TEST -> writer.text(new Test(name, "", new Domain.Names(values(define, "good", "bad")), Optional.empty(), List.of(), List.of(),
				List.of(), BigDecimal.valueOf(5), BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(), List.of(), Span.NONE));
		case FAULT -> throw new IllegalArgumentException("a fault is a clause of its part");
		};
	}

	/** A thing that can have one value only tells nothing. */
	private static List<NamedValue> values(Mend.Define define, String first, String second) {
		List<String> values = new ArrayList<>(define.values());
		if (values.isEmpty()) {
			values.add(first);
		}
		if (values.size() == 1) {
			values.add(values.contains(second) ? first : second);
		}
		return values.stream().map(value -> new NamedValue(value, value, Span.NONE)).toList();
	}

	private Draft fault(String name, String file, String text) {
		String part = name.substring(0, name.indexOf('.'));
		Fault fault = new Fault(name, "", part, 0, Span.NONE);
		for (Map.Entry<String, String> source : sources.entrySet()) {
			var edit = new Places(source.getValue()).addLine("part", part, RuleWriter.clause(fault));
			if (edit.isPresent()) {
				return new Draft().add(source.getKey(), edit.get());
			}
		}
		return new Draft().add(file, new Places(text)
				.addElement(new RuleWriter().text(new Part(part, "", Optional.empty(), List.of(), List.of(fault), Span.NONE))));
	}
}
