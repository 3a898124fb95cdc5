package org.baywright.analysis.difference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

import org.baywright.model.RuleBase;
import org.junit.jupiter.api.Test;

/** Holds that of every part of every element it is known whether it names another element. */
class PartsTest {

	/** Parts that hold a text and no name of an element. */
	private static final Set<String> TEXTS = new TreeSet<>(List.of("Acceptance.author", "Acceptance.flaw", "Acceptance.reason", "Case.name", "Case.vin",
			"Chain.title", "Choices.names", "Code.title", "Do.text", "Drive.how", "Dtc.code", "Dtc.sub", "Family.title", "Fault.title", "Hazard.cautions",
			"Hazard.licensed", "Hazard.references", "Hazard.title", "Law.title", "Module.title", "Named.value", "NamedValue.name", "NamedValue.title", "Notice.text",
			"Notice.why", "OfHazard.qualification", "Outcome.label", "Part.place", "Part.title", "Picture.file", "Picture.words", "Point.title", "Precaution.text",
			"Provenance.author", "Provenance.because", "Quantity.unit", "RawCode.text", "Refers.toWhom", "Remark.author", "Remark.change", "Remark.line",
			"Remark.meaning", "Remark.note", "Repair.changesForGood", "Repair.place", "Repair.steps", "Repair.title", "Reply.author", "Reply.text", "Review.meaning",
			"Review.note", "Review.reviewer", "Reviewer.name", "Reviewer.qualifications", "Rule.title", "Sign.title", "Source.text", "Span.file", "State.minutes",
			"State.title", "StateSetting.value", "Step.value", "Test.fits", "Test.place", "Test.title", "Tool.title", "Trait.name", "Trait.word", "TraitIs.trait",
			"VinPattern.pattern", "Workshop.title"));

	@Test
	void everyTextIsKnownAsANameOrAsNone() {
		Set<String> found = new TreeSet<>();
		Set<Class<?>> seen = new HashSet<>();
		List<Class<?>> open = new ArrayList<>();
		Arrays.stream(RuleBase.Builder.class.getFields()).forEach(field -> collect(field.getGenericType(), open));
		while (!open.isEmpty()) {
			Class<?> type = open.remove(open.size() - 1);
			if (!seen.add(type) || !type.getName().startsWith("org.baywright.model")) {
				continue;
			}
			if (type.isSealed()) {
				open.addAll(List.of(type.getPermittedSubclasses()));
			}
			for (RecordComponent part : type.isRecord() ? type.getRecordComponents() : new RecordComponent[0]) {
				collect(part.getGenericType(), open);
				if (part.getGenericType().getTypeName().contains("java.lang.String") && !Set.of("LeftOut", "BuiltOn").contains(type.getSimpleName())) {
					found.add(Parts.key(type, part.getName()));
				}
			}
		}
		Set<String> known = new TreeSet<>(TEXTS);
		known.addAll(Parts.NAMES.keySet());
		assertEquals(known, found);
		assertTrue(Stream.of("Rule.test", "Scope.families", "VerdictIs.fault").allMatch(Parts.NAMES::containsKey));
	}

	private static void collect(Type type, List<Class<?>> into) {
		if (type instanceof ParameterizedType generic) {
			Arrays.stream(generic.getActualTypeArguments()).forEach(argument -> collect(argument, into));
		} else if (type instanceof Class<?> plain) {
			into.add(plain);
		}
	}
}
