package org.baywright.language.ide.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;

import org.baywright.language.ide.text.Spelled;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.model.Mend;
import org.baywright.model.Problem;
import org.baywright.model.Span;

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
		if (define.thing() == Mend.Thing.FAULT) {
			return Optional.of(fault(file, text, define.name().substring(0, define.name().indexOf('.')),
					"fault " + Spelled.written(define.name().substring(define.name().indexOf('.') + 1)) + " \"\""));
		}
		String element = define.thing().word() + " " + Spelled.written(define.name());
		return Optional.of(new Draft().add(file, new Places(text).addElement(switch (define.thing()) {
		case TEST -> element + " \"\" {\n  results " + values(define, "good", "bad") + "\n  takes 5 min\n}";
		case STATE -> element + " : " + values(define, "off", "on");
		case HAZARD -> element + " \"\" {\n  caution \"\"\n}";
		case PART -> element + " \"\" {\n}";
		default -> element + " \"\"";
		})));
	}

	/** A thing that can have one value only tells nothing. */
	private static String values(Mend.Define define, String first, String second) {
		List<String> values = new ArrayList<>(define.values());
		if (values.isEmpty()) {
			values.add(first);
		}
		if (values.size() == 1) {
			values.add(values.contains(second) ? first : second);
		}
		return String.join(", ", values.stream().map(Spelled::writtenValue).toList());
	}

	private Draft fault(String file, String text, String part, String fault) {
		for (Map.Entry<String, String> source : sources.entrySet()) {
			var edit = new Places(source.getValue()).addLine("part", part, fault);
			if (edit.isPresent()) {
				return new Draft().add(source.getKey(), edit.get());
			}
		}
		return new Draft().add(file, new Places(text).addElement("part " + Spelled.written(part) + " \"\" {\n  " + fault + "\n}"));
	}
}
