package org.baywright.pack;

import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.model.Meaning;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;

/** Tells all that records hold, so that two of them can be compared but for what a pack does not keep. */
final class Records {

	private Records() {
	}

	/** Returns everything the rule base holds; of places file and line only, of numbers their value only. */
	static String tell(RuleBase base) {
		StringBuilder out = new StringBuilder(base.name());
		for (Collection<?> list : lists(base)) {
			out.append("\n\n");
			list.forEach(element -> tell(element, out.append('\n')));
		}
		return out.toString();
	}

	static Collection<Collection<?>> lists(RuleBase base) {
		return java.util.List.of(base.families(), base.states(), base.tools(), base.workshops(), base.hazards(), base.modules(), base.codes(),
				base.signs(), base.parts(), base.exclusives(), base.tests(), base.laws(), base.rules(), base.repairs(),
				base.cases(), base.signOffs(), base.reviewers(), base.reviews(), base.remarks(), base.acceptances());
	}

	/** Returns the names of all record types that the rule base holds. */
	static Set<Class<?>> types(RuleBase base) {
		Set<Class<?>> types = new TreeSet<>((a, b) -> a.getName().compareTo(b.getName()));
		lists(base).forEach(list -> list.forEach(element -> types(element, types)));
		return types;
	}

	private static void types(Object value, Set<Class<?>> into) {
		if (value instanceof Optional<?> optional) {
			optional.ifPresent(present -> types(present, into));
		} else if (value instanceof Collection<?> list) {
			list.forEach(element -> types(element, into));
		} else if (value instanceof Record record) {
			into.add(record.getClass());
			for (RecordComponent component : record.getClass().getRecordComponents()) {
				types(get(record, component), into);
			}
		}
	}

	private static void tell(Object value, StringBuilder out) {
		if (value instanceof Span span) {
			out.append("@").append(span.file()).append(':').append(span.line());
		} else if (value instanceof BigDecimal number) {
			out.append(Meaning.number(number));
		} else if (value instanceof Optional<?> optional) {
			out.append(optional.isPresent() ? "some " : "none");
			optional.ifPresent(present -> tell(present, out));
		} else if (value instanceof Collection<?> list) {
			out.append('[');
			list.forEach(element -> tell(element, out.append(' ')));
			out.append(" ]");
		} else if (value instanceof Record record) {
			out.append(record.getClass().getSimpleName()).append('(');
			for (RecordComponent component : record.getClass().getRecordComponents()) {
				tell(get(record, component), out.append(component.getName()).append('='));
				out.append(' ');
			}
			out.append(')');
		} else {
			out.append(value);
		}
	}

	private static Object get(Record record, RecordComponent component) {
		try {
			return component.getAccessor().invoke(record);
		} catch (ReflectiveOperationException e) {
			throw new AssertionError(e);
		}
	}
}
