package org.baywright.language.translate;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Rule;
import org.baywright.language.bay.StateSetting;
import org.baywright.language.index.Facts;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Refs.Ref;
import org.baywright.language.index.Symbol;
import org.baywright.language.text.Advice;
import org.baywright.language.text.SourceText;
import org.baywright.language.text.Spelling;
import org.baywright.model.Mend;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;
import org.eclipse.emf.common.util.EList;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;

/** What the translation of one file works with; it remembers every name that it looked up. */
final class Context {

	final SourceText source;
	final Report report = new Report();
	private final ProjectIndex index;
	private final Set<Key> used = new HashSet<>();

	Context(SourceText source, ProjectIndex index) {
		this.source = source;
		this.index = index;
	}

	/** Returns the keys looked up so far. */
	Set<Key> used() {
		return used;
	}

	List<Symbol> find(Key key) {
		used.add(key);
		return index.get(key);
	}

	Optional<Symbol> find(Kind kind, String name) {
		List<Symbol> found = find(Key.of(kind, name));
		return found.isEmpty() ? Optional.empty() : Optional.of(found.get(0));
	}

	/** Returns the thing of a kind that a written name means; reports it if there is none. */
	Optional<Symbol> resolve(Ref ref, Kind kind) {
		return resolve(ref, kind, Defining.bare(kind, ref.name()));
	}

	/** As {@link #resolve(Ref, Kind)}, where more is known of how the missing thing can be defined. */
	Optional<Symbol> resolve(Ref ref, Kind kind, List<Mend> define) {
		Optional<Symbol> found = find(kind, ref.name());
		if (found.isEmpty()) {
			unknown(ref, kind, define);
		}
		return found;
	}

	/** Returns the names at a reference that mean something of the kind; reports the others. */
	List<String> resolveAll(EObject owner, EReference reference, Kind kind) {
		List<String> names = new ArrayList<>();
		for (Ref ref : Refs.all(owner, reference)) {
			resolve(ref, kind, tellsVehiclesApart(owner, kind) ? List.of() : Defining.bare(kind, ref.name())).ifPresent(symbol -> names.add(symbol.name()));
		}
		return names;
	}

	/** Returns the tools at a reference, each once; reports those that are unknown or named again. */
	List<String> tools(EObject owner, EReference reference) {
		List<String> tools = new ArrayList<>();
		for (Ref ref : Refs.all(owner, reference)) {
			resolve(ref, Kind.TOOL).map(Symbol::name).ifPresent(tool -> {
				if (tools.contains(tool)) {
					report.tell(ProblemKind.TOOL_TWICE, source.span(ref.node()), "`" + tool + "` is named twice.", "Name each tool once.");
				} else {
					tools.add(tool);
				}
			});
		}
		return tools;
	}

	/** Whether an element speaks of traits of a family, which a family that is only named would not have. */
	private static boolean tellsVehiclesApart(EObject owner, Kind kind) {
		return kind == Kind.FAMILY && owner instanceof Rule rule && !rule.getWhere().isEmpty();
	}

	/** Returns the name at a reference that has at most one, if it means something of the kind. */
	Optional<String> resolveOne(EObject owner, EReference reference, Kind kind) {
		return Refs.one(owner, reference).flatMap(ref -> resolve(ref, kind)).map(Symbol::name);
	}

	private void unknown(Ref ref, Kind kind, List<Mend> define) {
		Span span = source.span(ref.node());
		if (kind == Kind.FAULT && ref.name().indexOf('.') < 0 && find(Kind.PART, ref.name()).isPresent()) {
			List<String> faults = names(Kind.FAULT).stream().filter(name -> name.startsWith(ref.name() + ".")).toList();
			report.error(ProblemKind.UNKNOWN_NAME, span,
					"`" + ref.name() + "` is a part, and a fault of the part is needed here.", faults.isEmpty()
							? Advice.words("Define a fault of the part first.") : Advice.writeName(span, ref.name(), faults));
			return;
		}
		for (Kind other : Kind.values()) {
			if (other != kind && find(other, ref.name()).isPresent()) {
				report.error(ProblemKind.UNKNOWN_NAME, span,
						"`" + ref.name() + "` is " + other.aWord() + ", and " + kind.aWord() + " is needed here.",
						Spelling.advice(span, ref.name(), names(kind), "Name " + kind.aWord() + "."));
				return;
			}
		}
		report.error(ProblemKind.UNKNOWN_NAME, span, "There is no " + kind.word() + " `" + ref.name() + "`.",
				Spelling.advice(span, ref.name(), names(kind), "Define the " + kind.word() + ", or correct the name.").or(define));
	}

	/** Returns all names of a kind, for suggestions. */
	List<String> names(Kind kind) {
		used.add(Key.EVERYTHING);
		return index.all(kind).stream().map(Symbol::name).distinct().toList();
	}

	/** Translates states set to values, such as {@code ignition on}. */
	List<org.baywright.model.StateSetting> settings(EList<StateSetting> settings) {
		List<org.baywright.model.StateSetting> out = new ArrayList<>();
		for (StateSetting setting : settings) {
			setting(setting).ifPresent(out::add);
		}
		return out;
	}

	Optional<org.baywright.model.StateSetting> setting(StateSetting setting) {
		Optional<Ref> state = setting == null ? Optional.empty()
				: Refs.one(setting, BayPackage.Literals.STATE_SETTING__STATE);
		Optional<Ref> value = setting == null ? Optional.empty()
				: Refs.one(setting, BayPackage.Literals.STATE_SETTING__VALUE);
		if (state.isEmpty() || value.isEmpty()) {
			report.incomplete();
			return Optional.empty();
		}
		Optional<Symbol> symbol = resolve(state.get(), Kind.STATE,
				Defining.withValues(Mend.Thing.STATE, state.get().name(), List.of(value.get().name())));
		if (symbol.isEmpty()) {
			return Optional.empty();
		}
		return value(value.get(), symbol.get())
				.map(known -> new org.baywright.model.StateSetting(state.get().name(), known));
	}

	/** Returns the value of a state that a name means; reports it if there is none. */
	Optional<String> value(Ref value, Symbol state) {
		List<String> values = ((Facts.OfState) state.facts()).values();
		if (!values.contains(value.name())) {
			report.error(ProblemKind.UNKNOWN_VALUE, source.span(value.node()),
					"The state `" + state.name() + "` has no value `" + value.name() + "`.",
					Spelling.valueAdvice(source.span(value.node()), value.name(), values, state.name()));
			return Optional.empty();
		}
		return Optional.of(value.name());
	}

	/** Returns the title if one is written, the name otherwise. */
	static String title(String title, String name) {
		return title == null || title.isBlank() ? name : title;
	}
}
