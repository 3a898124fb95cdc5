package org.baywright.presenter.bench;

import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;

import org.baywright.model.Hazard;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.pack.sheet.Html;

/**
 * A hazard of a piece of work, with what to do about it.
 *
 * @param title what it is
 * @param cautions what to do, one sentence each
 * @param licensed whose work it is where a licence is required, one entry each
 * @param references the instruments that say so, with their edition
 * @param span where it is written
 */
public record Caution(String title, List<String> cautions, List<String> licensed, List<String> references, Span span) {

	public Caution {
		cautions = List.copyOf(cautions);
		licensed = List.copyOf(licensed);
		references = List.copyOf(references);
	}

	/** Returns hazards by their names. */
	static List<Caution> of(RuleBase base, Collection<String> hazards) {
		return hazards.stream().flatMap(name -> base.hazard(name).stream()).map(Caution::of).toList();
	}

	static Caution of(Hazard hazard) {
		return new Caution(hazard.title(), hazard.cautions(), hazard.licensed(), hazard.references(), hazard.span());
	}

	/** Returns it for a step that needs no hand on what it warns of. */
	Caution beforeHands() {
		return new Caution(title + ", before hands go near it", cautions, licensed, references, span);
	}

	/** Returns it with one more sentence on what to do. */
	Caution and(String sentence) {
		return new Caution(title, Stream.concat(cautions.stream(), Stream.of(sentence)).toList(), licensed, references, span);
	}

	/** Adds it to a page. */
	public void write(Html html) {
		html.open("div", "class", "caution", "role", "note").open("p").element("strong", "Caution: ").text(title).close().list(cautions);
		licensed.forEach(whose -> html.element("p", "Licensed work: " + whose));
		if (!references.isEmpty()) {
			html.element("p", "By: " + String.join("; ", references));
		}
		html.close();
	}
}
