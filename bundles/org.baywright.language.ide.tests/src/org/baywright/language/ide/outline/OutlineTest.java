package org.baywright.language.ide.outline;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;
import org.baywright.language.ide.testing.Cursor;
import org.junit.jupiter.api.Test;

class OutlineTest {

	private static String say(List<OutlineItem> items) {
		return items.stream().map(item -> item.kind() + " " + item.label() + (item.detail().isEmpty() ? "" : "/" + item.detail())
				+ (item.children().isEmpty() ? "" : " (" + say(item.children()) + ")")).collect(Collectors.joining(", "));
	}

	@Test
	void elementsWithTheirParts() {
		Cursor cursor = Cursor.in("""
				family f "F" { trait t : a, b }
				part p { fault q "Q" }
				law "Never so" : never f1
				rule r "R" { }
				job "Job 1" { }
				review r by "A" on 2026-01-01 agrees meaning "0"
				exclusive p.q, battery.flat
				accept "gap:x" because "x"
				sign_off { agree 2 }
				reviewer "A" qualified "x"
				remark on r by "A" on 2026-01-01 "m"
				remark on change "Limit raised" by "A" on 2026-01-01 "m"
				workshop { hour 72 }
				workshop "Yard" { }
				@""");
		List<OutlineItem> items = cursor.services().outline(Cursor.FILE);
		assertEquals("FAMILY F/f (TRAIT t (VALUE a, VALUE b)), PART p (FAULT Q/q), LAW Never so, RULE R/r, CASE Job 1, REVIEW r,"
				+ " EXCLUSIVE p.q, battery.flat, ACCEPTANCE gap:x, SIGNOFF sign_off, REVIEWER A, REMARK r, REMARK Limit raised,"
				+ " WORKSHOP workshop, WORKSHOP Yard/workshop", say(items));
		OutlineItem rule = items.get(3);
		assertEquals("rule r \"R\" { }", cursor.text().substring(rule.offset(), rule.offset() + rule.length()));
		assertEquals("r", cursor.text().substring(rule.nameOffset(), rule.nameOffset() + rule.nameLength()));
	}

	@Test
	void whatHasNoNameYetIsLeftOut() {
		assertEquals("SIGN a, RULE b", say(Cursor.in("sign a sign rule b { given ,, }@").services().outline(Cursor.FILE)));
	}

	@Test
	void symbolsOfTheProject() {
		Cursor cursor = Cursor.in("rule lamp_two { }@");
		assertEquals(List.of("lamp", "lamp_dark", "lamp_two"), cursor.services().symbols("lamp").stream().map(FoundSymbol::name).toList());
		assertEquals(List.of("rest_voltage"), cursor.services().symbols("rvolt").stream().map(FoundSymbol::name).toList());
		assertEquals(List.of("battery.flat"), cursor.services().symbols("battery flat").stream().map(FoundSymbol::name).toList());
	}
}
