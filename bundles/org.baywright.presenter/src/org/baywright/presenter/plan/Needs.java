package org.baywright.presenter.plan;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

import org.baywright.model.RuleBase;
import org.baywright.model.Skill;
import org.baywright.model.Test;
import org.baywright.model.Workshop;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;
import org.baywright.planner.Diagnosis;
import org.baywright.planner.Position;
import org.baywright.presenter.bench.StepWords;

/**
 * What to have at hand before a plan is begun.
 *
 * @param tools tools and what is fitted for a test, by title, sorted
 * @param who who may do the steps that ask for the most skill, with these steps or how many they are
 */
record Needs(List<String> tools, String who) {

	/** Up to so many steps are named; of more their number says enough. */
	private static final int NAMED = 3;

	/** @param steps the steps of a plan, in its order */
	static Needs of(RuleBase base, StepWords say, Collection<Position.Step> steps) {
		Words words = new Words(base);
		Set<String> tools = new TreeSet<>(String.CASE_INSENSITIVE_ORDER.thenComparing(String::compareTo));
		Set<String> most = new LinkedHashSet<>();
		Skill highest = Skill.BASIC;
		for (Position.Step step : steps) {
			List<Test> tests = tests(base, step);
			Stream.concat(tests.stream().flatMap(test -> test.tools().stream()), read(base, step).flatMap(scan -> scan.tools().stream())).map(words::tool).forEach(tools::add);
			for (Test test : tests) {
				tools.addAll(test.fits());
				if (test.skill().compareTo(highest) > 0) {
					highest = test.skill();
					most.clear();
				}
				if (test.skill() == highest) {
					most.add("“" + say.title(step) + "”");
				}
			}
		}
		return new Needs(List.copyOf(tools), (highest == Skill.BASIC ? "" : (most.size() > NAMED ? most.size() + " of the steps" : Words.and(List.copyOf(most))) + ": ") + Telling.skill(highest));
	}

	private static List<Test> tests(RuleBase base, Position.Step step) {
		return step instanceof Diagnosis.Finding finding ? base.test(finding.variable().name()).map(base::doneBy).stream().toList() : List.of();
	}

	/** Returns what reading a module takes, or all at once. */
	private static Stream<Workshop.Scan> read(RuleBase base, Position.Step step) {
		return step instanceof Diagnosis.Finding finding ? StepWords.module(base, finding.variable()).stream().map(base::scan)
				: base.workshop().flatMap(Workshop::all).stream();
	}
}
