package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Code;
import org.baywright.language.bay.Cycle;
import org.baywright.language.bay.CyclePart;
import org.baywright.language.bay.DtcText;
import org.baywright.language.bay.Exclusive;
import org.baywright.language.bay.Family;
import org.baywright.language.bay.Fault;
import org.baywright.language.bay.Hazard;
import org.baywright.language.bay.J1939Text;
import org.baywright.language.bay.Module;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.bay.Part;
import org.baywright.language.bay.Picture;
import org.baywright.language.bay.RawText;
import org.baywright.language.bay.RunCondition;
import org.baywright.language.bay.Sign;
import org.baywright.language.bay.State;
import org.baywright.language.bay.Trait;
import org.baywright.language.bay.VinPattern;
import org.baywright.language.index.Domains;
import org.baywright.language.index.FamilyTree;
import org.baywright.language.index.FileSymbols;
import org.baywright.language.index.Kind;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Refs.Ref;
import org.baywright.language.index.Symbol;
import org.baywright.language.text.Advice;
import org.baywright.model.Domain;
import org.baywright.model.PictureFile;
import org.baywright.model.Precaution;
import org.baywright.model.Mend;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;
import org.baywright.model.code.CodeText;
import org.baywright.model.code.Dtc;
import org.baywright.model.code.J1939Code;
import org.baywright.model.code.RawCode;
import org.baywright.model.code.Vin;
import org.eclipse.emf.common.util.EList;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** What is declared once and used everywhere: families, states, hazards, modules, codes, parts. */
final class Declarations {

	private final Context context;
	private final FamilyTree families;
	private final Limits limits;
	private final Preparations preparations;
	private final Scopes scopes;

	Declarations(Context context, FamilyTree families, Limits limits, Values values, Scopes scopes) {
		this.scopes = scopes;
		this.limits = limits;
		preparations = new Preparations(context, limits, values);
		this.context = context;
		this.families = families;
	}

	org.baywright.model.Family family(Family family) {
		Span span = context.source.span(family, BayPackage.Literals.FAMILY__NAME);
		List<org.baywright.model.Trait> traits = new ArrayList<>();
		Set<String> seen = new HashSet<>();
		for (Trait trait : family.getTraits()) {
			if (trait.getName() == null) {
				continue;
			}
			Span place = context.source.span(trait, BayPackage.Literals.SUBJECT__NAME);
			if (!seen.add(trait.getName())) {
				context.report.error(ProblemKind.DUPLICATE_NAME, place,
						"The family `" + family.getName() + "` already has a trait `" + trait.getName() + "`.",
						"Put all values into one trait, or choose another name.");
				continue;
			}
			trait(trait, place).ifPresent(traits::add);
		}
		List<org.baywright.model.VinPattern> vins = new ArrayList<>();
		for (VinPattern vin : family.getVins()) {
			if (family.isSystem()) {
				context.report.tell(ProblemKind.VIN_OF_SYSTEM, context.source.span(vin), "No vehicle belongs to a system, so it has no numbers.",
						"Move it to the families that have the system.");
				continue;
			}
			vinPattern(vin).ifPresent(vins::add);
		}
		checkInherited(family, seen);
		return new org.baywright.model.Family(family.getName(), Context.title(family.getTitle(), family.getName()),
				parent(family), systems(family), FileSymbols.kind(family), traits, vins, cycles(family), span);
	}

	private List<org.baywright.model.Cycle> cycles(Family family) {
		List<org.baywright.model.Cycle> cycles = new ArrayList<>();
		Set<String> said = new HashSet<>();
		for (Cycle cycle : family.getCycles()) {
			Optional<Symbol> state = Refs.one(cycle, BayPackage.Literals.CYCLE__STATE).flatMap(ref -> context.resolve(ref, Kind.STATE));
			if (state.isEmpty()) {
				continue;
			}
			if (!said.add(state.get().name())) {
				context.report.tell(ProblemKind.CYCLE_TWICE, context.source.span(cycle),
						"The family says twice what a cycle of `" + state.get().name() + "` is.", "Keep one of the two.");
				continue;
			}
			List<org.baywright.model.Cycle.Step> steps = new ArrayList<>();
			for (CyclePart step : cycle.getSteps()) {
				if (step.getWait() != null) {
					steps.add(new org.baywright.model.Cycle.Step(Optional.empty(), limits.minutes(step.getWait())));
				} else {
					Refs.one(step, BayPackage.Literals.CYCLE_PART__VALUE).flatMap(ref -> context.value(ref, state.get()))
							.ifPresent(value -> steps.add(new org.baywright.model.Cycle.Step(Optional.of(value), BigDecimal.ZERO)));
				}
			}
			if (steps.stream().map(step -> step.value()).filter(Optional::isPresent).distinct().count() < 2) {
				context.report.tell(ProblemKind.CYCLE_SHORT, context.source.span(cycle), "A cycle goes from one value to another.",
						"Name at least two values, such as `off, wait 30 s, on`.");
				continue;
			}
			cycles.add(new org.baywright.model.Cycle(state.get().name(), steps, context.source.span(cycle)));
		}
		return cycles;
	}

	Preparations preparations() {
		return preparations;
	}

	org.baywright.model.Sign sign(Sign sign) {
		List<Precaution> precautions = new ArrayList<>();
		for (var written : sign.getPrecautions()) {
			Precaution.Kind kind = Precaution.Kind.valueOf(written.getKind().getName().toUpperCase(Locale.ROOT));
			if (kind == Precaution.Kind.MAKE_SAFE && written.getText() == null) {
				context.report.tell(ProblemKind.MAKE_SAFE_HOW, context.source.span(written), "`make_safe` does not say how.",
						"Write what must be done first behind it, in quotes.");
			}
			precautions.add(new Precaution(kind, written.getText() == null ? "" : written.getText()));
		}
		return new org.baywright.model.Sign(sign.getName(), Context.title(sign.getTitle(), sign.getName()), scopes.of(sign.getReaches()), sign.isIntermittent(),
				precautions, context.source.span(sign, BayPackage.Literals.SUBJECT__NAME));
	}

	private Optional<String> parent(Family family) {
		Optional<Ref> ref = Refs.one(family, BayPackage.Literals.FAMILY__PARENT);
		Optional<String> parent = ref.flatMap(found -> context.resolve(found, Kind.FAMILY)).map(symbol -> symbol.name());
		if (parent.isEmpty() || closesCircle(family, ref.get(), parent.get())) {
			return Optional.empty();
		}
		boolean system = isSystem(parent.get());
		if (system != family.isSystem()) {
			context.report.error(ProblemKind.LIKE_OR_HAS, context.source.span(ref.get().node()),
					"`" + parent.get() + "` is a " + (system ? "system" : "family") + ", and `" + family.getName() + "` is a "
							+ (system ? "family" : "system") + ".",
					system ? "Write `has " + parent.get() + "`." : "Take `like` out: a system is like other systems only.");
			return Optional.empty();
		}
		return parent;
	}

	private List<String> systems(Family family) {
		List<String> systems = new ArrayList<>();
		for (Ref ref : Refs.all(family, BayPackage.Literals.FAMILY__SYSTEMS)) {
			Optional<String> system = context.resolve(ref, Kind.FAMILY).map(symbol -> symbol.name());
			if (system.isEmpty() || closesCircle(family, ref, system.get())) {
				continue;
			}
			if (!isSystem(system.get())) {
				context.report.error(ProblemKind.LIKE_OR_HAS, context.source.span(ref.node()),
						"`" + system.get() + "` is a family, and a family has systems.",
						"Write `like " + system.get() + "`, or make a system of it.");
			} else if (systems.contains(system.get())) {
				context.report.tell(ProblemKind.SYSTEM_TWICE, context.source.span(ref.node()),
						"`" + system.get() + "` is named twice.", "Name each system once.");
			} else {
				systems.add(system.get());
			}
		}
		return systems;
	}

	private boolean isSystem(String family) {
		return families.facts(family).filter(facts -> facts.family() == org.baywright.model.Family.Kind.SYSTEM).isPresent();
	}

	private boolean closesCircle(Family family, Ref ref, String above) {
		List<String> path = families.path(above, family.getName());
		if (path.isEmpty()) {
			return false;
		}
		context.report.error(ProblemKind.FAMILY_CIRCLE, context.source.span(ref.node()),
				"The family `" + family.getName() + "` builds on itself: " + family.getName() + " on " + String.join(" on ", path)
						+ ".",
				"Take one `like` or `has` out of the circle.");
		return true;
	}

	/** Reports a trait that comes from two sides with unlike values, where the family does not say which it is. */
	private void checkInherited(Family family, Set<String> own) {
		List<String> sides = new ArrayList<>(Refs.names(family, BayPackage.Literals.FAMILY__SYSTEMS));
		Refs.first(family, BayPackage.Literals.FAMILY__PARENT).ifPresent(sides::add);
		Set<String> said = new HashSet<>(own);
		family.getCycles().forEach(cycle -> Refs.first(cycle, BayPackage.Literals.CYCLE__STATE).ifPresent(state -> said.add("cycle " + state)));
		Span span = context.source.span(family, BayPackage.Literals.FAMILY__NAME);
		for (int i = 0; i < sides.size(); i++) {
			for (int j = i + 1; j < sides.size(); j++) {
				String near = sides.get(i);
				String far = sides.get(j);
				families.unlike(near, far).stream().filter(said::add).forEach(trait -> context.report.error(ProblemKind.TRAIT_UNLIKE, span,
						"`" + family.getName() + "` gets the trait `" + trait + "` from `" + near + "` and from `" + far + "`, with unlike values.",
						"Define the trait in the family itself, or rename one of the two."));
				families.unlikeCycles(near, far).stream().filter(state -> said.add("cycle " + state))
						.forEach(state -> context.report.error(ProblemKind.CYCLE_UNLIKE, span,
								"`" + family.getName() + "` gets the cycle of `" + state + "` from `" + near + "` and from `" + far
										+ "`, in unlike ways.",
								"Say in the family itself what a cycle is."));
			}
		}
	}

	private Optional<org.baywright.model.Trait> trait(Trait trait, Span place) {
		checkValues(trait.getValues(), "trait", trait.getName());
		for (var bound : List.of(BayPackage.Literals.TRAIT__LOW, BayPackage.Literals.TRAIT__HIGH)) {
			BigDecimal number = (BigDecimal) trait.eGet(bound);
			if (number != null && !Domains.isWhole(number)) {
				context.report.error(ProblemKind.WHOLE_NUMBER_NEEDED, context.source.span(trait, bound),
						"A trait counts in whole numbers; " + Limits.say(number) + " is none.", "Write a whole number.");
				return Optional.empty();
			}
		}
		checkRange(trait.getLow(), trait.getHigh(), BigDecimal.ONE,
				context.source.span(trait, BayPackage.Literals.TRAIT__LOW));
		Optional<Domain> domain = Domains.of(trait, this::place);
		String word = trait.getWord() == null ? "" : trait.getWord();
		return domain.map(values -> new org.baywright.model.Trait(trait.getName(), word, values, place));
	}

	/** Reports a range that is reversed or holds more values than anybody reads off. */
	boolean checkRange(BigDecimal low, BigDecimal high, BigDecimal step, Span span) {
		if (low == null || high == null || step == null) {
			return true;
		}
		if (low.compareTo(high) > 0) {
			context.report.error(ProblemKind.RANGE_REVERSED, span,
					"The range " + Limits.say(low) + " .. " + Limits.say(high) + " ends before it begins.",
					"Write the smaller value first.");
			return false;
		}
		if (step.signum() > 0 && high.subtract(low)
				.compareTo(step.multiply(BigDecimal.valueOf(Domain.Quantity.MAX_SIZE - 1L))) >= 0) {
			context.report.error(ProblemKind.TOO_MANY_STEPS, span,
					"The range has more than " + Domain.Quantity.MAX_SIZE + " steps.", "Make the step larger.");
			return false;
		}
		return true;
	}

	private Optional<org.baywright.model.VinPattern> vinPattern(VinPattern vin) {
		if (vin.getPattern() == null) {
			return Optional.empty();
		}
		Span span = context.source.span(vin, BayPackage.Literals.VIN_PATTERN__PATTERN);
		Optional<String> wrong = Vin.wrongPattern(vin.getPattern());
		if (wrong.isPresent()) {
			context.report.tell(ProblemKind.VIN_FORM, span, wrong.get(),
					"Write the first characters, with ? for any character.");
			return Optional.empty();
		}
		return Optional.of(new org.baywright.model.VinPattern(vin.getPattern(), vin.isCheckDigit(), span));
	}

	org.baywright.model.State state(State state) {
		checkValues(state.getValues(), "state", state.getName());
		return new org.baywright.model.State(state.getName(), Context.title(state.getTitle(), state.getName()),
				values(state.getValues()), minutes(state.getValues()), context.source.span(state, BayPackage.Literals.STATE__NAME));
	}

	private Map<String, BigDecimal> minutes(List<NamedValue> values) {
		Map<String, BigDecimal> minutes = new HashMap<>();
		values.stream().filter(value -> value.getName() != null && value.getTakes() != null)
				.forEach(value -> minutes.putIfAbsent(value.getName(), limits.minutes(value.getTakes())));
		return minutes;
	}

	org.baywright.model.Hazard hazard(Hazard hazard) {
		return new org.baywright.model.Hazard(hazard.getName(), Context.title(hazard.getTitle(), hazard.getName()),
				hazard.getCautions(), hazard.getLicensed(), hazard.getReferences(),
				context.source.span(hazard, BayPackage.Literals.HAZARD__NAME));
	}

	org.baywright.model.Module module(Module module) {
		// everywhere else a comma means that all of it must be so
		List<Span> commas = NodeModelUtils.findNodesForFeature(module, BayPackage.Literals.MODULE__COMMAS).stream().map(context.source::span).toList();
		if (!commas.isEmpty()) {
			context.report.tell(ProblemKind.COMMA_FOR_OR, commas.get(0), "The module answers in any of these states, and a comma means all of them.",
					new Advice("Write `or` between them.", List.of(new Mend.Write("Write or",
							commas.stream().map(comma -> new Mend.Piece(comma, " or")).toList()))));
		}
		return new org.baywright.model.Module(module.getName(), Context.title(module.getTitle(), module.getName()),
				context.resolveAll(module, BayPackage.Literals.MODULE__FAMILIES, Kind.FAMILY),
				context.settings(module.getAnswersIn()), context.tools(module, BayPackage.Literals.MODULE__TOOLS),
				limits.minutes(module.getTakes()), module.getCost() == null ? BigDecimal.ZERO : module.getCost(),
				context.source.span(module, BayPackage.Literals.SUBJECT__NAME));
	}

	/** Translates a code, or returns nothing if its module is not known. */
	Optional<org.baywright.model.Code> code(Code code) {
		Optional<String> module = context.resolveOne(code, BayPackage.Literals.CODE__MODULE, Kind.MODULE);
		Optional<CodeText> text = codeText(code);
		List<org.baywright.model.StateSetting> runsIn = new ArrayList<>();
		List<org.baywright.model.Preparation> runsAfter = new ArrayList<>();
		for (RunCondition condition : code.getRuns()) {
			if (condition.getSetting() != null) {
				context.setting(condition.getSetting()).ifPresent(runsIn::add);
			} else {
				preparations.of(condition.getPreparation()).ifPresent(runsAfter::add);
			}
		}
		if (module.isEmpty() || text.isEmpty()) {
			return Optional.empty();
		}
		return Optional.of(new org.baywright.model.Code(code.getName(), Context.title(code.getTitle(), code.getName()),
				module.get(), text.get(), runsIn, runsAfter, context.source.span(code, BayPackage.Literals.SUBJECT__NAME)));
	}

	private Optional<CodeText> codeText(Code code) {
		if (code.getText() instanceof DtcText dtc && dtc.getCode() != null) {
			String sub = dtc.getSub() == null ? "" : dtc.getSub();
			Dtc.wrongCode(dtc.getCode()).ifPresent(wrong -> context.report.tell(ProblemKind.CODE_FORM,
					context.source.span(dtc, BayPackage.Literals.DTC_TEXT__CODE), wrong,
					"Write it as the scan tool shows it, such as U3003, or use `raw` for a maker's own form."));
			if (!sub.isEmpty()) {
				Dtc.wrongSub(sub).ifPresent(wrong -> context.report.tell(ProblemKind.CODE_FORM,
						context.source.span(dtc, BayPackage.Literals.DTC_TEXT__SUB), wrong,
						"Write the two digits after the dash of the code."));
			}
			return Optional.of(Dtc.of(dtc.getCode(), sub));
		}
		if (code.getText() instanceof J1939Text j1939 && j1939.getSpn() != null && j1939.getFmi() != null) {
			int spn = whole(j1939.getSpn(), J1939Code.MAX_SPN + 1);
			int fmi = whole(j1939.getFmi(), J1939Code.MAX_FMI + 1);
			if (spn < 0 || spn > J1939Code.MAX_SPN) {
				context.report.tell(ProblemKind.CODE_FORM, context.source.span(j1939, BayPackage.Literals.J1939_TEXT__SPN),
						"An SPN is a whole number from 0 to " + J1939Code.MAX_SPN + "; " + Limits.say(j1939.getSpn())
								+ " is not.",
						"Write the number that the scan tool shows as SPN.");
			}
			if (fmi < 0 || fmi > J1939Code.MAX_FMI) {
				context.report.tell(ProblemKind.CODE_FORM, context.source.span(j1939, BayPackage.Literals.J1939_TEXT__FMI),
						"An FMI is a whole number from 0 to " + J1939Code.MAX_FMI + "; " + Limits.say(j1939.getFmi())
								+ " is not.",
						"Write the number that the scan tool shows as FMI.");
			} else if (new J1939Code(0, fmi).reserved()) {
				context.report.tell(ProblemKind.CODE_RESERVED, context.source.span(j1939, BayPackage.Literals.J1939_TEXT__FMI),
						"SAE J1939-73 reserves FMI " + fmi + ", so no module should send it.",
						"Check the number that the scan tool shows as FMI.");
			}
			return Optional.of(new J1939Code(spn, fmi));
		}
		if (code.getText() instanceof RawText raw && raw.getText() != null) {
			if (raw.getText().isBlank()) {
				context.report.tell(ProblemKind.CODE_FORM, context.source.span(raw), "The text of the code is empty.",
						"Write the code as the maker's tool shows it.");
			}
			return Optional.of(new RawCode(raw.getText()));
		}
		return Optional.empty();
	}

	/** Returns a whole number, or -1 if it has decimals; what is too large to matter becomes {@code tooLarge}. */
	private static int whole(BigDecimal number, int tooLarge) {
		return !Domains.isWhole(number) ? -1 : number.min(BigDecimal.valueOf(tooLarge)).intValue();
	}

	org.baywright.model.Part part(Part part) {
		List<org.baywright.model.Fault> faults = new ArrayList<>();
		Set<String> seen = new HashSet<>();
		for (Fault fault : part.getFaults()) {
			if (fault.getName() == null) {
				continue;
			}
			Span span = context.source.span(fault, BayPackage.Literals.SUBJECT__NAME);
			if (!seen.add(fault.getName())) {
				context.report.error(ProblemKind.DUPLICATE_NAME, span,
						"The part `" + part.getName() + "` already has a fault `" + fault.getName() + "`.",
						"Choose another name.");
				continue;
			}
			BigDecimal times = fault.getSeen() == null ? BigDecimal.ZERO : fault.getSeen();
			int count = whole(times, Integer.MAX_VALUE);
			if (count < 0) {
				context.report.tell(ProblemKind.WHOLE_NUMBER_NEEDED, context.source.span(fault, BayPackage.Literals.FAULT__SEEN),
						"Jobs are counted in whole numbers; " + Limits.say(times) + " is none.", "Write a whole number.");
			}
			faults.add(new org.baywright.model.Fault(part.getName() + "." + fault.getName(),
					Context.title(fault.getTitle(), fault.getName()), part.getName(), Math.max(0, count), span));
		}
		return new org.baywright.model.Part(part.getName(), Context.title(part.getTitle(), part.getName()),
				Optional.ofNullable(part.getPlace()), pictures(part.getPictures()), context.resolveAll(part, BayPackage.Literals.PART__HAZARDS, Kind.HAZARD), faults,
				context.source.span(part, BayPackage.Literals.PART__NAME));
	}

	/** Translates pictures; of those that can be nowhere in a project nothing is left. */
	List<org.baywright.model.Picture> pictures(List<Picture> written) {
		List<org.baywright.model.Picture> out = new ArrayList<>();
		for (Picture picture : written) {
			if (picture.getFile() != null && picture.getWords() != null) {
				Span span = context.source.span(picture, BayPackage.Literals.PICTURE__FILE);
				Optional<PictureFile.Wrong> wrong = PictureFile.ofName(picture.getFile());
				wrong.ifPresent(found -> context.report.tell(found.kind(), span, found.message(), found.advice()));
				if (wrong.isEmpty()) {
					out.add(new org.baywright.model.Picture(picture.getFile(), picture.getWords(), span));
				}
			}
		}
		return out;
	}

	Optional<org.baywright.model.Exclusive> exclusive(Exclusive exclusive) {
		Set<String> faults = new LinkedHashSet<>();
		for (Ref ref : Refs.all(exclusive, BayPackage.Literals.EXCLUSIVE__FAULTS)) {
			context.resolve(ref, Kind.FAULT).ifPresent(fault -> {
				if (!faults.add(fault.name())) {
					context.report.error(ProblemKind.FAULT_TWICE, context.source.span(ref.node()),
							"`" + fault.name() + "` is named twice.", "Name each fault once.");
				}
			});
		}
		return faults.size() < 2 ? Optional.empty()
				: Optional.of(new org.baywright.model.Exclusive(List.copyOf(faults), context.source.span(exclusive)));
	}

	/** Reports values that are listed twice. */
	void checkValues(List<NamedValue> values, String what, String owner) {
		Set<String> seen = new HashSet<>();
		for (NamedValue value : values) {
			if (value.getName() != null && !seen.add(value.getName())) {
				context.report.error(ProblemKind.VALUE_TWICE, place(value),
						"The " + what + " `" + owner + "` already has a value `" + value.getName() + "`.",
						"List each value once.");
			}
		}
	}

	private List<org.baywright.model.NamedValue> values(EList<NamedValue> values) {
		List<org.baywright.model.NamedValue> out = new ArrayList<>();
		Set<String> seen = new HashSet<>();
		for (NamedValue value : values) {
			if (value.getName() != null && seen.add(value.getName())) {
				out.add(new org.baywright.model.NamedValue(value.getName(),
						Context.title(value.getTitle(), value.getName()), place(value)));
			}
		}
		return out;
	}

	Span place(NamedValue value) {
		return context.source.span(value, BayPackage.Literals.NAMED_VALUE__NAME);
	}
}
