package org.baywright.presenter.bench;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

import org.baywright.model.Precaution;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Sign;
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
		standing(base, readings).forEach(sign -> sign.precautions().forEach(precaution -> {
			String text = Telling.precaution(precaution);
			first.putIfAbsent(text, new Link(text, sign.span()));
		}));
		return List.copyOf(first.values());
	}

	private static List<Sign> standing(RuleBase base, List<Reading> readings) {
		return readings.stream().filter(reading -> reading instanceof Reading.SignSeen seen && seen.present()).flatMap(reading -> base.sign(reading.subject()).stream()).toList();
	}

	/**
	 * Returns what to say of a step that needs something of the vehicle, where something comes first; the empty text where nothing does.
	 *
	 * @param needs what it needs, in words: "Ignition running"
	 * @param read whether no hand touches a part
	 */
	static String exception(RuleBase base, List<Reading> readings, String needs, boolean read) {
		Set<Precaution.Kind> kinds = standing(base, readings).stream().flatMap(sign -> sign.precautions().stream()).map(Precaution::kind).collect(Collectors.toSet());
		String forbidden = kinds.contains(Precaution.Kind.DO_NOT_DRIVE) || kinds.contains(Precaution.Kind.DO_NOT_START) ? "What must not be done still holds." : "";
		boolean safe = kinds.contains(Precaution.Kind.MAKE_SAFE);
		if (!safe && forbidden.isEmpty()) {
			return "";
		}
		String told = "This " + (read ? "reading" : "step") + " needs " + needs + (safe ? (read ? ", with hands off" : "") + "; make it safe again afterwards." : ".");
		return (told + " " + forbidden).strip();
	}

	/** Returns the same as the first of the cautions; nothing where nothing comes first. */
	public static Optional<Caution> caution(RuleBase base, List<Reading> readings) {
		List<String> texts = of(base, readings).stream().map(Link::text).toList();
		return texts.isEmpty() ? Optional.empty() : Optional.of(new Caution(TITLE, texts, List.of(), List.of(), Span.NONE));
	}
}
