package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Variable;
import org.baywright.model.Code;
import org.baywright.model.Module;
import org.baywright.model.Part;
import org.baywright.model.Picture;
import org.baywright.model.Preparation;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;
import org.baywright.presenter.Link;

/**
 * How something is found out.
 *
 * @param exception what to say where it needs something of the vehicle although something else comes first; the empty text for nothing
 * @param cautions what can hurt somebody, first
 * @param how what it takes and how it is done, one sentence each
 * @param pictures what shows where or how it is done, each with the way to its file
 */
record Doing(String exception, List<Caution> cautions, List<String> how, List<Link> pictures) {

	Doing {
		cautions = List.copyOf(cautions);
		how = List.copyOf(how);
		pictures = List.copyOf(pictures);
	}

	/** Returns how a test is done, or a module asked; nothing is known of how a sign or a trait is looked at. */
	static Doing of(RuleBase base, List<Reading> readings, Variable variable) {
		Telling telling = new Telling(base);
		List<String> how = new ArrayList<>();
		Optional<Test> test = variable.kind() == Variable.Kind.TEST ? base.test(variable.name()).map(base::doneBy) : Optional.empty();
		test.ifPresent(done -> telling.doing(done).forEach(line -> how.add(line.label() + ": " + String.join(line.steps() ? " " : ", ", line.texts()))));
		module(base, variable).ifPresent(module -> {
			telling.asking(module).forEach(line -> how.add(line.label() + ": " + String.join(", ", line.texts())));
			if (!module.answersIn().isEmpty()) {
				how.add("In state: " + new Words(base).anySetting(module.answersIn()));
			}
		});
		return new Doing(exception(base, readings, test, module(base, variable)), test.map(done -> new StepCautions(base, done).all()).orElse(List.of()), how, test.map(done -> pictures(base, done)).orElse(List.of()));
	}

	private static String exception(RuleBase base, List<Reading> readings, Optional<Test> test, Optional<Module> module) {
		Words words = new Words(base);
		List<String> needs = new ArrayList<>();
		test.ifPresent(done -> done.states().forEach(set -> needs.add(words.setting(set))));
		test.filter(done -> done.prepare().stream().anyMatch(Preparation.Drive.class::isInstance)).ifPresent(done -> needs.add("a drive"));
		module.filter(asked -> !asked.answersIn().isEmpty()).ifPresent(asked -> needs.add(words.anySetting(asked.answersIn())));
		boolean read = module.isPresent() || test.filter(done -> new StepCautions(base, done).isRead()).isPresent();
		return needs.isEmpty() ? "" : Precautions.exception(base, readings, Words.and(needs), read);
	}

	/** Returns the module that is asked to find out about a code, or about itself. */
	static Optional<Module> module(RuleBase base, Variable variable) {
		return variable.kind() == Variable.Kind.MODULE ? base.module(variable.name())
				: variable.kind() == Variable.Kind.CODE ? base.code(variable.name()).map(Code::module).flatMap(base::module) : Optional.empty();
	}

	/** Returns what shows a test, and then the part that it works on. */
	private static List<Link> pictures(RuleBase base, Test test) {
		List<Picture> pictures = new ArrayList<>(test.pictures());
		test.part(base).flatMap(base::part).map(Part::pictures).ifPresent(pictures::addAll);
		return pictures.stream().map(picture -> new Link("Picture: " + picture.words(), new Span(picture.file(), 1, 1, 1, 1, 0, 0))).toList();
	}
}
