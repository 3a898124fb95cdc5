package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Code;
import org.baywright.language.bay.DtcText;
import org.baywright.language.bay.Exclusive;
import org.baywright.language.bay.Family;
import org.baywright.language.bay.Fault;
import org.baywright.language.bay.Hazard;
import org.baywright.language.bay.J1939Text;
import org.baywright.language.bay.Module;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.bay.Part;
import org.baywright.language.bay.RawText;
import org.baywright.language.bay.State;
import org.baywright.language.bay.Trait;
import org.baywright.language.bay.VinPattern;
import org.baywright.language.index.Domains;
import org.baywright.language.index.FamilyTree;
import org.baywright.language.index.Kind;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Refs.Ref;
import org.baywright.model.Domain;
import org.baywright.model.Span;
import org.baywright.model.code.CodeText;
import org.baywright.model.code.Dtc;
import org.baywright.model.code.J1939Code;
import org.baywright.model.code.RawCode;
import org.baywright.model.code.Vin;
import org.eclipse.emf.common.util.EList;

/** What is declared once and used everywhere: families, states, hazards, modules, codes, parts. */
final class Declarations {

	private final Context context;
	private final FamilyTree families;

	Declarations(Context context, FamilyTree families) {
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
				context.report.error("duplicate-name", place,
						"The family `" + family.getName() + "` already has a trait `" + trait.getName() + "`.",
						"Put all values into one trait, or choose another name.");
				continue;
			}
			trait(trait, place).ifPresent(traits::add);
		}
		List<org.baywright.model.VinPattern> vins = new ArrayList<>();
		for (VinPattern vin : family.getVins()) {
			vinPattern(vin).ifPresent(vins::add);
		}
		return new org.baywright.model.Family(family.getName(), Context.title(family.getTitle(), family.getName()),
				parent(family), family.isBase(), traits, vins, span);
	}

	private Optional<String> parent(Family family) {
		Optional<Ref> ref = Refs.one(family, BayPackage.Literals.FAMILY__PARENT);
		Optional<String> parent = ref.flatMap(found -> context.resolve(found, Kind.FAMILY)).map(symbol -> symbol.name());
		if (parent.isEmpty()) {
			return parent;
		}
		Set<String> line = new LinkedHashSet<>();
		line.add(family.getName());
		for (String next : families.lineage(parent.get())) {
			boolean closes = families.facts(next).flatMap(facts -> facts.parent()).filter(family.getName()::equals)
					.isPresent() || next.equals(family.getName());
			line.add(next);
			if (closes) {
				context.report.error("family-circle", context.source.span(ref.get().node()),
						"The family `" + family.getName() + "` builds on itself: " + String.join(" on ", line) + " on "
								+ family.getName() + ".",
						"Take one `like` out of the circle.");
				return Optional.empty();
			}
		}
		return parent;
	}

	private Optional<org.baywright.model.Trait> trait(Trait trait, Span place) {
		checkValues(trait.getValues(), "trait", trait.getName());
		for (var bound : List.of(BayPackage.Literals.TRAIT__LOW, BayPackage.Literals.TRAIT__HIGH)) {
			BigDecimal number = (BigDecimal) trait.eGet(bound);
			if (number != null && !Domains.isWhole(number)) {
				context.report.error("whole-number-needed", context.source.span(trait, bound),
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
			context.report.error("range-reversed", span,
					"The range " + Limits.say(low) + " .. " + Limits.say(high) + " ends before it begins.",
					"Write the smaller value first.");
			return false;
		}
		if (step.signum() > 0 && high.subtract(low)
				.compareTo(step.multiply(BigDecimal.valueOf(Domain.Quantity.MAX_SIZE - 1L))) >= 0) {
			context.report.error("too-many-steps", span,
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
			context.report.flaw("vin-form", span, wrong.get(),
					"Write the first characters, with ? for any character.");
			return Optional.empty();
		}
		return Optional.of(new org.baywright.model.VinPattern(vin.getPattern(), vin.isCheckDigit(), span));
	}

	org.baywright.model.State state(State state) {
		checkValues(state.getValues(), "state", state.getName());
		return new org.baywright.model.State(state.getName(), Context.title(state.getTitle(), state.getName()),
				values(state.getValues()), context.source.span(state, BayPackage.Literals.STATE__NAME));
	}

	org.baywright.model.Hazard hazard(Hazard hazard) {
		return new org.baywright.model.Hazard(hazard.getName(), Context.title(hazard.getTitle(), hazard.getName()),
				hazard.getCautions(), hazard.getLicensed(), hazard.getReferences(),
				context.source.span(hazard, BayPackage.Literals.HAZARD__NAME));
	}

	org.baywright.model.Module module(Module module) {
		return new org.baywright.model.Module(module.getName(), Context.title(module.getTitle(), module.getName()),
				context.resolveAll(module, BayPackage.Literals.MODULE__FAMILIES, Kind.FAMILY),
				context.settings(module.getAnswersIn()), context.source.span(module, BayPackage.Literals.SUBJECT__NAME));
	}

	/** Translates a code, or returns nothing if its module is not known. */
	Optional<org.baywright.model.Code> code(Code code) {
		Optional<String> module = context.resolveOne(code, BayPackage.Literals.CODE__MODULE, Kind.MODULE);
		Optional<CodeText> text = codeText(code);
		if (module.isEmpty() || text.isEmpty()) {
			return Optional.empty();
		}
		return Optional.of(new org.baywright.model.Code(code.getName(), Context.title(code.getTitle(), code.getName()),
				module.get(), text.get(), context.source.span(code, BayPackage.Literals.SUBJECT__NAME)));
	}

	private Optional<CodeText> codeText(Code code) {
		if (code.getText() instanceof DtcText dtc && dtc.getCode() != null) {
			String sub = dtc.getSub() == null ? "" : dtc.getSub();
			Dtc.wrongCode(dtc.getCode()).ifPresent(wrong -> context.report.flaw("code-form",
					context.source.span(dtc, BayPackage.Literals.DTC_TEXT__CODE), wrong,
					"Write it as the scan tool shows it, such as U3003, or use `raw` for a maker's own form."));
			if (!sub.isEmpty()) {
				Dtc.wrongSub(sub).ifPresent(wrong -> context.report.flaw("code-form",
						context.source.span(dtc, BayPackage.Literals.DTC_TEXT__SUB), wrong,
						"Write the two digits after the dash of the code."));
			}
			return Optional.of(Dtc.of(dtc.getCode(), sub));
		}
		if (code.getText() instanceof J1939Text j1939 && j1939.getSpn() != null && j1939.getFmi() != null) {
			int spn = whole(j1939.getSpn(), J1939Code.MAX_SPN + 1);
			int fmi = whole(j1939.getFmi(), J1939Code.MAX_FMI + 1);
			if (spn < 0 || spn > J1939Code.MAX_SPN) {
				context.report.flaw("code-form", context.source.span(j1939, BayPackage.Literals.J1939_TEXT__SPN),
						"An SPN is a whole number from 0 to " + J1939Code.MAX_SPN + "; " + Limits.say(j1939.getSpn())
								+ " is not.",
						"Write the number that the scan tool shows as SPN.");
			}
			if (fmi < 0 || fmi > J1939Code.MAX_FMI) {
				context.report.flaw("code-form", context.source.span(j1939, BayPackage.Literals.J1939_TEXT__FMI),
						"An FMI is a whole number from 0 to " + J1939Code.MAX_FMI + "; " + Limits.say(j1939.getFmi())
								+ " is not.",
						"Write the number that the scan tool shows as FMI.");
			} else if (new J1939Code(0, fmi).reserved()) {
				context.report.warning("code-reserved", context.source.span(j1939, BayPackage.Literals.J1939_TEXT__FMI),
						"SAE J1939-73 reserves FMI " + fmi + ", so no module should send it.",
						"Check the number that the scan tool shows as FMI.");
			}
			return Optional.of(new J1939Code(spn, fmi));
		}
		if (code.getText() instanceof RawText raw && raw.getText() != null) {
			if (raw.getText().isBlank()) {
				context.report.flaw("code-form", context.source.span(raw), "The text of the code is empty.",
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
				context.report.error("duplicate-name", span,
						"The part `" + part.getName() + "` already has a fault `" + fault.getName() + "`.",
						"Choose another name.");
				continue;
			}
			BigDecimal times = fault.getSeen() == null ? BigDecimal.ZERO : fault.getSeen();
			int count = whole(times, Integer.MAX_VALUE);
			if (count < 0) {
				context.report.flaw("whole-number-needed", context.source.span(fault, BayPackage.Literals.FAULT__SEEN),
						"Jobs are counted in whole numbers; " + Limits.say(times) + " is none.", "Write a whole number.");
			}
			faults.add(new org.baywright.model.Fault(part.getName() + "." + fault.getName(),
					Context.title(fault.getTitle(), fault.getName()), part.getName(), Math.max(0, count), span));
		}
		return new org.baywright.model.Part(part.getName(), Context.title(part.getTitle(), part.getName()),
				context.resolveAll(part, BayPackage.Literals.PART__HAZARDS, Kind.HAZARD), faults,
				context.source.span(part, BayPackage.Literals.PART__NAME));
	}

	Optional<org.baywright.model.Exclusive> exclusive(Exclusive exclusive) {
		Set<String> faults = new LinkedHashSet<>();
		for (Ref ref : Refs.all(exclusive, BayPackage.Literals.EXCLUSIVE__FAULTS)) {
			context.resolve(ref, Kind.FAULT).ifPresent(fault -> {
				if (!faults.add(fault.name())) {
					context.report.error("fault-twice", context.source.span(ref.node()),
							"`" + fault.name() + "` is named twice.", "Name each fault once.");
				}
			});
		}
		return faults.size() < 2 ? Optional.empty()
				: Optional.of(new org.baywright.model.Exclusive(List.copyOf(faults), context.source.span(exclusive)));
	}

	/** Reports values that are listed twice. */
	void checkValues(EList<NamedValue> values, String what, String owner) {
		Set<String> seen = new HashSet<>();
		for (NamedValue value : values) {
			if (value.getName() != null && !seen.add(value.getName())) {
				context.report.error("value-twice", place(value),
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
