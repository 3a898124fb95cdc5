package org.baywright.pack.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.baywright.model.Case;
import org.baywright.model.Conclusion;
import org.baywright.model.Fault;
import org.baywright.model.Meaning;
import org.baywright.model.Part;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;

/** Faults with how they are found, repairs, and finished jobs. */
final class FaultSection {

	private final RuleBase base;
	private final Words words;
	private final Html html;
	private final Gallery gallery;
	private final Map<String, Map<VerdictKind, List<Rule>>> rules = new LinkedHashMap<>();
	private final Map<String, List<Repair>> repairs = new LinkedHashMap<>();

	FaultSection(RuleBase base, Words words, Html html, Gallery gallery) {
		this.gallery = gallery;
		this.base = base;
		this.words = words;
		this.html = html;
		for (Rule rule : base.rules()) {
			rule.outcomes().stream().flatMap(outcome -> outcome.conclusions().stream())
					.filter(Conclusion.OnFault.class::isInstance).map(Conclusion.OnFault.class::cast)
					.map(on -> rules.computeIfAbsent(on.fault(), key -> new LinkedHashMap<>())
							.computeIfAbsent(on.verdict(), key -> new ArrayList<>()))
					.filter(list -> list.isEmpty() || list.get(list.size() - 1) != rule).forEach(list -> list.add(rule));
		}
		for (Repair repair : base.repairs()) {
			repair.fixes().forEach(fault -> repairs.computeIfAbsent(fault, key -> new ArrayList<>()).add(repair));
		}
	}

	void write() {
		faults();
		repairs();
		jobs();
	}

	private void faults() {
		html.open("section", "id", "faults").element("h2", "Faults");
		for (Part part : base.parts()) {
			html.open("article", "id", "part-" + part.name()).open("h3").text(part.title() + " ")
					.element("span", part.name(), "class", "name").close();
			part.place().ifPresent(place -> html.element("p", "Where: " + place));
			gallery.write(part.pictures());
			if (!part.hazards().isEmpty()) {
				html.element("p", "Hazards: " + Words.commas(part.hazards().stream().map(words::hazard).toList()));
			}
			part.faults().forEach(this::fault);
			html.close();
		}
		html.close();
	}

	private void fault(Fault fault) {
		html.open("h4", "id", "fault-" + fault.name()).text(fault.title() + " ")
				.element("span", fault.name(), "class", "name").close().open("dl");
		html.term("Seen", fault.seen() == 0 ? "" : fault.seen() == 1 ? "in 1 job" : "in " + fault.seen() + " jobs");
		Map<VerdictKind, List<Rule>> found = rules.getOrDefault(fault.name(), Map.of());
		for (VerdictKind kind : VerdictKind.values()) {
			List<Rule> saying = found.getOrDefault(kind, List.of());
			if (!saying.isEmpty()) {
				html.element("dt", Character.toUpperCase(kind.word().charAt(0)) + kind.word().substring(1) + " by").open("dd");
				for (int i = 0; i < saying.size(); i++) {
					html.text(i == 0 ? "" : ", ").link("rule-" + saying.get(i).name(), saying.get(i).title());
				}
				html.close();
			}
		}
		List<Repair> fixing = repairs.getOrDefault(fault.name(), List.of());
		if (!fixing.isEmpty()) {
			html.element("dt", "Repaired by").open("dd");
			for (int i = 0; i < fixing.size(); i++) {
				html.text(i == 0 ? "" : ", ").link("repair-" + fixing.get(i).name(), fixing.get(i).title());
			}
			html.close();
		}
		html.close();
	}

	private void repairs() {
		html.open("section", "id", "repairs").element("h2", "Repairs")
				.element("p", "No repair without a confirmed fault.");
		Cautions cautions = new Cautions(base, html);
		Telling telling = new Telling(base);
		for (Repair repair : base.repairs()) {
			html.open("article", "id", "repair-" + repair.name()).open("h3").text(repair.title() + " ")
					.element("span", repair.name(), "class", "name").close();
			cautions.write(repair.hazards(base));
			html.open("dl").element("dt", "Puts right").open("dd");
			for (int i = 0; i < repair.fixes().size(); i++) {
				html.text(i == 0 ? "" : ", ").link("fault-" + repair.fixes().get(i), words.fault(repair.fixes().get(i)));
			}
			html.close().known(telling.doing(repair)).close();
			gallery.write(repair.pictures());
			html.element("h4", "How it is verified");
			if (repair.verify().isEmpty()) {
				html.element("p", "The rules do not say how.");
			} else {
				html.open("ol");
				repair.verify().forEach(step -> html.element("li", telling.step(step)));
				html.close();
			}
			html.close();
		}
		html.close();
	}

	private void jobs() {
		html.open("section", "id", "jobs").element("h2", "Finished jobs");
		if (base.cases().isEmpty()) {
			html.element("p", "The rules hold no finished jobs.");
		} else {
			html.open("table").element("caption", "Jobs that the rules were run on").open("thead").open("tr");
			for (String column : List.of("Job", "Vehicle", "Found", "Cause", "What it took", "Afterwards")) {
				html.element("th", column, "scope", "col");
			}
			html.close().close().open("tbody");
			base.cases().forEach(this::job);
			html.close().close();
		}
		html.close();
	}

	private void job(Case job) {
		List<String> vehicle = new ArrayList<>();
		vehicle.add(words.family(job.family()));
		job.traits().forEach(trait -> vehicle.add(words.reading(job.family(), trait)));
		html.open("tr").element("th", job.name(), "scope", "row").element("td", Words.commas(vehicle)).open("td")
				.list(job.found().stream().map(found -> words.reading(job.family(), found)).toList()).close().open("td")
				.list(job.causes().stream().map(words::fault).toList());
		if (job.referred()) {
			html.text("referred");
		}
		String time = Telling.minutes(job.record().minutes());
		String cost = job.record().cost().signum() == 0 ? "" : "cost " + Meaning.number(job.record().cost());
		html.close().element("td", time.isEmpty() || cost.isEmpty() ? time + cost : time + ", " + cost).open("td");
		html.list(job.record().afterwards().stream().map(found -> words.reading(job.family(), found)).toList());
		job.record().backAfter().ifPresent(days -> html.element("strong", "Came back after " + Meaning.number(days) + " d"));
		html.close().close();
	}
}
