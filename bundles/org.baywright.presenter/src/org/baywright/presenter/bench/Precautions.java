package org.baywright.presenter.bench;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.words.Telling;
import org.baywright.presenter.Link;

/** What comes before anything else where some signs are there: "Do not start the vehicle." */
public final class Precautions {

	private static final String TITLE = "Before anything else";

	private Precautions() {
	}

	/** Returns what comes first, whatever the rules make of the rest: the same words once, with the first sign that asks for it. */
	static List<Link> of(RuleBase base, List<Reading> readings) {
		Map<String, Link> first = new LinkedHashMap<>();
		for (Reading reading : readings) {
			if (reading instanceof Reading.SignSeen seen && seen.present()) {
				base.sign(seen.subject()).ifPresent(sign -> sign.precautions().forEach(precaution -> {
					String text = Telling.precaution(precaution);
					first.putIfAbsent(text, new Link(text, sign.span()));
				}));
			}
		}
		return List.copyOf(first.values());
	}

	/** Returns the same as the first of the cautions; nothing where nothing comes first. */
	public static Optional<Caution> caution(RuleBase base, List<Reading> readings) {
		List<String> texts = of(base, readings).stream().map(Link::text).toList();
		return texts.isEmpty() ? Optional.empty() : Optional.of(new Caution(TITLE, texts, List.of(), List.of(), Span.NONE));
	}
}
