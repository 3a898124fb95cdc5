package org.baywright.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.RuleBase;
import org.baywright.planner.Matrix;

/** Makes what the planner is measured on: the same each time. */
final class PlanProblems {

	private static final int COMPLAINTS = 5;
	private static final int FAULTS = 10;
	private static final int GROUPS = 12;
	private static final int CODES = 8;
	private static final int ALSO = 8;
	private static final int GROUP_SIZE = 3;

	/**
	 * Faults and tests. A test has two to four results; one fault in five shows another result than a sound vehicle, and one in
	 * four shows its result nine times in ten only.
	 */
	record Faults(double[] prior, List<Matrix.Check> tests) {

		Matrix matrix() {
			return new Matrix(prior, tests);
		}
	}

	private PlanProblems() {
	}

	static Faults faults(int faults, int tests, long seed) {
		Random random = new Random(seed);
		double[] prior = random.ints(faults, 1, 41).asDoubleStream().toArray();
		List<Matrix.Check> checks = new ArrayList<>();
		for (int test = 0; test < tests; test++) {
			int results = 2 + random.nextInt(3);
			double[][] likelihood = new double[results][faults];
			for (int fault = 0; fault < faults; fault++) {
				int shown = random.nextInt(5) == 0 ? 1 + random.nextInt(results - 1) : 0;
				double sure = random.nextInt(4) == 0 ? .9 : 1;
				likelihood[shown][fault] = sure;
				likelihood[(shown + 1) % results][fault] += 1 - sure;
			}
			checks.add(new Matrix.Check("test " + test, 1 + random.nextInt(60), likelihood, new boolean[results]));
		}
		return new Faults(prior, checks);
	}

	/**
	 * Two hundred rules on five complaints. Each complaint suspects ten faults; each fault has a test of its own that confirms or
	 * clears it, twelve quick tests each suspect or clear three, and codes and other signs suspect more.
	 */
	static RuleBase rules() {
		Random random = new Random(7);
		StringBuilder text = new StringBuilder("family tarn\n");
		for (int complaint = 0; complaint < COMPLAINTS; complaint++) {
			complaint("c" + complaint, random, text);
		}
		RuleProject project = RuleProject.inMemory("plans");
		project.update("plans.bay", text.toString());
		Snapshot snapshot = project.snapshot();
		if (snapshot.rules().rules().size() != 200 || !snapshot.dropped().isEmpty()) {
			throw new IllegalStateException("the text is wrong: " + snapshot.problems());
		}
		return snapshot.rules();
	}

	private static void complaint(String name, Random random, StringBuilder text) {
		text.append("sign ").append(name).append("\nmodule ").append(name).append("_unit takes 4 min\npart ").append(name).append("_part {");
		for (int fault = 0; fault < FAULTS; fault++) {
			text.append(" fault f").append(fault).append(" seen ").append(random.nextInt(40));
		}
		text.append(" }\n");
		StringBuilder all = new StringBuilder();
		for (int fault = 0; fault < FAULTS; fault++) {
			String of = name + "_part.f" + fault;
			all.append(fault == 0 ? "" : ", ").append(of);
			text.append("test ").append(name).append("_own").append(fault).append(" { results bad, good takes ").append(5 + random.nextInt(40)).append(" min }\n");
			rule(text, name + "_own" + fault, of + " suspected run " + name + "_own" + fault + " on bad : confirms " + of + " on good : clears " + of);
		}
		rule(text, name + "_start", name + " then suspects " + all);
		for (int group = 0; group < GROUPS; group++) {
			String test = name + "_quick" + group;
			text.append("test ").append(test).append(" { measures V 0 .. 15 step 0.1 takes ").append(1 + random.nextInt(15)).append(" min }\n");
			List<String> faults = some(name, random);
			rule(text, test, name + " run " + test + " on below 9.0 V : suspects " + String.join(", ", faults) + " on 9.0 V .. 12.0 V : proves nothing on above 12.0 V : clears "
					+ String.join(", ", faults));
		}
		for (int code = 0; code < CODES; code++) {
			String of = name + "_code" + code;
			text.append("code ").append(of).append(" on ").append(name).append("_unit = raw \"").append(of).append("\"\n");
			rule(text, of, name + ", " + of + " present then suspects " + some(name, random).get(0));
		}
		for (int also = 0; also < ALSO; also++) {
			String of = name + "_also" + also;
			text.append("sign ").append(of).append('\n');
			rule(text, of, name + ", " + of + " then suspects " + String.join(", ", some(name, random)));
		}
		rule(text, name + "_end", name + " unexplained then refers \"a specialist\"");
	}

	private static List<String> some(String name, Random random) {
		return random.ints(0, FAULTS).distinct().limit(GROUP_SIZE).mapToObj(fault -> name + "_part.f" + fault).toList();
	}

	private static void rule(StringBuilder text, String name, String says) {
		text.append("rule ").append(name).append("_rule { given ").append(says).append(" }\n");
	}
}
