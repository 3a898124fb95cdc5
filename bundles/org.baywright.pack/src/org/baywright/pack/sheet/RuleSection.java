package org.baywright.pack.sheet;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.baywright.model.Chain;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Exclusive;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Outcome;
import org.baywright.model.Provenance;
import org.baywright.model.Reply;
import org.baywright.model.Review;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Source;
import org.baywright.model.Test;
import org.baywright.model.words.Limits;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;

/** The rules, each with all that a technician must know to work by it. */
final class RuleSection {

	private final RuleBase base;
	private final Words words;
	private final Html html;
	private final Cautions cautions;
	private final Map<String, List<Review>> reviews;

	RuleSection(RuleBase base, Words words, Html html) {
		this.base = base;
		this.words = words;
		this.html = html;
		cautions = new Cautions(base, html);
		reviews = base.reviews().stream().collect(Collectors.groupingBy(Review::rule));
	}

	void write() {
		html.open("section", "id", "rules").element("h2", "Rules");
		certain();
		base.chains().forEach(this::chain);
		base.rules().forEach(this::rule);
		html.close();
	}

	private void certain() {
		if (base.laws().isEmpty() && base.exclusives().isEmpty()) {
			return;
		}
		html.element("h3", "Taken as certain").open("ul");
		for (Law law : base.laws()) {
			html.open("li").text(law.title() + " ").element("span", law(law), "class", "name").close();
		}
		for (Exclusive exclusive : base.exclusives()) {
			html.element("li", "Only one of these can be the cause: "
					+ exclusive.faults().stream().map(fault -> "“" + words.fault(fault) + "”").collect(Collectors.joining(", ")));
		}
		html.close();
	}

	private String law(Law law) {
		String families = law.families().isEmpty() ? ""
				: " in " + law.families().stream().map(words::family).collect(Collectors.joining(", "));
		boolean never = law.then() instanceof Condition.Or or && or.parts().isEmpty();
		return never ? "(Never" + families + ": " + words.condition(law.when()) + ".)"
				: "(Whenever" + families + ": " + words.condition(law.when()) + "; then: " + words.condition(law.then()) + ".)";
	}

	/** The rules that follow from it stand among the others. */
	private void chain(Chain chain) {
		html.open("article", "id", "chain-" + chain.name()).open("h3").text(chain.title() + " ")
				.element("span", chain.name(), "class", "name").close();
		html.element("p", "Check points from the source on. The first point that is wrong names the fault; a point that is right"
				+ " clears what lies before it. A point in the middle of what is left halves it.");
		html.open("ol");
		for (Chain.Point point : chain.points()) {
			html.open("li").link("test-" + point.test(), words.test(point.test())).text(": "
					+ base.test(point.test()).map(test -> Limits.say(point.good(), test.domain())).orElse("")
					+ (point.faults().isEmpty() ? "" : "; else " + chain(point.faults())));
			base.test(point.test()).ifPresent(test -> {
				test.place().ifPresent(place -> html.text(". Where: " + place));
				cautions.write(cautions.of(test));
			});
			html.close();
		}
		html.close();
		if (!chain.beyond().isEmpty()) {
			html.element("p", "When all are right, suspect " + chain(chain.beyond()) + ".");
		}
		html.open("dl").term("Vehicles", words.scope(chain.scope()))
				.term("Given", String.join("; ", chain.given().stream().map(words::condition).toList()));
		provenance(chain.provenance());
		for (Review review : reviews.getOrDefault(chain.name(), List.of())) {
			html.term("Review", review(Meaning.fingerprint(chain), review));
		}
		html.close().close();
	}

	private String chain(List<String> faults) {
		return faults.stream().map(fault -> "“" + words.fault(fault) + "”").collect(Collectors.joining(" or "));
	}

	private void rule(Rule rule) {
		Optional<Test> test = rule.test().flatMap(base::test);
		html.open("article", "id", "rule-" + rule.name()).open("h3").text(rule.title() + " ")
				.element("span", rule.name(), "class", "name").close();
		test.ifPresent(found -> cautions.write(cautions.of(found)));
		html.open("dl").term("Vehicles", words.scope(rule.scope()));
		if (!rule.given().isEmpty()) {
			html.element("dt", "Given").open("dd").list(rule.given().stream().map(words::condition).toList()).close();
		}
		html.term("In state", words.settings(rule.states()));
		test.ifPresent(this::test);
		html.close();
		outcomes(rule, test.map(Test::domain));
		html.open("dl");
		provenance(rule.provenance());
		for (Review review : reviews.getOrDefault(rule.name(), List.of())) {
			html.term("Review", review(Meaning.fingerprint(rule), review));
		}
		html.open("dt").text("Meaning").close().open("dd").element("code", Meaning.fingerprint(rule)).close();
		html.close().close();
	}

	private void test(Test test) {
		html.element("dt", "Run").open("dd").link("test-" + test.name(), test.title()).close();
		html.known(new Telling(base).doing(test));
	}

	private void outcomes(Rule rule, Optional<Domain> domain) {
		html.open("table").element("caption", domain.isPresent() ? "Results" : "Conclusion").open("thead").open("tr")
				.element("th", domain.isPresent() ? "Result" : "When", "scope", "col")
				.element("th", "Proves this and nothing else", "scope", "col").close().close().open("tbody");
		for (Outcome outcome : rule.outcomes()) {
			html.open("tr").element("th", result(outcome, domain), "scope", "row").open("td");
			html.list(outcome.conclusions().stream().map(words::conclusion).toList());
			if (outcome.conclusions().stream().allMatch(Conclusion.Nothing.class::isInstance)) {
				html.text("Whatever else is suspected stays open.");
			}
			html.close().close();
		}
		html.close().close();
	}

	private static String result(Outcome outcome, Optional<Domain> domain) {
		if (outcome.values().isEmpty() || domain.isEmpty()) {
			return "all that is given holds";
		}
		return Limits.say(outcome.values().get(), domain.get());
	}

	private void provenance(Provenance provenance) {
		html.term("Because", provenance.because().orElse("")).term("Source", source(provenance.source()));
		String author = provenance.author().orElse("");
		html.term("Author", provenance.date().map(date -> author.isEmpty() ? date.toString() : author + ", " + date)
				.orElse(author));
	}

	static String source(Source source) {
		return switch (source.kind()) {
		case PUBLISHED -> "published: " + source.text();
		case JOBS -> "finished jobs of this project";
		case PRACTICE -> "common practice of the trade";
		case MEMORY -> "from memory, to be confirmed";
		case NONE -> "none given";
		};
	}

	private static String review(String now, Review review) {
		boolean stale = !now.equals(review.meaning());
		return review.reviewer() + (review.agrees() ? " agrees, " : " objects, ") + review.date()
				+ (review.note().isEmpty() ? "" : ": " + review.note())
				+ (stale ? " (out of date: the rule has changed its meaning since)" : "")
				+ review.replies().stream().map(RuleSection::reply).collect(Collectors.joining());
	}

	private static String reply(Reply reply) {
		return " – " + (reply.settles() ? "Settled: " : "") + reply.author() + ", " + reply.date() + (reply.text().isEmpty() ? "" : ": " + reply.text());
	}
}
