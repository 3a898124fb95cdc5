package org.baywright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.model.RuleBase;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Caution;
import org.baywright.presenter.picture.Layout;
import org.baywright.presenter.picture.Svg;
import org.baywright.presenter.picture.TextMetrics;
import org.baywright.presenter.picture.Theme;
import org.baywright.presenter.plan.PlanShown;
import org.baywright.presenter.plan.PlanText;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code baywright plan}. */
@Command(name = "plan", sortOptions = false, //
		header = "Tell the whole plan for a complaint: what to do, and after each result what next.", //
		description = { "", "Tells how long the plan takes and what it costs, how the vehicles end, and which faults no step tells apart. Its first step"
				+ " is what the bench proposes, or the best there is where that is proved.", "",
				"Each step has a number, each of its results a letter and the share of all vehicles that show it." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:the plan was told", //
				"1:there is no plan: nothing that can be found out would make the rules say more, or no vehicle is like that", //
				"2:the command was used in a wrong way", //
				"3:a file could not be read or written" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright plan light-van --vehicle bord_s --complaint no_crank", //
				"  baywright plan light-van --vehicle bord_s --complaint no_crank --with engine=diesel_2_1", //
				"  baywright plan light-van --vehicle bord_s --complaint no_crank --sheet plan.html", //
				"  baywright plan light-van --vehicle bord_s --complaint no_crank --against light-van-before" })
final class PlanCommand implements Callable<Integer> {

	private static final String INDENT = "   ";

	private final Session session;

	@Mixin
	private VehicleOptions options;

	@Option(names = "--sheet", paramLabel = "FILE", description = "Write the plan as a page to print (HTML) to this file.")
	private Optional<String> sheet = Optional.empty();

	@Option(names = "--picture", paramLabel = "FILE", description = "Write the plan as a picture (SVG) to this file.")
	private Optional<String> picture = Optional.empty();

	@Option(names = "--against", paramLabel = "PROJECT", description = "Tell what moved against the plan by the rules in this other folder.")
	private Optional<String> against = Optional.empty();

	@Mixin
	private HelpOption help;

	PlanCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws IOException {
		Optional<Target> page = Target.of(session, sheet);
		Optional<Target> drawing = Target.of(session, picture);
		if (page.isPresent() && drawing.isPresent() && page.get().isSame(drawing.get())) {
			throw new CommandException(ExitCode.USAGE, "The page and the picture cannot be written to one file.");
		}
		if (!options.areWhole()) {
			throw new CommandException(ExitCode.USAGE, "A plan is for one complaint of one family: name both, with --vehicle and --complaint.");
		}
		PlanShown plan = plan(options.given(), "");
		Optional<PlanShown> before = against.isPresent() ? Optional.of(plan(against.get(), against.get() + ": ")) : Optional.empty();
		Output out = page.filter(target -> target.tell() != session.out()).or(() -> drawing.filter(target -> target.tell() != session.out())).map(Target::tell).orElse(session.out());
		tell(plan, before.map(earlier -> moved(plan, earlier)), out);
		if (page.isPresent()) {
			write(page.get(), plan.sheet());
		}
		if (drawing.isPresent()) {
			write(drawing.get(), Svg.write(Layout.of(plan.picture(), TextMetrics.FIXED, session.cancelled()::get), Theme.LIGHT));
		}
		return plan.tree().isPresent() ? ExitCode.FINE : ExitCode.FLAWS;
	}

	private PlanShown plan(String folder, String where) throws IOException {
		RuleBase rules = BenchCommand.read(session, folder, "the plan does").rules();
		Bench.Vehicle now = options.opening(rules, where).bench().now();
		BooleanSupplier cancelled = session.cancelled()::get;
		return PlanShown.ofReadings(rules, now.family(), now.readings(), cancelled);
	}

	private String moved(PlanShown plan, PlanShown earlier) {
		String moved = plan.against(earlier);
		return moved.isEmpty() ? "Nothing moved against " + against.get() + "." : "Against " + against.get() + ": " + moved + ".";
	}

	private void tell(PlanShown plan, Optional<String> moved, Output out) {
		out.println(session.style().strong(Style.safe(plan.title())));
		moved.ifPresent(text -> out.println(Style.safe(text)));
		plan.known().forEach(known -> out.println(Style.safe("With " + known)));
		plan.cautions().forEach(caution -> out.println(Style.safe(said(caution))));
		plan.facts().forEach(fact -> out.println(Style.safe(fact)));
		plan.tree().ifPresent(tree -> {
			if (!plan.leftOut().isEmpty()) {
				out.println(Style.safe(plan.leftOut()));
			}
			out.println();
			for (PlanText.Line line : PlanText.of(tree)) {
				String reached = line.number().isEmpty() ? "" : Style.safe(line.number() + " " + line.result() + ": ");
				String what = Style.safe(line.what());
				out.println(INDENT.repeat(line.depth()) + reached + (line.step() ? session.style().strong(what) : what));
			}
		});
	}

	private static String said(Caution caution) {
		return "Caution, " + caution.title() + ": " + String.join(" ", caution.cautions());
	}

	private void write(Target target, String text) throws IOException {
		target.writeLike(text.getBytes(StandardCharsets.UTF_8));
		session.say(target.tell(), Style.safe("Wrote " + target.given()));
	}
}
