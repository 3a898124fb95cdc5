package org.baywright.language.ide.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Fix;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.model.Span;

/** Makes changes of texts of the fixes that flaws carry. */
final class FlawFixes {

	private final SortedMap<String, String> sources;

	private final Signature signature;

	FlawFixes(SortedMap<String, String> sources, Signature signature) {
		this.sources = sources;
		this.signature = signature;
	}

	List<QuickFix> of(Flaw flaw) {
		List<QuickFix> fixes = new ArrayList<>();
		for (Fix fix : flaw.fixes()) {
			draft(flaw, fix).flatMap(draft -> draft.done(fix.title(), flaw.id(), sources)).ifPresent(fixes::add);
		}
		return fixes;
	}

	private Optional<Draft> draft(Flaw flaw, Fix fix) {
		if (fix instanceof Fix.AddElement add) {
			String file = flaw.span().file();
			return at(flaw.span()).map(text -> new Draft().add(file, new Places(text).addElement(signed(add.text(), text).replace(Fix.AddElement.UNSIGNED, signature.clause()))));
		}
		if (fix instanceof Fix.Withdraw withdraw) {
			return at(withdraw.at()).flatMap(text -> new Places(text).withdraw(withdraw.at().offset()))
					.map(edit -> new Draft().add(withdraw.at().file(), edit));
		}
		if (fix instanceof Fix.ReplaceText replace) {
			return at(replace.within()).flatMap(text -> replaced(text, replace));
		}
		if (fix instanceof Fix.RemoveText remove) {
			Span span = remove.span();
			return at(span).map(text -> new Draft().add(span.file(),
					new Places(text).remove(span.offset(), span.offset() + span.length())));
		}
		if (fix instanceof Fix.RewriteText rewrite) {
			Span span = rewrite.span();
			return at(span).map(text -> new Draft().add(span.file(), new TextEdit(span.offset(), span.length(), rewrite.now())));
		}
		return everywhere(fix);
	}

	/** A rule is signed by its author where that is known; else a problem of the text tells that it is not. */
	private String signed(String element, String text) {
		boolean rule = element.startsWith("rule ") && element.endsWith("\n}");
		return signature.clause(text).filter(by -> rule).map(by -> element.substring(0, element.length() - 1) + "  " + by + "\n}").orElse(element);
	}

	private Optional<String> at(Span span) {
		return Optional.ofNullable(sources.get(span.file()));
	}

	private static Optional<Draft> replaced(String text, Fix.ReplaceText replace) {
		Span within = replace.within();
		int at = text.indexOf(replace.old(), within.offset());
		boolean there = at >= 0 && at + replace.old().length() <= within.offset() + within.length();
		return there ? Optional.of(new Draft().add(within.file(), new TextEdit(at, replace.old().length(), replace.now())))
				: Optional.empty();
	}

	private Optional<Draft> everywhere(Fix fix) {
		Draft draft = new Draft();
		boolean found = false;
		for (Map.Entry<String, String> entry : sources.entrySet()) {
			Places places = new Places(entry.getValue());
			if (fix instanceof Fix.AddLine add) {
				var edit = places.addLine(add.kind(), add.name(), add.line());
				edit.ifPresent(change -> draft.add(entry.getKey(), change));
				found |= edit.isPresent();
			} else if (fix instanceof Fix.RemoveRule remove) {
				var edit = places.remove("rule", remove.rule());
				edit.ifPresent(change -> draft.add(entry.getKey(), change));
				// a review of a rule that is gone would be an error
				places.removeAll(List.of("review"), remove.rule()).forEach(change -> draft.add(entry.getKey(), change));
				places.removeAll(List.of("remark", "on"), remove.rule()).forEach(change -> draft.add(entry.getKey(), change));
				found |= edit.isPresent();
			}
		}
		return found ? Optional.of(draft) : Optional.empty();
	}
}
