package org.baywright.analysis.proof;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.baywright.analysis.CaseResult;
import org.baywright.model.Case;
import org.baywright.model.RuleBase;

/** The parts of one family. */
final class FamilyParts {

	final Key signature;
	private final List<Component> parts;
	private final List<Draft> drafts;
	private final Map<String, Component> byRule = new HashMap<>();
	private final Map<Case, CaseResult> cases = new HashMap<>();
	private final Draft whole;
	private CaseRun run;
	private RuleBase runFor;

	FamilyParts(Key signature, List<Component> parts, List<Draft> drafts, Draft whole) {
		this.signature = signature;
		this.parts = parts;
		this.drafts = drafts;
		this.whole = whole;
		for (Component part : parts) {
			part.rules().forEach(rule -> byRule.put(rule, part));
		}
	}

	List<Component> parts() {
		return parts;
	}

	Component partOf(String rule) {
		return byRule.get(rule);
	}

	Draft draftOf(Component part) {
		return drafts.get(parts.indexOf(part));
	}

	/** Runs a job; one that was run before is remembered. A job may also tell what no rule speaks of. */
	CaseResult run(RuleBase base, Case job) {
		if (run == null || !World.isSame(runFor, base)) {
			run = new CaseRun(base, whole);
			runFor = base;
			cases.clear();
		}
		return cases.computeIfAbsent(job, run::run);
	}
}
