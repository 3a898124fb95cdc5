package org.baywright.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CancellationException;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;

import org.baywright.cli.work.Guess;
import org.baywright.pack.manifest.PackException;
import org.baywright.sharing.SharingException;

import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Runs one command line. */
final class CommandLineRun {

	private CommandLineRun() {
	}

	/** Runs the command that the arguments ask for and returns its exit code. */
	static int run(Session session, String... args) {
		CommandLine line = new CommandLine(Baywright.class, new Commands(session));
		session.out().into(line::setOut);
		session.err().into(line::setErr);
		line.setColorScheme(CommandLine.Help.defaultColorScheme(session.style() == Style.COLOURED ? Ansi.ON : Ansi.OFF));
		line.setCaseInsensitiveEnumValuesAllowed(true);
		line.setUsageHelpAutoWidth(false);
		line.setUsageHelpWidth(100);
		line.setParameterExceptionHandler((e, wrong) -> misused(session.err(), e));
		line.setExecutionExceptionHandler((e, command, result) -> failed(session, e));
		try {
			return written(session, line.execute(args));
		} catch (OutOfMemoryError e) {
			session.err().println("There is too little memory for these rules. Give more: BAYWRIGHT_JAVA_OPTS=-Xmx4g");
			return ExitCode.INTERNAL;
		} catch (LinkageError | StackOverflowError | AssertionError e) {
			return internal(session.err(), e);
		} finally {
			session.out().flush();
			session.err().flush();
		}
	}

	/** Whoever pipes results somewhere must learn that not all of them arrived there. */
	private static int written(Session session, int code) {
		return session.out().failure().map(failure -> {
			session.err().println(Style.safe(("Standard output cannot be written: " + failure.getMessage() + ". " + session.done()).strip()));
			return code == ExitCode.INTERNAL ? code : ExitCode.FILES;
		}).orElse(code);
	}

	private static int misused(Output err, ParameterException e) {
		if (e instanceof UnmatchedArgumentException unmatched) {
			err.println("Baywright does not know '" + Style.safe(unmatched.getUnmatched().get(0)) + "'.");
			List<String> suggestions = unmatched.getSuggestions();
			String nearest = Guess.advice(unmatched.getUnmatched().get(0), e.getCommandLine().getSubcommands().keySet(), "");
			if (!nearest.isEmpty()) {
				err.println(nearest);
			} else if (!suggestions.isEmpty()) {
				err.println("Did you mean " + String.join(" or ", suggestions) + "?");
			}
		} else if (e.getArgSpec() != null && e.getArgSpec().type().isEnum() && e.getValue() != null) {
			List<String> choices = Arrays.stream(e.getArgSpec().type().getEnumConstants())
					.map(choice -> choice.toString().toLowerCase(Locale.ROOT)).toList();
			String option = e.getArgSpec() instanceof OptionSpec named ? named.longestName() : e.getArgSpec().paramLabel();
			err.println(Style.safe(option + " cannot be '" + e.getValue() + "'. "
					+ Guess.advice(e.getValue().toLowerCase(Locale.ROOT), choices, "There are: " + String.join(", ", choices) + ".")));
		} else {
			err.println(Style.safe(e.getMessage()));
		}
		err.println("Help: " + e.getCommandLine().getCommandSpec().qualifiedName() + " --help");
		return ExitCode.USAGE;
	}

	/** Says what went wrong, and returns the exit code for it. */
	static int failed(Session session, Exception e) {
		session.out().flush();
		session.progress(false).end();
		Output err = session.err();
		if (e instanceof CancellationException) {
			err.println("Cancelled.");
			return ExitCode.CANCELLED;
		} else if (e instanceof CommandException known) {
			err.println(Style.safe(known.getMessage()));
			return known.exitCode();
		} else if (e instanceof IOException failure) {
			err.println(Style.safe(say(failure)));
			return ExitCode.FILES;
		} else if (e instanceof SharingException wrong) {
			err.println(Style.safe(wrong.getMessage()));
			return ExitCode.FILES;
		} else if (e instanceof PackException wrong) {
			err.println(Style.safe(wrong.getMessage()));
			return ExitCode.FILES;
		}
		return internal(err, e);
	}

	private static int internal(Output err, Throwable e) {
		err.println("Baywright itself failed; please report this with the rules that brought it about:");
		err.into(e::printStackTrace);
		return ExitCode.INTERNAL;
	}

	/** Java's own messages are often only the name of the file. */
	static String say(IOException e) {
		if (e instanceof NoSuchFileException missing) {
			return "There is no file or folder " + missing.getFile() + ".";
		} else if (e instanceof AccessDeniedException denied) {
			return "You may not read or write " + denied.getFile() + ".";
		} else if (e instanceof FileSystemException failure && failure.getFile() != null) {
			return "The file " + failure.getFile() + " cannot be read or written"
					+ (failure.getReason() == null ? "." : ": " + failure.getReason() + ".");
		}
		return String.valueOf(e.getMessage());
	}
}
