package org.baywright.cli;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.cli.work.Merging;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code baywright merge-driver}. */
@Command(name = "merge-driver", sortOptions = false, //
		header = "Merge a rule file for Git, rule by rule.", //
		description = { "", "For those who use Git by hand: Git calls this for rule files once it is told to. The first of the examples tells it so for a"
				+ " repository; the second line belongs into its file .gitattributes, where 'share' puts it.", "",
				"The result takes the place of OURS. Where both sides changed what an element means, ours stays in the file, without any marks,"
						+ " and what each side says is told." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:both changes are in the file", //
				"1:something has to be chosen; it is told, and ours is in the file", //
				"2:the command was used in a wrong way", //
				"3:a file could not be read or written; OURS is as it was" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright merge-driver base.bay ours.bay theirs.bay rules.bay", //
				"  git config merge.bay.driver \"baywright merge-driver %%O %%A %%B %%P\"", //
				"  *.bay -text merge=bay" })
final class MergeDriverCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "BASE", index = "0", description = "The file that both sides came of; may be empty.")
	private String base = "";

	@Parameters(paramLabel = "OURS", index = "1", description = "Our file, which gets the result.")
	private String ours = "";

	@Parameters(paramLabel = "THEIRS", index = "2", description = "The file of the other side.")
	private String theirs = "";

	@Parameters(paramLabel = "PATH", index = "3", arity = "0..1", description = "What the file is called. Default: OURS.")
	private String path;

	@Mixin
	private HelpOption help;

	MergeDriverCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws IOException {
		List<String> told = Merging.of(session.resolve(base), session.resolve(ours), session.resolve(theirs), path == null ? ours : path);
		told.forEach(line -> session.err().println(Style.safe(line)));
		return told.isEmpty() ? ExitCode.FINE : ExitCode.FLAWS;
	}
}
