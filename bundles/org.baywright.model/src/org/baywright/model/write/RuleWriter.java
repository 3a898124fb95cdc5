package org.baywright.model.write;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.baywright.model.Acceptance;
import org.baywright.model.Case;
import org.baywright.model.Chain;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.Hazard;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Module;
import org.baywright.model.Part;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Sign;
import org.baywright.model.State;
import org.baywright.model.Test;
import org.baywright.model.Tool;
import org.baywright.model.ValueSet;
import org.baywright.model.Workshop;

/**
 * Writes rules as text. Whoever reads the text finds what was written, in the same order, but for the places. Comments and
 * layout are not kept, as the rules do not know them.
 */
public final class RuleWriter {

	private static final Pattern CLOSED = Pattern.compile("//[^\\n\\r]*+|(?s:/\\*.*?\\*/)|\"(?:[^\"\\\\\\n\\r]++|\\\\.)*+\"");

	private final RuleBase base;
	private final Values values;
	private final Knowledge knowledge;
	private final Work work;
	private final Function<Block, String> layout;

	/** One that writes what needs no others to be written. */
	public RuleWriter() {
		this(new RuleBase.Builder("").build());
	}

	/** @param base the rules to write */
	public RuleWriter(RuleBase base) {
		this(base, Block::laidOut);
	}

	private RuleWriter(RuleBase base, Function<Block, String> layout) {
		this.base = base;
		this.layout = layout;
		values = new Values(base);
		knowledge = new Knowledge(values);
		work = new Work(values);
	}

	/** Returns one that writes the same words in a layout that never changes, for fingerprints that texts keep. */
	public static RuleWriter plain(RuleBase base) {
		return new RuleWriter(base, Block::plain);
	}

	/** Returns all elements, those first that others name. */
	public String all() {
		List<String> texts = new ArrayList<>(declared());
		base.tests().forEach(test -> texts.add(text(test)));
		texts.addAll(laws());
		texts.addAll(rules());
		base.repairs().forEach(repair -> texts.add(text(repair)));
		base.cases().forEach(job -> texts.add(text(job)));
		base.signOff().ifPresent(signOff -> texts.add(layout.apply(Work.signOff(signOff))));
		base.reviewers().forEach(reviewer -> texts.add(layout.apply(Work.reviewer(reviewer))));
		base.reviews().forEach(review -> texts.add(layout.apply(Work.review(review))));
		base.remarks().forEach(remark -> texts.add(layout.apply(Work.remark(remark))));
		base.acceptances().forEach(acceptance -> texts.add(text(acceptance)));
		return String.join("\n", texts);
	}

	/** Returns what others name: families, states, tools, the workshop, hazards, modules, codes, signs, parts, and which faults exclude each other. */
	public List<String> declared() {
		List<String> texts = new ArrayList<>();
		base.families().forEach(family -> texts.add(text(family)));
		base.states().forEach(state -> texts.add(text(state)));
		base.tools().forEach(tool -> texts.add(text(tool)));
		base.workshop().ifPresent(workshop -> texts.add(text(workshop)));
		base.hazards().forEach(hazard -> texts.add(text(hazard)));
		base.modules().forEach(module -> texts.add(text(module)));
		base.codes().forEach(code -> texts.add(layout.apply(Vehicle.code(code))));
		base.signs().forEach(sign -> texts.add(text(sign)));
		base.parts().forEach(part -> texts.add(text(part)));
		base.exclusives().forEach(exclusive -> texts.add(layout.apply(Vehicle.exclusive(exclusive))));
		return texts;
	}

	/** Returns a family as text. */
	public String text(Family family) {
		return layout.apply(Vehicle.family(family));
	}

	/** Returns a state as text. */
	public String text(State state) {
		return layout.apply(Vehicle.state(state));
	}

	/** Returns a tool as text. */
	public String text(Tool tool) {
		return layout.apply(Vehicle.tool(tool));
	}

	/** Returns a workshop as text. */
	public String text(Workshop workshop) {
		return layout.apply(Vehicle.workshop(workshop));
	}

	/** Returns a hazard as text. */
	public String text(Hazard hazard) {
		return layout.apply(Vehicle.hazard(hazard));
	}

	/** Returns a module as text. */
	public String text(Module module) {
		return layout.apply(Vehicle.module(module));
	}

	/** Returns a sign as text. */
	public String text(Sign sign) {
		return layout.apply(Vehicle.sign(values, sign));
	}

	/** Returns a part as text. */
	public String text(Part part) {
		return layout.apply(Vehicle.part(part));
	}

	/** Returns a fault as the clause of its part. */
	public static String clause(Fault fault) {
		return Stream.of(Vehicle.fault(fault)).filter(cell -> !cell.isEmpty()).collect(Collectors.joining(" "));
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
		return layout.apply(knowledge.law(law));
	}

	/** Returns a rule as text; who wrote it may be left open. */
	public String text(Rule rule) {
		return layout.apply(knowledge.rule(rule));
	}

	/** Returns whether all braces, quotation marks and comments of a text are closed, so that what is added at its end stands by itself. */
	public static boolean isWhole(String text) {
		String bare = CLOSED.matcher(text).replaceAll("");
		return !bare.contains("/*") && !bare.contains("\"") && bare.chars().filter(c -> c == '{').count() <= bare.chars().filter(c -> c == '}').count();
	}

	/** Returns why nothing is added at the end of a file whose text is not whole. */
	public static String notWhole(String file) {
		return "A brace, a quotation mark or a comment in " + file + " is not closed. Close it first; nothing was written.";
	}

	/** Returns what comes between a text and an element that is added at its end, so that an empty line parts them. */
	public static String gap(String text) {
		return text.isEmpty() || text.endsWith("\n\n") ? "" : text.endsWith("\n") ? "\n" : "\n\n";
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
		return layout.apply(knowledge.chain(chain));
	}

	/** Returns a test as text. */
	public String text(Test test) {
		return layout.apply(work.test(test));
	}

	/** Returns a repair as text. */
	public String text(Repair repair) {
		return layout.apply(work.repair(repair));
	}

	/** Returns a job as text. */
	public String text(Case job) {
		return layout.apply(work.job(job));
	}

	/** Returns an acceptance as text; who accepts may be left open. */
	public String text(Acceptance acceptance) {
		return layout.apply(Work.acceptance(acceptance));
	}
}
