package org.baywright.presenter.packing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Report;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.PackContents;
import org.baywright.pack.PackWriter;
import org.baywright.pack.Pictures;
import org.baywright.pack.ToolVersion;
import org.baywright.pack.manifest.PackException;

/**
 * Whether a rule pack can be made, and what blocks it.
 *
 * @param blocks errors, which block, by place
 * @param breaches breaches of the sign-off, which block unless it is a draft, by place
 * @param remarks how many warnings stand that nobody has accepted; they go along with the pack
 * @param accepted how many warnings the author accepted
 */
public record PackCheck(List<Block> blocks, List<Block> breaches, int remarks, int accepted) {

	/**
	 * Something that blocks.
	 *
	 * @param span where
	 * @param message what is wrong, in one sentence
	 */
	public record Block(Span span, String message) {
	}

	public PackCheck {
		blocks = List.copyOf(blocks);
		breaches = List.copyOf(breaches);
	}

	/**
	 * Looks at checked rules.
	 *
	 * @param problems what is wrong in the texts
	 * @param report what was found about just these rules
	 */
	public static PackCheck of(List<Problem> problems, Report report) {
		List<Block> blocks = new ArrayList<>();
		problems.stream().filter(problem -> problem.severity() == Severity.ERROR)
				.forEach(problem -> blocks.add(new Block(problem.span(), problem.message())));
		report.all().stream().filter(flaw -> flaw.severity() == Severity.ERROR)
				.forEach(flaw -> blocks.add(new Block(flaw.span(), flaw.message())));
		blocks.sort(Comparator.comparing(Block::span));
		List<Block> breaches = report.breaches().stream().map(flaw -> new Block(flaw.span(), flaw.message())).sorted(Comparator.comparing(Block::span)).toList();
		int accepted = (int) report.flaws().stream().map(Flaw::accepted).filter(Optional::isPresent).count();
		return new PackCheck(blocks, breaches, (int) report.openWarnings().stream().filter(flaw -> !flaw.breach()).count(), accepted);
	}

	/**
	 * Returns whether a pack can be made.
	 *
	 * @param draft whether a draft is enough
	 */
	public boolean isReady(boolean draft) {
		return blocks.isEmpty() && (draft || breaches.isEmpty());
	}

	/** Returns whether only the sign-off blocks, so that a draft can be made. */
	public boolean isForDraft() {
		return blocks.isEmpty() && !breaches.isEmpty();
	}

	/** Returns all that blocks a pack that is no draft: the errors, or else the breaches of the sign-off. */
	public List<Block> blocking() {
		return blocks.isEmpty() ? breaches : blocks;
	}

	/** Returns in one or two sentences how it stands. */
	public String summary() {
		if (!blocks.isEmpty()) {
			return "While an error stands no pack is written. "
					+ (blocks.size() == 1 ? "One error is" : blocks.size() + " errors are") + " to be put right first.";
		}
		if (!breaches.isEmpty()) {
			return "The sign-off is not met: " + (breaches.size() == 1 ? "one breach is" : breaches.size() + " breaches are")
					+ " to be put right first. A draft can be written all the same; it says so.";
		}
		String open = remarks == 0 ? "" : remarks == 1 ? " One open warning goes along." : " " + remarks + " open warnings go along.";
		String kept = accepted == 0 ? "" : accepted == 1 ? " One was accepted with a reason." : " " + accepted + " were accepted with a reason.";
		return "Nothing blocks the pack." + open + kept;
	}

	/**
	 * Makes the pack and reads it back.
	 *
	 * @param folder the folder of the project, in which its pictures lie
	 * @param draft whether it may be made although the sign-off is not met
	 * @throws PackException if an error stands, the sign-off is not met and it is no draft, or a picture is not there
	 */
	public static PackWriter.Made make(Optional<Path> folder, RuleBase rules, Report report, List<Problem> problems, boolean draft) throws PackException {
		boolean blocked = !of(problems, report).isReady(draft);
		return PackWriter.make(new PackContents(rules, report, problems, ToolVersion.CURRENT,
				blocked ? new TreeMap<>() : Pictures.read(folder, rules), draft));
	}
}
