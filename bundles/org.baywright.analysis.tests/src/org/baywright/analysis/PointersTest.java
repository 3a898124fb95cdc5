package org.baywright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.baywright.model.CodeReading;
import org.baywright.model.Condition;
import org.baywright.model.Provenance;
import org.baywright.model.Rule;
import org.baywright.model.Scope;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.ValueSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PointersTest {

	/** Letters before {@code run} are given: s and z signs, c and d codes, t and u tests; behind it stands the test that is run. */
	@ParameterizedTest
	@CsvSource({ "'', 0", "s, 1", "s s, 1", "s z, 2", "sc sd, 2", "sc sc, 1", "sc s, 2", "c d t, 3", "ct tu ud, 1", "ct ud, 2", "s>t s>u, 2",
			"s>t st, 1", "'v', 0", "vs>t v>u, 2" })
	void countsWhatHasNothingInCommon(String rules, int pointers) {
		assertEquals(pointers, Pointers.count(Stream.of(rules.split(" ")).map(PointersTest::rule).toList()));
	}

	private static Rule rule(String text) {
		List<Condition> given = text.replaceFirst(">.*", "").chars().mapToObj(letter -> condition((char) letter)).toList();
		Optional<String> test = text.contains(">") ? Optional.of(text.substring(text.indexOf('>') + 1)) : Optional.empty();
		return new Rule("r", "r", new Scope(List.of(), List.of(), Optional.empty(), Span.NONE), given, List.of(), test, List.of(),
				new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.NONE, ""), Optional.empty()), Span.NONE, Span.NONE);
	}

	private static Condition condition(char letter) {
		String name = String.valueOf(letter);
		return switch (letter) {
		case 's', 'z' -> new Condition.SignIs(name, true, Span.NONE);
		case 'c', 'd' -> new Condition.CodeIs(name, CodeReading.PRESENT, Span.NONE);
		case 'v' -> new Condition.VerdictIs("p.f", org.baywright.model.VerdictKind.SUSPECTED, true, Span.NONE);
		default -> new Condition.TestIs(name, new ValueSet.Choices(List.of("lit")), Span.NONE);
		};
	}
}
