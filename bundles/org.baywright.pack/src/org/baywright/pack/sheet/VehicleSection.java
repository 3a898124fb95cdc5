package org.baywright.pack.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

import org.baywright.model.Code;
import org.baywright.model.Cycle;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Hazard;
import org.baywright.model.Module;
import org.baywright.model.NamedValue;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Sign;
import org.baywright.model.Test;
import org.baywright.model.Trait;
import org.baywright.model.VinPattern;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;

/** Cautions, vehicles, signs and tests: what rules speak of. */
final class VehicleSection {

	private final RuleBase base;
	private final Words words;
	private final Html html;
	private final Gallery gallery;
	private final Map<String, List<Rule>> asking;

	VehicleSection(RuleBase base, Words words, Html html, Gallery gallery) {
		this.gallery = gallery;
		this.base = base;
		this.words = words;
		this.html = html;
		asking = Uses.of(base);
	}

	void write() {
		cautions();
		vehicles();
		signs();
		tests();
	}

	private void cautions() {
		html.open("section", "id", "cautions").element("h2", "Cautions");
		if (base.hazards().isEmpty()) {
			html.element("p", "The rules name no hazards. That does not mean that there are none.");
		}
		for (Hazard hazard : base.hazards()) {
			html.open("article", "id", "hazard-" + hazard.name(), "class", "caution");
			title("h3", hazard.title(), hazard.name());
			html.list(hazard.cautions()).open("dl").term("Licensed work", String.join("; ", hazard.licensed()))
					.term("Instruments", String.join("; ", hazard.references())).close().close();
		}
		html.close();
	}

	private void vehicles() {
		html.open("section", "id", "vehicles").element("h2", "Vehicles");
		for (Family family : base.families()) {
			html.open("article", "id", "family-" + family.name());
			title("h3", family.title(), family.name());
			html.open("dl");
			if (family.base()) {
				html.term("Stands for", family.kind() == Family.Kind.SYSTEM ? "a system that families have"
						: "what other families share; no vehicle belongs to it itself");
			}
			html.term("Builds on", family.parent().map(words::family).orElse(""));
			html.term("Has", Words.commas(family.systems().stream().map(words::family).toList()));
			for (Cycle cycle : family.cycles()) {
				base.state(cycle.state()).ifPresent(state -> html.term("Cycle of " + state.title(),
						Telling.cycle(cycle, new Domain.Names(state.values()))));
			}
			html.term("Identification", Words.commas(family.vins().stream().map(VehicleSection::vin).toList()));
			for (Trait trait : base.traitsOf(family.name()).values()) {
				html.term(trait.name(), values(trait));
			}
			html.close().close();
		}
		table("States", List.of("State", "Values"), base.states(),
				state -> List.of(state.title(), Words.commas(Telling.values(state))));
		boolean asking = base.modules().stream().anyMatch(module -> !new Telling(base).asking(module).isEmpty());
		table("Modules", asking ? List.of("Module", "In", "Answers in", "To ask it") : List.of("Module", "In", "Answers in"), base.modules(),
				module -> module(module, asking));
		table("Codes", List.of("Code", "Means", "Module", "Tested by the module"), base.codes(), this::code);
		html.close();
	}

	private static String vin(VinPattern vin) {
		return vin.pattern() + " …" + (vin.checkDigit() ? " (with check digit)" : "");
	}

	private static String values(Trait trait) {
		if (trait.domain() instanceof Domain.Quantity quantity) {
			return quantity.sayNumber(quantity.low()) + " to " + quantity.sayNumber(quantity.high());
		}
		return Words.commas(trait.domain().named().stream().map(NamedValue::title).toList());
	}

	private List<String> module(Module module, boolean asking) {
		List<String> cells = new ArrayList<>(List.of(module.title(),
				module.families().isEmpty() ? "every family"
						: Words.commas(module.families().stream().map(words::family).toList()),
				module.answersIn().isEmpty() ? "every state" : words.anySetting(module.answersIn())));
		if (asking) {
			cells.add(new Telling(base).asking(module).stream().map(line -> line.label() + ": " + Words.commas(line.texts()))
					.collect(Collectors.joining("; ")));
		}
		return cells;
	}

	private List<String> code(Code code) {
		return List.of(code.text().display(), code.title(), words.module(code.module()), new Telling(base).runs(code));
	}

	private interface Row<T> {
		List<String> cells(T element);
	}

	private <T> void table(String caption, List<String> columns, List<T> elements, Row<T> row) {
		if (elements.isEmpty()) {
			return;
		}
		html.open("table").element("caption", caption).open("thead").open("tr");
		columns.forEach(column -> html.element("th", column, "scope", "col"));
		html.close().close().open("tbody");
		for (T element : elements) {
			List<String> cells = row.cells(element);
			html.open("tr").element("th", cells.get(0), "scope", "row");
			cells.subList(1, cells.size()).forEach(cell -> html.element("td", cell));
			html.close();
		}
		html.close().close();
	}

	private void signs() {
		html.open("section", "id", "signs").element("h2", "Signs").open("dl");
		for (Sign sign : base.signs()) {
			html.open("dt", "id", "sign-" + sign.name()).text(sign.title()).close().open("dd");
			sign.precautions().forEach(precaution -> html.element("p", Telling.precaution(precaution), "class", "caution"));
			if (!sign.scope().isEvery()) {
				html.text("For " + words.scope(sign.scope()) + ". ");
			}
			if (sign.intermittent()) {
				html.text("Comes and goes: that it is not seen on the day proves nothing. ");
			}
			links(asking.getOrDefault(sign.name(), List.of()));
			html.close();
		}
		html.close().close();
	}

	private void links(List<Rule> rules) {
		if (rules.isEmpty()) {
			html.text("No rule asks for it.");
		}
		for (int i = 0; i < rules.size(); i++) {
			html.text(i == 0 ? "" : ", ").link("rule-" + rules.get(i).name(), rules.get(i).title());
		}
	}

	private void tests() {
		html.open("section", "id", "tests").element("h2", "Tests");
		for (Test test : base.tests()) {
			html.open("article", "id", "test-" + test.name());
			title("h3", test.title(), test.name());
			Cautions cautions = new Cautions(base, html);
			cautions.write(cautions.of(test));
			html.open("dl").known(new Telling(base).of(test)).close();
			gallery.write(test.pictures());
			html.open("p").text("Used by: ");
			links(asking.getOrDefault(test.name(), List.of()));
			html.close().close();
		}
		html.close();
	}

	private void title(String tag, String title, String name) {
		html.open(tag).text(title + " ").element("span", name, "class", "name").close();
	}
}
