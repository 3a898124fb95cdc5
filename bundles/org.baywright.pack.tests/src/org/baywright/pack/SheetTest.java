package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import javax.xml.parsers.DocumentBuilderFactory;

import org.baywright.model.Acceptance;
import org.baywright.model.Severity;
import org.baywright.model.Sign;
import org.baywright.model.Span;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class SheetTest {

	private static String html;
	private static Document page;

	@BeforeAll
	static void write() throws Exception {
		html = PackReader.read(PackWriter.bytes(PackWriterTest.fixed(PackWriterTest.flaw("gap:x", Severity.WARNING),
				PackWriterTest.flaw("gap:y", Severity.WARNING).accept(
						new Acceptance("gap:y@0123abcd", "It is on order.", Optional.of("A. Author"), Optional.empty(), Span.NONE)))))
				.sheet();
		page = parse(html);
	}

	/** The sheet is well-formed XML too, so that a parser can look at it. */
	private static Document parse(String html) throws Exception {
		return DocumentBuilderFactory.newInstance().newDocumentBuilder()
				.parse(new InputSource(new StringReader(html.replace("<!DOCTYPE html>", ""))));
	}

	private static List<Element> all(String tag) {
		NodeList nodes = page.getElementsByTagName(tag);
		List<Element> elements = new ArrayList<>();
		for (int i = 0; i < nodes.getLength(); i++) {
			elements.add((Element) nodes.item(i));
		}
		return elements;
	}

	private static String article(String id) {
		return all("article").stream().filter(article -> article.getAttribute("id").equals(id)).findFirst().orElseThrow()
				.getTextContent();
	}

	@Test
	void needsNoNetworkAndNoScript() {
		for (String tag : List.of("script", "link", "img", "iframe", "object", "form", "base")) {
			assertEquals(List.of(), all(tag), tag);
		}
		assertFalse(html.contains("http:"));
		assertFalse(html.contains("https:"));
		assertFalse(html.contains("@import"));
		assertFalse(html.contains("url("));
		for (Element link : all("a")) {
			assertTrue(link.getAttribute("href").startsWith("#"));
		}
	}

	@Test
	void everyLinkLeadsSomewhereAndEveryPlaceIsThereOnce() {
		Set<String> ids = new HashSet<>();
		for (Element element : all("*")) {
			if (element.hasAttribute("id")) {
				assertTrue(ids.add(element.getAttribute("id")), element.getAttribute("id"));
			}
		}
		for (Element link : all("a")) {
			assertTrue(ids.contains(link.getAttribute("href").substring(1)), link.getAttribute("href"));
		}
	}

	// WCAG 2.2: 3.1.1 language, 2.4.1 skip link, 2.4.2 title, 1.3.1 headings in order and table headers.
	@Test
	void canBeReadWithAScreenReader() {
		assertEquals("en", page.getDocumentElement().getAttribute("lang"));
		assertEquals("tarn – an invented van – diagnostic rules", all("title").get(0).getTextContent());
		assertEquals("#rules", all("a").get(0).getAttribute("href"));
		assertEquals(1, all("h1").size());
		int level = 1;
		for (Element element : all("*")) {
			if (element.getTagName().matches("h[1-6]")) {
				int next = element.getTagName().charAt(1) - '0';
				assertTrue(next <= level + 1, element.getTextContent());
				level = next;
			}
		}
		for (Element table : all("table")) {
			assertEquals("caption", table.getFirstChild().getNodeName());
		}
		for (Element header : all("th")) {
			assertTrue(List.of("col", "row").contains(header.getAttribute("scope")));
		}
	}

	@Test
	void aRuleTellsAllThatIsNeededToWorkByIt() {
		String rule = article("rule-flat");
		for (String told : List.of("Battery too low to crank", "Caution: Charging gas", "No flame or spark; let air in.",
				"Tarn T3 \"light\" van <2 t", "“Engine does not crank”", "Battery voltage at rest", "Digital multimeter", "8 min",
				"Ignition off", "Headlamps on 2 min, off", "Wait 5 min.", "Drive at a speed 20 km/h to 60 km/h for 1 min: uphill", "12.4 V to 13.0 V", "clears “12 V battery: Low state of charge”",
				"below 12.4 V", "confirms “12 V battery: Low state of charge”", "above 13.0 V", "proves nothing by itself",
				"Proves this and nothing else", "published: An invented handbook, 2nd edition", "State of charge & all.",
				"A. Author, 2026-03-02", "B. Peer agrees, 2026-03-04: Agreed, with <care>")) {
			assertTrue(rule.contains(told), told + " is not in:\n" + rule);
		}
	}

	@Test
	void whatIsSeenWithATestTellsHowThatOneIsDone() {
		String course = article("test-rest_course");
		for (String told : List.of("Caution: Charging gas", "steady", "Seen with\nBattery voltage at rest", "Works on\n12 V battery", "Digital multimeter",
				"Ignition off", "8 min", "Wait 5 min.")) {
			assertTrue(course.contains(told), told + " is not in:\n" + course);
		}
	}

	@Test
	void saysConditionsAsATechnicianWould() {
		String lamp = article("rule-lamp");
		assertTrue(lamp.contains("“Stalls now and then” and nothing that explains it is confirmed"), lamp);
		assertTrue(lamp.contains("“12 V battery: Low state of charge” is not cleared"), lamp);
		assertTrue(lamp.contains("known not to hold: (code U3003-16 (Supply voltage low) is present in Body control module or "
				+ "code B1234 (no_sub) is untested in Body control module since its codes were cleared)"), lamp);
		assertTrue(lamp.contains("C. Peer objects, 2026-03-05 (out of date: the rule has changed its meaning since)"), lamp);
		String guess = article("rule-guess");
		assertTrue(guess.contains("Every Tarn except Tarn T4 with engine other than electric and built 2016 or less or 2020"), guess);
		assertTrue(guess.contains("is unread, since Lift control is silent"), guess);
		assertTrue(guess.contains("refers to a battery specialist"), guess);
		assertTrue(guess.contains("none given"), guess);
	}

	@Test
	void repairsTellHowTheyAreVerified() {
		String repair = article("repair-recharge");
		for (String told : List.of("Charge to 12.6 V.", "The clock must be set again.", "The old lamp is gone.",
				"Clear the codes of Body control module, which reaches it only while it answers.", "Cycle Ignition, so that modules test themselves again: Tarn T3 \"light\" van <2 t: through all its values and back;"
						+ " Tarn T4: off, wait 30 s, on, engine stopped.",
				"Tell the authority", "The lamp is another one. Why: Its type is in the papers.", "Where", "under the seat",
				"“Stalls now and then” must be gone, tried 10 times.",
				"Set Ignition on, engine stopped.", "Code U3003-16 (Supply voltage low) must be absent.",
				"Repeat: Battery voltage at rest; expect 12.4 V to 13.0 V.", "Repeat: Charge lamp, ignition on.",
				"it must no longer confirm it", "licence")) {
			assertTrue(repair.contains(told), told + " is not in:\n" + repair);
		}
	}

	@Test
	void saysWhatComesFirstAndWhatStands() {
		String all = page.getDocumentElement().getTextContent();
		assertTrue(all.contains("Local codes and the law where you work, the vehicle maker’s instructions and licensed practice come first"));
		assertTrue(all.contains("nobody has said why these may stand (1)"));
		assertTrue(all.contains("Accepted: It is on order. – A. Author"));
		assertTrue(all.contains("UN R100 rev. 3"));
	}

	@Test
	void escapesEverything() throws Exception {
		var base = new Tarn().builder();
		base.signs.add(new Sign("evil\"><script>alert(1)</script>", "</dd><script>alert('x')</script>\u0001\uFFFF", false, Span.NONE));
		String sheet = PackReader.read(PackWriter.bytes(
				new PackContents(base.build(), PackWriterTest.fixed().report(), List.of(), "9.9.9"))).sheet();
		assertFalse(sheet.contains("<script"));
		assertTrue(parse(sheet).getDocumentElement().getTextContent().contains("<script>alert('x')</script>\uFFFD\uFFFD"));
	}

	@Test
	void tellsHowLongGettingToTheValueOfAStateTakes() {
		assertTrue(html.contains("<td>off, on, engine stopped (30 s), cranking</td>"), "the table of states");
	}
}
