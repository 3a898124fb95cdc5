package org.baywright.analysis.difference;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Takes the records of a rule base apart, whatever they are, and knows in which of their parts a name of another element stands. */
final class Parts {

	/** For each part that names an element the kind of that, as {@code Record.part}. */
	static final Map<String, String> NAMES = Stream.of("Case.family family", "Case.causes fault", "Point.test test", "Point.faults fault", "Chain.name chain",
			"Chain.beyond fault", "Code.name code", "Code.module module", "OnFault.fault fault", "CodeIs.code code", "ModuleIs.module module", "SignIs.sign sign",
			"TestIs.test test", "Unexplained.sign sign", "VerdictIs.fault fault", "Cycle.state state", "Exclusive.faults fault", "Family.name family",
			"Family.parent family", "Family.systems family", "Fault.name fault", "Fault.part part", "Hazard.name hazard", "Law.families family", "Module.name module",
			"Module.families family", "Module.tools tool", "Part.name part", "Part.hazards hazard", "CodeRead.subject code", "Measured.subject test",
			"ModuleAsked.subject module", "Named.subject test", "SignSeen.subject sign", "Repair.name repair", "Repair.fixes fault", "Repair.cautions hazard",
			"Repair.tools tool", "Review.rule rule", "Rule.name rule", "Rule.test test", "Scope.families family", "Scope.except family", "Sign.name sign",
			"State.name state", "StateSetting.state state", "Test.name test", "Test.seenWith test", "Test.part part", "Test.tools tool", "Test.disturbs finding",
			"Test.cautions hazard", "Tool.name tool", "Clear.module module", "Expect.code code", "ExpectSign.sign sign", "Read.module module", "Repeat.test test",
			"Scan.tools tool", "Workshop.lacks tool", "OfHazard.hazard hazard", "Remark.rule rule").map(line -> line.split(" ")).collect(Collectors.toUnmodifiableMap(line -> line[0], line -> line[1]));

	private Parts() {
	}

	static String key(Class<?> record, String part) {
		return record.getSimpleName() + "." + part;
	}

	/** Returns the value of a part of a record. */
	static Object value(Record record, RecordComponent part) {
		try {
			return part.getAccessor().invoke(record);
		} catch (ReflectiveOperationException e) {
			throw new IllegalStateException(e);
		}
	}

	/**
	 * Returns the same record with other names.
	 *
	 * @param renames gives for a kind and a name the name to use
	 */
	@SuppressWarnings("unchecked") // a copy is of the class of what is copied
	static <R extends Record> R renamed(R record, BiFunction<String, String, String> renames) {
		RecordComponent[] parts = record.getClass().getRecordComponents();
		Object[] values = new Object[parts.length];
		boolean same = true;
		for (int i = 0; i < parts.length; i++) {
			Object value = value(record, parts[i]);
			values[i] = renamed(value, Optional.ofNullable(NAMES.get(key(record.getClass(), parts[i].getName()))), renames);
			same &= values[i] == value;
		}
		if (same) {
			return record;
		}
		try {
			Constructor<?> constructor = record.getClass().getDeclaredConstructor(Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new));
			return (R) constructor.newInstance(values);
		} catch (ReflectiveOperationException e) {
			throw new IllegalStateException(e);
		}
	}

	private static Object renamed(Object value, Optional<String> kind, BiFunction<String, String, String> renames) {
		if (value instanceof Record record) {
			return renamed(record, renames);
		} else if (value instanceof Optional<?> optional) {
			Object inside = optional.orElse(null);
			Object now = inside == null ? null : renamed(inside, kind, renames);
			return now == inside ? value : Optional.of(now);
		} else if (value instanceof List<?> list) {
			List<Object> now = new ArrayList<>();
			boolean same = true;
			for (Object one : list) {
				now.add(renamed(one, kind, renames));
				same &= now.get(now.size() - 1) == one;
			}
			return same ? value : now;
		} else if (value instanceof String name && kind.isPresent()) {
			String now = renames.apply(kind.get(), name);
			return now.equals(name) ? name : now;
		}
		return value;
	}
}
