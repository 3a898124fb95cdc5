package org.baywright.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.cli.work.Progress;
import org.baywright.model.Severity;
import org.baywright.pack.PackVerifier;
import org.baywright.pack.Verification;
import org.baywright.pack.Verification.Outcome;
import org.baywright.pack.Verification.Result;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright verify}. */
@Command(name = "verify", sortOptions = false, //
		header = "Verify that a rule pack is whole, unchanged and right.", //
		description = { "", "Looks at the archive, the manifest, the hashes, the rules and all that is derived from them, the"
				+ " canonical form of the JSON texts byte by byte, and the sheet.", "",
				"That a pack is whole does not tell who made it: compare its fingerprint with one you trust." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { "0:each pack is as it should be", //
				"1:something is wrong with a pack", //
				"2:the command was used in a wrong way", //
				"3:a file could not be read", //
				"4:nothing is wrong, but something could not be looked at" }, //
		footerHeading = "%nExamples:%n", footer = { "  baywright verify van.baypack", //
				"  baywright verify --prove --quiet van.baypack tractor.baypack" })
final class VerifyCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "PACK", arity = "1..*", description = "The rule packs (*.baypack).")
	private List<String> given;

	@Option(names = "--prove", description = "Make all checks on the rules again and compare what they find with the manifest.")
	private boolean prove;

	@Option(names = "--progress", description = "Show progress although there is no terminal.")
	private boolean progress;

	@Mixin
	private HelpOption help;

	VerifyCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() {
		int code = ExitCode.FINE;
		for (String path : given) {
			code = worse(code, tried(path));
		}
		return code;
	}

	/** One that cannot be read keeps nobody from what is to be told of the others. */
	private int tried(String path) {
		try {
			return verify(path);
		} catch (IOException | CommandException e) {
			return CommandLineRun.failed(session, e);
		}
	}

	private static int worse(int one, int other) {
		return one == ExitCode.FLAWS || other == ExitCode.FLAWS ? ExitCode.FLAWS : Math.max(one, other);
	}

	private int verify(String path) throws IOException {
		Verification verification = PackVerifier.verify(session.pack(path));
		List<Result> results = new ArrayList<>(verification.results());
		if (prove && verification.pack().isPresent()) {
			Progress shown = session.progress(progress);
			shown.phase("Proving " + path);
			try {
				results.add(PackVerifier.prove(verification.pack().get(), shown));
			} finally {
				shown.end();
			}
		}
		session.out().println(session.style().strong(Style.safe(path)));
		results.stream().filter(result -> !session.quiet() || result.outcome() != Outcome.PASSED).forEach(this::tell);
		verification.pack().ifPresent(pack -> session.say(session.out(), "  fingerprint " + pack.manifest().fingerprint()));
		boolean failed = results.stream().anyMatch(result -> result.outcome() == Outcome.FAILED);
		boolean open = results.stream().anyMatch(result -> result.outcome() == Outcome.OPEN);
		return failed ? ExitCode.FLAWS : open ? ExitCode.UNDECIDED : ExitCode.FINE;
	}

	private void tell(Result result) {
		String word = switch (result.outcome()) {
		case PASSED -> session.style().good("right");
		case FAILED -> session.style().of(Severity.ERROR, "wrong");
		case OPEN -> session.style().of(Severity.WARNING, "open ");
		};
		session.out().println("  " + word + "  " + String.format(Locale.ROOT, "%-14s", result.aspect().title()) + "  "
				+ Style.safe(result.message()));
	}
}
