package org.baywright.cli;

import java.util.Locale;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;

import org.baywright.cli.report.JsonReport;
import org.baywright.cli.report.Style;
import org.baywright.pack.Pack;
import org.baywright.pack.PackReader;
import org.baywright.pack.PackText;
import org.baywright.pack.Schemas;
import org.baywright.pack.manifest.PackException;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;

import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright show}. */
@Command(name = "show", sortOptions = false, //
		header = "Show what a rule pack holds.", //
		description = { "", "Tells what the pack is, what it counts, what was checked and what stands." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { "0:the pack was shown", "2:the command was used in a wrong way",
				"3:the pack could not be read" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright show van.baypack --rules", //
				"  baywright show van.baypack --format json", //
				"  baywright show van.baypack --entry rules.html > rules.html", //
				"  baywright show --schema rules > baypack-rules.schema.json" })
final class ShowCommand implements Callable<Integer> {

	/** The JSON texts of a pack. */
	enum SchemaOf {
		RULES, MANIFEST;

		@Override
		public String toString() {
			return name().toLowerCase(Locale.ROOT);
		}
	}

	private final Session session;

	@ArgGroup(exclusive = true, multiplicity = "0..1")
	private What what = new What();

	@Parameters(paramLabel = "PACK", arity = "0..1", description = "The rule pack (*.baypack).")
	private String given;

	@Option(names = { "-f", "--format" }, paramLabel = "text|json", description = {
			"text for people; json: the manifest, and with --rules all rules, for programs. Default: text." })
	private Form form = Form.TEXT;

	@Mixin
	private HelpOption help;

	/** What to show beside the summary, or in its place. */
	static final class What {
		@Option(names = "--rules", description = "List the rules too.")
		private boolean rules;

		@Option(names = "--entry", paramLabel = "NAME", description = {
				"Write out one entry as it is: manifest.json, rules.json or rules.html." })
		private String entry;

		@Option(names = "--schema", paramLabel = "rules|manifest", description = {
				"Write out the JSON Schema (2020-12) of rules.json or manifest.json; needs no pack." })
		private SchemaOf schema;
	}

	ShowCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws IOException {
		if (what.schema != null) {
			session.out().print(what.schema == SchemaOf.RULES ? Schemas.rules() : Schemas.manifest());
			return ExitCode.FINE;
		}
		if (given == null) {
			throw new CommandException(ExitCode.USAGE, "Name the rule pack to show.");
		}
		try {
			show(session.pack(given));
		} catch (PackException e) {
			throw new CommandException(ExitCode.FILES, given + ": " + e.getMessage());
		}
		return ExitCode.FINE;
	}

	private void show(Path file) throws IOException, PackException {
		if (what.entry != null) {
			byte[] content = PackReader.soundEntries(file).get(what.entry);
			if (content == null) {
				throw new CommandException(ExitCode.USAGE,
						"A pack has no entry " + what.entry + "; it has manifest.json, rules.json and rules.html.");
			}
			session.out().write(content);
		} else if (form == Form.JSON) {
			json(file);
		} else {
			show(PackReader.read(file));
		}
	}

	private void json(Path file) throws IOException, PackException {
		Map<String, byte[]> entries = PackReader.soundEntries(file);
		JsonObject all = JsonReport.versioned();
		all.add("manifest", JsonParser.parseString(new String(entries.get("manifest.json"), StandardCharsets.UTF_8)));
		if (what.rules) {
			all.add("rules", JsonParser.parseString(new String(entries.get("rules.json"), StandardCharsets.UTF_8)));
		}
		session.out().print(JsonReport.text(all));
	}

	private void show(Pack pack) {
		Style style = session.style();
		PackText.lines(pack, what.rules, new PackText.Manner() {
			@Override
			public String given(String text) {
				return Style.safe(text);
			}

			@Override
			public String strong(String text) {
				return style.strong(text);
			}

			@Override
			public String faint(String text) {
				return style.faint(text);
			}
		}).forEach(session.out()::println);
	}
}
