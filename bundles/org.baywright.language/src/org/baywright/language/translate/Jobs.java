package org.baywright.language.translate;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Case;
import org.baywright.language.bay.Reading;
import org.baywright.language.index.Facts;
import org.baywright.language.index.FamilyTree;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Refs.Ref;
import org.baywright.language.index.Symbol;
import org.baywright.language.text.Spelling;
import org.baywright.model.CodeReading;
import org.baywright.model.CodeStatus;
import org.baywright.model.Domain;
import org.baywright.model.Mend;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;
import org.baywright.model.Written;
import org.baywright.model.code.Vin;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** Finished jobs. */
final class Jobs {

	private static final String[] CODE_WORDS = { "present", "absent", "unread", "active", "stored", "pending", "untested" };
	private static final BigDecimal MINUTES_OF_A_DAY = BigDecimal.valueOf(1440);

	private final Context context;
	private final FamilyTree families;
	private final Limits limits;
	private final Values values;

	Jobs(Context context, FamilyTree families, Limits limits, Values values) {
		this.context = context;
		this.families = families;
		this.limits = limits;
		this.values = values;
	}

	/** Translates a job; what is returned is right only if the report is not broken afterwards. */
	Optional<org.baywright.model.Case> job(Case job) {
		if (job.getName() == null) {
			return Optional.empty();
		}
		Span span = context.source.span(job, BayPackage.Literals.CASE__NAME);
		Optional<Ref> family = Refs.one(job, BayPackage.Literals.CASE__FAMILY);
		if (family.isEmpty()) {
			context.report.error(ProblemKind.JOB_WITHOUT_FAMILY, span, "The job does not say what vehicle it was done on.",
					"Add `on` with the family.");
			return Optional.empty();
		}
		Optional<Symbol> known = context.resolve(family.get(), Kind.FAMILY,
				job.getTraits().isEmpty() ? Defining.bare(Kind.FAMILY, family.get().name()) : List.of());
		if (known.isEmpty()) {
			return Optional.empty();
		}
		String name = known.get().name();
		if (((Facts.OfFamily) known.get().facts()).base()) {
			context.report.error(ProblemKind.JOB_ON_BASE, context.source.span(family.get().node()),
					"`" + name + "` is a " + (((Facts.OfFamily) known.get().facts()).family() == org.baywright.model.Family.Kind.SYSTEM
							? "system that families have" : "base for other families") + "; no vehicle belongs to it.",
					"Name the family of the vehicle.");
		}
		checkVin(job, name);
		Set<String> seen = new HashSet<>();
		List<org.baywright.model.Reading> traits = new ArrayList<>();
		List<org.baywright.model.Reading> found = new ArrayList<>();
		for (Reading reading : job.getTraits()) {
			reading(reading, name, seen, true).ifPresent(traits::add);
		}
		for (Reading reading : job.getFound()) {
			reading(reading, name, seen, false).ifPresent(found::add);
		}
		List<String> causes = context.resolveAll(job, BayPackage.Literals.CASE__FAULTS, Kind.FAULT);
		if (causes.isEmpty() && !job.isReferred() && !context.report.isBroken()) {
			context.report.error(ProblemKind.JOB_WITHOUT_END, span, "The job does not say what the cause was.",
					"Add `was` with the fault, or `was referred`.");
		}
		return Optional.of(new org.baywright.model.Case(job.getName(), name, traits, found, causes, job.isReferred(),
				record(job, name), Optional.ofNullable(job.getVin()), span));
	}

	private org.baywright.model.Case.Record record(Case job, String family) {
		List<org.baywright.model.Reading> afterwards = new ArrayList<>();
		Set<String> seen = new HashSet<>();
		for (Reading reading : job.getAfterwards()) {
			reading(reading, family, seen, false).ifPresent(afterwards::add);
		}
		Optional<BigDecimal> back = job.getBack() == null ? Optional.empty()
				: Optional.of(limits.minutes(job.getBack()).divide(MINUTES_OF_A_DAY, 1, RoundingMode.HALF_UP).stripTrailingZeros());
		return new org.baywright.model.Case.Record(limits.minutes(job.getTook()),
				job.getSpent() == null ? BigDecimal.ZERO : job.getSpent(), afterwards, back);
	}

	private void checkVin(Case job, String family) {
		String vin = job.getVin();
		if (vin == null) {
			return;
		}
		Span span = context.source.span(job, BayPackage.Literals.CASE__VIN);
		Optional<String> wrong = Vin.wrong(vin);
		if (wrong.isPresent()) {
			context.report.tell(ProblemKind.VIN_FORM, span, wrong.get(), "Copy the number from the vehicle again.");
			return;
		}
		List<Facts.Vin> patterns = families.lineage(family).stream().flatMap(line -> families.facts(line).stream())
				.flatMap(facts -> facts.vins().stream()).toList();
		List<Facts.Vin> matching = patterns.stream().filter(pattern -> Vin.matches(vin, pattern.pattern())).toList();
		if (!patterns.isEmpty() && matching.isEmpty()) {
			context.report.tell(ProblemKind.VIN_NOT_OF_FAMILY, span,
					"The number does not begin like those of the family `" + family + "`.",
					"Correct the family or the number, or add its beginning to the family with `vin`.");
		}
		if (matching.stream().anyMatch(Facts.Vin::checkDigit) && !Vin.hasCheckDigit(vin)) {
			context.report.tell(ProblemKind.VIN_CHECK_DIGIT, span,
					"The check digit in position 9 is " + vin.charAt(8) + "; the other characters ask for "
							+ Vin.checkDigit(vin) + ".",
					"Copy the number from the vehicle again.");
		}
	}

	private Optional<org.baywright.model.Reading> reading(Reading reading, String family, Set<String> seen,
			boolean traitsOnly) {
		Optional<Ref> ref = Refs.one(reading, BayPackage.Literals.READING__SUBJECT);
		if (ref.isEmpty()) {
			context.report.incomplete();
			return Optional.empty();
		}
		Span place = context.source.span(ref.get().node());
		List<Symbol> found = context.find(Key.subject(ref.get().name()));
		boolean unfit = found.isEmpty() || found.get(0).kind() == Kind.FAULT
				|| traitsOnly && found.get(0).kind() != Kind.TRAIT;
		if (unfit) {
			unknown(reading, ref.get(), family, traitsOnly, found);
			return Optional.empty();
		}
		if (!seen.add(ref.get().name())) {
			context.report.error(ProblemKind.READING_TWICE, place, "`" + ref.get().name() + "` is given twice.", "Keep one of the two.");
			return Optional.empty();
		}
		Symbol symbol = found.get(0);
		Span span = context.source.span(reading);
		if (!families.reaches(symbol.facts().reach(), family)) {
			context.report.error(ProblemKind.MODULE_NOT_ON_VEHICLE, place, "The " + symbol.kind().word() + " `" + symbol.name()
					+ "` is not for vehicles of the family `" + family + "`.", "Correct the family, or name it behind `for` at the "
							+ symbol.kind().word() + ".");
			return Optional.empty();
		}
		return switch (symbol.kind()) {
		case SIGN -> presence(reading, symbol, "present", "absent")
				.map(word -> new org.baywright.model.Reading.SignSeen(symbol.name(), word.equals("present"), span));
		case CODE -> fitted(symbol, ((Facts.OfCode) symbol.facts()).module(), family, place)
				? codeReading(reading, symbol).map(read -> new org.baywright.model.Reading.CodeRead(symbol.name(), read, span))
				: Optional.empty();
		case MODULE -> fitted(symbol, symbol.name(), family, place)
				? presence(reading, symbol, "answers", "silent")
						.map(word -> new org.baywright.model.Reading.ModuleAsked(symbol.name(), word.equals("answers"), span))
				: Optional.empty();
		case TEST -> ((Facts.OfTest) symbol.facts()).domain()
				.flatMap(domain -> value(reading, symbol.name(), "", domain, span)).or(() -> {
					context.report.incomplete();
					return Optional.empty();
				});
		case TRAIT -> trait(reading, ref.get(), family, span);
		default -> throw new IllegalStateException(symbol.kind().word());
		};
	}

	private void unknown(Reading reading, Ref ref, String family, boolean traitsOnly, List<Symbol> found) {
		List<String> names = new ArrayList<>();
		for (Kind kind : traitsOnly ? List.of(Kind.TRAIT) : said(reading)) {
			names.addAll(kind == Kind.TRAIT ? traitNames(family) : context.names(kind));
		}
		// a finding that the job has already was not meant
		((Case) reading.eContainer()).getFound().forEach(other -> names.removeAll(Refs.names(other, BayPackage.Literals.READING__SUBJECT)));
		String wanted = traitsOnly ? "trait" : "sign, test, code or module";
		String message = found.isEmpty() ? "There is no " + wanted + " `" + ref.name() + "`."
				: "`" + ref.name() + "` is " + found.get(0).kind().aWord() + ", and a " + wanted + " is needed here.";
		Span span = context.source.span(ref.node());
		List<Mend> define = found.isEmpty() && !traitsOnly && said(reading).contains(Kind.SIGN) ? Defining.bare(Kind.SIGN, ref.name()) : List.of();
		context.report.error(ProblemKind.UNKNOWN_NAME, span, message,
				Spelling.advice(span, ref.name(), names, "Correct the name.").or(define));
	}

	/** Returns the kinds of things of which one can say what a reading says. */
	private static List<Kind> said(Reading reading) {
		if (reading.getQuantity() != null || Refs.one(reading, BayPackage.Literals.READING__VALUE).isPresent()) {
			return List.of(Kind.TRAIT, Kind.TEST);
		}
		if (reading.getStatus() != null) {
			return List.of(Kind.CODE);
		} else if (!isWritten(reading)) {
			return List.of(Kind.SIGN, Kind.CODE);
		}
		return switch (reading.getPresence()) {
		case PRESENT, ABSENT -> List.of(Kind.SIGN, Kind.CODE);
		case UNREAD, ACTIVE, STORED, PENDING, UNTESTED -> List.of(Kind.CODE);
		case ANSWERS, SILENT -> List.of(Kind.MODULE);
		};
	}

	/** Whether a reading says a word of presence. */
	private static boolean isWritten(Reading reading) {
		return !NodeModelUtils.findNodesForFeature(reading, BayPackage.Literals.READING__PRESENCE).isEmpty();
	}

	/** What a job found of a code: in words, or as the status byte that the tool shows. */
	private Optional<CodeReading> codeReading(Reading reading, Symbol symbol) {
		if (reading.getStatus() == null) {
			return presence(reading, symbol, CODE_WORDS).map(word -> CodeReading.valueOf(word.toUpperCase(Locale.ROOT)));
		}
		String digits = reading.getStatus().toLowerCase(Locale.ROOT).replaceFirst("^0x", "");
		if (digits.matches("[0-9a-f]{2}")) {
			return Optional.of(CodeStatus.ofByte(Integer.parseInt(digits, 16)));
		}
		context.report.error(ProblemKind.STATUS_BYTE, context.source.span(reading, BayPackage.Literals.READING__STATUS),
				"`" + reading.getStatus() + "` is no status byte: that is two digits from 0 to 9 and A to F (ISO 14229-1).",
				"Copy the two digits from the tool, such as `" + Written.name(symbol.name()) + " status 2F`, or write the state in words: "
						+ Spelling.either(List.of(CODE_WORDS)) + ".");
		return Optional.empty();
	}

	private List<String> traitNames(String family) {
		return families.traits(family).stream().map(Symbol::name).toList();
	}

	private boolean fitted(Symbol symbol, String module, String family, Span place) {
		Optional<Symbol> holder = context.find(Kind.MODULE, module);
		if (holder.isEmpty()) {
			context.report.incomplete();
			return false;
		}
		if (families.reaches(((Facts.OfModule) holder.get().facts()).families(), family)) {
			return true;
		}
		context.report.error(ProblemKind.MODULE_NOT_ON_VEHICLE, place, "A vehicle of the family `" + family + "` has no module `" + module + "`.",
				"Correct the family or the " + symbol.kind().word() + ", or name the family under `on` at the module.");
		return false;
	}

	private Optional<String> presence(Reading reading, Symbol symbol, String... words) {
		boolean written = isWritten(reading);
		boolean other = reading.getQuantity() != null || reading.getStatus() != null
				|| Refs.one(reading, BayPackage.Literals.READING__VALUE).isPresent();
		String word = written ? reading.getPresence().getLiteral() : "present";
		if (other || !List.of(words).contains(word)) {
			String message = written || other
					? "`" + symbol.name() + "` is " + symbol.kind().aWord() + ", of which one cannot say `"
							+ context.source.written(reading).substring(Math.min(symbol.name().length(),
									context.source.written(reading).length())).strip()
							+ "`."
					: "`" + symbol.name() + "` is " + symbol.kind().aWord() + ", and the job does not say what of it.";
			context.report.error(ProblemKind.WRONG_PREDICATE, context.source.span(reading), message,
					"Write " + Spelling.either(List.of(words)) + " after it.");
			return Optional.empty();
		}
		return Optional.of(word);
	}

	private Optional<org.baywright.model.Reading> trait(Reading reading, Ref ref, String family, Span span) {
		Optional<Facts.OfTrait> trait = families.trait(family, ref.name()).map(symbol -> (Facts.OfTrait) symbol.facts());
		if (trait.isEmpty()) {
			Span place = context.source.span(ref.node());
			context.report.error(ProblemKind.TRAIT_NOT_IN_FAMILY, place,
					"The family `" + family + "` has no trait `" + ref.name() + "`.",
					Spelling.advice(place, ref.name(), traitNames(family), "Take it out, or define it in the family."));
			return Optional.empty();
		}
		if (trait.get().domain().isEmpty()) {
			context.report.incomplete();
			return Optional.empty();
		}
		return value(reading, ref.name(), trait.get().word(), trait.get().domain().get(), span);
	}

	private Optional<org.baywright.model.Reading> value(Reading reading, String name, String word, Domain domain,
			Span span) {
		Values.Owner owner = new Values.Owner(name, word, List.of(domain));
		Optional<Ref> value = Refs.one(reading, BayPackage.Literals.READING__VALUE);
		if (isWritten(reading) && owner.names().contains(reading.getPresence().getLiteral())) {
			// a result that has the name of a state of codes
			return Optional.of(new org.baywright.model.Reading.Named(name, reading.getPresence().getLiteral(), span));
		}
		if (value.isPresent()) {
			return values.isNamed(value.get(), owner)
					? Optional.of(new org.baywright.model.Reading.Named(name, value.get().name(), span)) : Optional.empty();
		}
		if (reading.getQuantity() == null || !(domain instanceof Domain.Quantity quantity)) {
			String such = domain instanceof Domain.Quantity number ? number.sayNumber(number.low()) : owner.names().get(0);
			context.report.error(domain instanceof Domain.Quantity ? ProblemKind.NUMBER_NEEDED : ProblemKind.NAME_NEEDED, span,
					"The job does not say which value `" + name + "` had.", "Write a value, such as `" + name + " " + such + "`.");
			return Optional.empty();
		}
		return number(reading, owner, quantity)
				.map(measured -> new org.baywright.model.Reading.Measured(name, measured, span));
	}

	private Optional<BigDecimal> number(Reading reading, Values.Owner owner, Domain.Quantity domain) {
		Optional<BigDecimal> converted = limits.convert(reading.getQuantity(), reading.getQuantity().getUnit(),
				owner.target());
		if (converted.isEmpty()) {
			return converted;
		}
		BigDecimal value = converted.get();
		Span span = context.source.span(reading.getQuantity());
		String written = context.source.written(reading.getQuantity());
		if (value.compareTo(domain.low()) < 0 || value.compareTo(domain.high()) > 0) {
			context.report.error(ProblemKind.READING_OUT_OF_RANGE, span,
					written + " lies outside of what `" + owner.name() + "` can give, " + Limits.range(domain) + ".",
					owner.names().isEmpty() ? "Correct the value, or widen the range of `" + owner.name() + "`."
							: "Correct the value, or write what is shown beyond the range: " + Spelling.either(owner.names()) + ".");
			return Optional.empty();
		}
		if (domain.floorIndex(value) != domain.ceilIndex(value)) {
			context.report.tell(ProblemKind.READING_OFF_STEP, span,
					written + " lies between two steps of `" + owner.name() + "`, which is read to "
							+ domain.sayNumber(domain.step()) + ".",
					limits.onStep(reading.getQuantity(), reading.getQuantity().getUnit(), domain, List.of(domain.floorIndex(value))));
		}
		return Optional.of(value);
	}
}
