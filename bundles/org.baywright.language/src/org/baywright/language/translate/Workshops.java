package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Scan;
import org.baywright.language.bay.Scanned;
import org.baywright.language.bay.Workshop;
import org.baywright.model.ProblemKind;
import org.baywright.model.Skill;

/** What a workshop has, and what its work costs. */
final class Workshops {

	private final Context context;
	private final Limits limits;

	Workshops(Context context, Limits limits) {
		this.context = context;
		this.limits = limits;
	}

	org.baywright.model.Workshop workshop(Workshop workshop) {
		return new org.baywright.model.Workshop(Context.title(workshop.getTitle(), ""), workshop.getHour().stream().filter(Objects::nonNull).findFirst(),
				scan(workshop, Scanned.EACH), scan(workshop, Scanned.ALL), context.tools(workshop, BayPackage.Literals.WORKSHOP__LACKS),
				workshop.getSkill().stream().filter(Objects::nonNull).findFirst().map(skill -> Skill.valueOf(skill.getName().toUpperCase(Locale.ROOT))),
				context.source.span(Clauses.keyword(workshop, "workshop")));
	}

	/** Translates what reading each module takes, or all at once; reports one that is given again. */
	private Optional<org.baywright.model.Workshop.Scan> scan(Workshop workshop, Scanned modules) {
		List<Scan> written = workshop.getScans().stream().filter(scan -> scan.getModules() == modules).toList();
		if (written.size() > 1) {
			context.report.error(ProblemKind.CLAUSE_TWICE, context.source.span(Clauses.keyword(written.get(1), "scan")),
					"`scan " + modules.getLiteral() + "` is given twice.", "Keep one of the two.");
		}
		return written.stream().map(this::scan).toList().stream().findFirst();
	}

	private org.baywright.model.Workshop.Scan scan(Scan scan) {
		return new org.baywright.model.Workshop.Scan(context.tools(scan, BayPackage.Literals.SCAN__TOOLS), limits.minutes(scan.getTakes()),
				scan.getCost() == null ? BigDecimal.ZERO : scan.getCost());
	}
}
