package org.baywright.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.generate.GeneratedBase;
import org.baywright.analysis.generate.RuleBaseGenerator;
import org.baywright.analysis.oracle.PlainSmt;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.Family;
import org.baywright.model.RuleBase;

/** One size in one process; prints a line of tab-separated figures. Times start cold, right after the rules are made. */
public final class WholeProcess {

	private static final int EDITS = 31;

	private WholeProcess() {
	}

	public static void main(String[] args) throws IOException {
		int size = Integer.parseInt(args[1]);
		GeneratedBase base = RuleBaseGenerator.generate(size, 50, 7);
		if (args[0].equals("plain")) {
			plain(size, base.rules());
		} else {
			ours(size, base);
		}
	}

	private static void ours(int size, GeneratedBase base) throws IOException {
		Analysis analysis = new Analysis();
		long start = System.nanoTime();
		Report report = analysis.check(base.rules(), Listener.NONE);
		double full = seconds(start);
		if (report.flaws().size() < base.seeded().size()) {
			throw new IllegalStateException("found less than was seeded");
		}
		double[] edits = new double[EDITS];
		for (int i = 0; i < EDITS; i++) {
			RuleBase edited = base.edited((i * 997 + 13) % base.rules().rules().size());
			long edit = System.nanoTime();
			analysis.check(edited, Listener.NONE);
			edits[i] = seconds(edit) * 1000;
		}
		Arrays.sort(edits);
		print("ours", size, full, edits[EDITS / 2], edits[EDITS * 9 / 10], report.flaws().size());
	}

	private static void plain(int size, RuleBase rules) throws IOException {
		long start = System.nanoTime();
		long questions = 0;
		for (Family family : rules.vehicleFamilies()) {
			try (PlainSmt smt = new PlainSmt(rules, family.name())) {
				questions += smt.checkEveryPair();
			}
		}
		print("plain", size, seconds(start), 0, 0, questions);
	}

	private static double seconds(long since) {
		return (System.nanoTime() - since) / 1e9;
	}

	private static void print(String way, int size, double seconds, double median, double slow, long found)
			throws IOException {
		String status = Files.readString(Path.of("/proc/self/status"));
		String peak = status.lines().filter(line -> line.startsWith("VmHWM:")).findFirst().orElse("VmHWM: 0 kB");
		long megabytes = Long.parseLong(peak.replaceAll("\\D", "")) / 1024;
		System.out.println(String.format(Locale.ROOT, "%s\t%d\t%.3f\t%.1f\t%.1f\t%d\t%d", way, size, seconds, median, slow,
				megabytes, found));
	}
}
