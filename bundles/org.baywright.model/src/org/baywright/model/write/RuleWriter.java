package org.baywright.model.write;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.baywright.model.Chain;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;
import org.baywright.model.ValueSet;

/**
 * Writes rules as text. Whoever reads the text finds what was written, in the same order, but for the places. Comments and
 * layout are not kept, as the rules do not know them.
 */
public final class RuleWriter {

	private final RuleBase base;
	private final Values values;
	private final Knowledge knowledge;
	private final Work work;

	/** @param base the rules to write */
	public RuleWriter(RuleBase base) {
		this.base = base;
		values = new Values(base);
		knowledge = new Knowledge(values);
		work = new Work(values);
	}

	/** Returns all elements, those first that others name. */
	public String all() {
		List<String> texts = new ArrayList<>(declared());
		base.tests().forEach(test -> texts.add(text(test)));
		texts.addAll(laws());
		texts.addAll(rules());
		base.repairs().forEach(repair -> texts.add(text(repair)));
		base.cases().forEach(job -> texts.add(work.job(job)));
		base.reviews().forEach(review -> texts.add(Work.review(review)));
		base.acceptances().forEach(acceptance -> texts.add(Work.acceptance(acceptance)));
		return String.join("\n", texts);
	}

	/** Returns what others name: families, states, tools, hazards, modules, codes, signs, parts, and which faults exclude each other. */
	public List<String> declared() {
		List<String> texts = new ArrayList<>();
		base.families().forEach(family -> texts.add(Vehicle.family(family)));
		base.states().forEach(state -> texts.add(Vehicle.state(state)));
		base.tools().forEach(tool -> texts.add(Vehicle.tool(tool)));
		base.hazards().forEach(hazard -> texts.add(Vehicle.hazard(hazard)));
		base.modules().forEach(module -> texts.add(Vehicle.module(module)));
		base.codes().forEach(code -> texts.add(Vehicle.code(code)));
		base.signs().forEach(sign -> texts.add(Vehicle.sign(values, sign)));
		base.parts().forEach(part -> texts.add(Vehicle.part(part)));
		base.exclusives().forEach(exclusive -> texts.add(Vehicle.exclusive(exclusive)));
		return texts;
	}

	/** Returns the laws, without those that follow from chains. */
	public List<String> laws() {
		Set<String> ofChains = new HashSet<>();
		base.chains().forEach(chain -> chain.laws().forEach(law -> ofChains.add(law.title() + Meaning.text(law))));
		return base.laws().stream().filter(law -> !ofChains.contains(law.title() + Meaning.text(law))).map(this::text).toList();
	}

	/** Returns the rules and the chains; a chain stands where the first of the rules that follow from it does. */
	private List<String> rules() {
		Map<String, Chain> chains = new HashMap<>();
		base.chains().forEach(chain -> chain.rules().forEach(rule -> chains.put(rule.name(), chain)));
		Set<String> texts = new LinkedHashSet<>();
		base.rules().forEach(rule -> texts.add(chains.containsKey(rule.name()) ? text(chains.get(rule.name())) : text(rule)));
		return List.copyOf(texts);
	}

	private String text(Law law) {
		return knowledge.law(law);
	}

	/** Returns a rule as text. */
	public String text(Rule rule) {
		return knowledge.rule(rule);
	}

	/**
	 * Returns results as they stand after {@code on} and {@code expect}.
	 *
	 * @param results bands and named values, or a union of them
	 * @param unit the unit in which the bands are; the empty text for none
	 * @throws IllegalArgumentException if they are given by what they are not
	 */
	public static String results(ValueSet results, String unit) {
		return Values.expected(results, unit);
	}

	/** Returns a chain as text. */
	public String text(Chain chain) {
		return knowledge.chain(chain);
	}

	/** Returns a test as text. */
	public String text(Test test) {
		return work.test(test);
	}

	/** Returns a repair as text. */
	public String text(Repair repair) {
		return work.repair(repair);
	}
}
