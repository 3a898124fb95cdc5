package org.baywright.presenter.bench;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.model.Hazard;
import org.baywright.model.RuleBase;
import org.baywright.model.StateSetting;
import org.baywright.model.Test;
import org.baywright.model.words.Words;

/** What can hurt somebody in a test, with when it holds where the test needs what the hazard forbids hands to be near. */
record StepCautions(RuleBase base, Test done) {

	List<Caution> all() {
		return done.hazards(base).stream().flatMap(name -> base.hazard(name).stream()).map(hazard -> isRead() ? Caution.of(hazard).beforeHands() : byHand(hazard)).toList();
	}

	/** Returns whether it is read with what modules are read with and nothing else, so that no hand touches a part. */
	boolean isRead() {
		Set<String> readers = base.modules().stream().flatMap(module -> base.scan(module).tools().stream()).collect(Collectors.toSet());
		return !done.tools().isEmpty() && readers.containsAll(done.tools()) && done.fits().isEmpty();
	}

	/** Who works on what needs a licence does so in a certain state; a test in another one must not be taken for such work. */
	private Caution byHand(Hazard hazard) {
		List<StateSetting> other = hazard.licensed().isEmpty() ? List.of() : done.states().stream().filter(set -> isUnusual(set, hazard)).toList();
		return other.isEmpty() ? Caution.of(hazard)
				: Caution.of(hazard).and("This step itself needs " + Words.and(other.stream().map(new Words(base)::setting).toList())
						+ "; where that says otherwise, no hand goes near what it warns of.");
	}

	private boolean isUnusual(StateSetting set, Hazard hazard) {
		long alike = others(set, hazard).filter(set::equals).count();
		return others(set, hazard).filter(other -> !other.equals(set)).collect(Collectors.groupingBy(other -> other, Collectors.counting())).values().stream()
				.anyMatch(count -> count > alike);
	}

	/** Returns the same state in all tests by hand that meet a hazard. */
	private Stream<StateSetting> others(StateSetting set, Hazard hazard) {
		return base.tests().stream().filter(test -> test.hazards(base).contains(hazard.name()) && !new StepCautions(base, test).isRead()).flatMap(test -> test.states().stream())
				.filter(other -> other.state().equals(set.state()));
	}
}
