package org.baywright.analysis.difference;

import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.baywright.model.Condition;
import org.baywright.model.Meaning;
import org.baywright.model.Outcome;
import org.baywright.model.Provenance;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.StateSetting;
import org.baywright.model.ValueSet;

/**
 * What elements say, part by part, wherever they stand: layout, the spelling of numbers and the order of what has none do
 * not count.
 */
final class Contents {

	/** Parts that are words only: no vehicle and no hand does anything else because of them. */
	private static final Set<String> WORDS = Set.of("title", "provenance", "word", "label", "note", "why");

	private Contents() {
	}

	/** Returns what each part of an element says, in the order of the parts, without its name and place. */
	static Map<String, String> of(Record element, boolean withWords) {
		Map<String, String> parts = new LinkedHashMap<>();
		for (RecordComponent part : element.getClass().getRecordComponents()) {
			boolean isName = part.getName().equals("name");
			if (!isName && part.getType() != Span.class && (withWords || !isWords(part.getName()))) {
				parts.put(part.getName(), text(Parts.value(element, part), withWords));
			}
		}
		return parts;
	}

	/** Returns whether a part is words only. */
	static boolean isWords(String part) {
		return WORDS.contains(part);
	}

	private static String text(Object value, boolean withWords) {
		if (value instanceof Condition condition) {
			return Meaning.text(condition);
		} else if (value instanceof ValueSet values) {
			return Meaning.text(values);
		} else if (value instanceof BigDecimal number) {
			return Meaning.number(number);
		} else if (value instanceof RuleBase base) {
			return base.name();
		} else if (value instanceof Optional<?> optional) {
			return optional.map(inside -> text(inside, withWords)).orElse("-");
		} else if (value instanceof Map<?, ?> map) {
			Map<String, String> sorted = new TreeMap<>();
			map.forEach((key, inside) -> sorted.put(key.toString(), text(inside, withWords)));
			return sorted.toString();
		} else if (value instanceof Collection<?> list) {
			boolean unordered = list.stream().allMatch(one -> one instanceof Condition || one instanceof Outcome || one instanceof StateSetting);
			List<String> texts = list.stream().map(one -> text(one, withWords)).toList();
			return (unordered ? texts.stream().sorted() : texts.stream()).collect(Collectors.joining(", ", "[", "]"));
		} else if (value instanceof Provenance provenance && !withWords) {
			return "";
		} else if (value instanceof Record record) {
			StringBuilder text = new StringBuilder(record.getClass().getSimpleName()).append('(');
			for (RecordComponent part : record.getClass().getRecordComponents()) {
				if (part.getType() != Span.class && (withWords || !isWords(part.getName()))) {
					text.append(part.getName()).append('=').append(text(Parts.value(record, part), withWords)).append(' ');
				}
			}
			return text.append(')').toString();
		}
		return String.valueOf(value);
	}
}
