package org.baywright.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.language.merge.Conflict;
import org.baywright.language.merge.Merged;
import org.baywright.language.merge.ProjectMerge;
import org.baywright.pack.WholeFile;

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
		String name = path == null ? ours : path;
		Path target = session.resolve(ours);
		byte[] before = Files.readAllBytes(session.resolve(base));
		byte[] our = Files.readAllBytes(target);
		byte[] their = Files.readAllBytes(session.resolve(theirs));
		try {
			Merged merged = ProjectMerge.of(Map.of(name, text(before)), Map.of(name, text(our)), Map.of(name, text(their)));
			byte[] result = merged.texts().getOrDefault(name, "").getBytes(StandardCharsets.UTF_8);
			if (!Arrays.equals(result, our)) {
				WholeFile.writeRules(target, result);
			}
			return told(merged.conflicts());
		} catch (CharacterCodingException e) {
			return whole(name, target, before, our, their);
		}
	}

	private static String text(byte[] bytes) throws CharacterCodingException {
		return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
	}

	private int told(List<Conflict> conflicts) {
		for (Conflict conflict : conflicts) {
			session.err().println(Style.safe(conflict.id() + " (" + conflict.file() + ") was changed on both sides; ours stands in the file:"));
			conflict.told("ours", "theirs").forEach(line -> session.err().println(Style.safe("  " + line)));
		}
		if (!conflicts.isEmpty()) {
			session.err().println(Style.safe("Change the file where theirs is right, and tell Git: git add " + conflicts.get(0).file()));
		}
		return conflicts.isEmpty() ? ExitCode.FINE : ExitCode.FLAWS;
	}

	/** What is no text is taken from the side that changed it. */
	private int whole(String name, Path target, byte[] before, byte[] our, byte[] their) throws IOException {
		if (Arrays.equals(before, our)) {
			WholeFile.writeRules(target, their);
		} else if (!Arrays.equals(before, their) && !Arrays.equals(our, their)) {
			session.err().println(Style.safe(name + " holds bytes that are no text in UTF-8, and both sides changed it; ours stays. Put in what theirs is right in, and tell Git: git add " + name));
			return ExitCode.FLAWS;
		}
		return ExitCode.FINE;
	}
}
