package org.baywright.presenter.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import javax.xml.parsers.DocumentBuilderFactory;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.model.Case;
import org.baywright.model.RuleBase;
import org.baywright.presenter.Examples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class JobSheetTest {

	/** Reads a page as XML, which fails where it is not well-formed. */
	private static Document read(String html) {
		try {
			return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(html)));
		} catch (Exception e) {
			throw new AssertionError(html, e);
		}
	}

	private static List<String> texts(Document page, String tag) {
		NodeList nodes = page.getElementsByTagName(tag);
		List<String> texts = new ArrayList<>();
		for (int i = 0; i < nodes.getLength(); i++) {
			texts.add(nodes.item(i).getTextContent().strip());
		}
		return texts;
	}

	private static List<String> rows(Document page) {
		NodeList nodes = page.getElementsByTagName("tr");
		List<String> rows = new ArrayList<>();
		for (int i = 0; i < nodes.getLength(); i++) {
			List<String> cells = new ArrayList<>();
			for (int j = 0; j < nodes.item(i).getChildNodes().getLength(); j++) {
				String text = nodes.item(i).getChildNodes().item(j).getTextContent().replace('\u00A0', '_').strip();
				cells.add(text);
			}
			rows.add(String.join("|", cells.stream().filter(cell -> !cell.isEmpty()).toList()));
		}
		return rows;
	}

	private static String sheet(Bench bench) {
		return JobSheet.of(bench, MendingTest.advice(bench), "Job 7", "2026-11-30");
	}

	@Test
	void tellsTheWholeJob() {
		Bench bench = MendingTest.osier().enter(MendingTest.ENGINE, "petrol").enter(MendingTest.VOLTS, "11.4").tick("recharge", Progress.Tick.STEP, 0)
				.tick("recharge", Progress.Tick.TOLD, 0);
		bench = bench.verify("recharge", mendingCheck(bench, 4).at(), "12.4");
		Document page = read(sheet(bench));
		assertEquals(List.of("Job sheet"), texts(page, "h1"));
		assertEquals(List.of("Vehicle", "Complaint", "Findings", "What stands", "Cause", "Repair: Recharge", "Time and money", "Done by"), texts(page, "h2"));
		List<String> rows = rows(page);
		assertTrue(rows.contains("1|Sign|No crank|present"), rows.toString());
		assertTrue(rows.contains("2|Test|Voltage|first 11.4 V, after the repair 12.4 V|8 min"), rows.toString());
		assertTrue(rows.contains("Customer|Short trips do not charge it.|It comes back otherwise.|x"), rows.toString());
		assertTrue(rows.contains("Insurer|New key.|_"), rows.toString());
		assertTrue(rows.contains("Repeat: Voltage.|12.6 V to 13.0 V|12.4 V|no"), rows.toString());
		assertTrue(rows.contains("Read again: code 1 (Supply low) in Body module.|absent|_"), rows.toString());
		List<String> values = texts(page, "dd");
		assertTrue(values.containsAll(List.of("Osier van", "petrol", "Job 7", "2026-11-30", "Under the seat", "Charger", "6 h", "somebody trained for it", "5")), values.toString());
		List<String> items = texts(page, "li");
		assertTrue(items.containsAll(List.of("No crank", "Flat at rest: a", "No sparks.", "The clock is lost.", "xCharge.", "\u00A0Look what emptied it.")), items.toString());
		String all = page.getDocumentElement().getTextContent();
		assertTrue(all.contains("This sheet follows the rules of the project small. Local codes,"), all);
		assertTrue(all.contains("Licensed work: A trained person."), all);
		assertTrue(all.contains("By: Shop rule 5 (2024)"), all);
		assertTrue(all.contains("Not verified: something is not as expected."), all);
	}

	private static Check mendingCheck(Bench bench, int number) {
		return MendingTest.mending(bench).work().orElseThrow().checks().get(number);
	}

	@Test
	void leavesLinesForWhatIsNotKnown() {
		String html = JobSheet.of(MendingTest.osier(), MendingTest.advice(MendingTest.osier()), " ", "");
		Document page = read(html);
		// job, date, engine, VIN, time, money, and the three of the signature
		assertEquals(9, html.split("class=\"blank\"", -1).length - 1);
		assertEquals("Job sheet", texts(page, "title").get(0));
		assertFalse(texts(page, "h2").stream().anyMatch(title -> title.startsWith("Repair")));
	}

	@Test
	void tellsWhatWasDoneInVain() {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "11.4");
		bench = bench.verify("recharge", mendingCheck(bench, 5).at(), "present").verify("recharge", mendingCheck(bench, 4).at(), "12.7");
		bench = bench.backToWork(MendingTest.mending(bench).work().orElseThrow());
		Document page = read(sheet(bench));
		assertTrue(texts(page, "h2").contains("Done in vain"));
		assertTrue(texts(page, "li").contains("“Recharge” did not put it right: No crank present, expected absent, tried 3 times. Found before that repair and no longer counted: Voltage: 11.4 V."), texts(page, "li").toString());
	}

	@Test
	void whatIsFoundAgainKeepsItsPlaceAndIsToldOnceWhereItIsTheSame() {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "11.4").enter(MendingTest.LOW, "present");
		bench = bench.verify("recharge", mendingCheck(bench, 5).at(), "present");
		bench = bench.backToWork(MendingTest.mending(bench).work().orElseThrow());
		Bench same = bench.enter(MendingTest.VOLTS, "11.4");
		assertTrue(rows(read(sheet(same))).contains("2|Test|Voltage|11.4 V, the same again|8 min"), rows(read(sheet(same))).toString());
		Bench other = bench.enter(MendingTest.VOLTS, "11.6");
		assertTrue(rows(read(sheet(other))).contains("2|Test|Voltage|first 11.4 V, then 11.6 V|8 min"), rows(read(sheet(other))).toString());
		Bench anew = other.clear().enter(MendingTest.LOW, "present").enter(MendingTest.VOLTS, "11.4");
		assertTrue(rows(read(sheet(anew))).contains("2|Test|Voltage|11.4 V|8 min"), rows(read(sheet(anew))).toString());
	}

	@Test
	void aReferralTellsWhatWasNotTried() {
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "12.6");
		Document early = read(JobSheet.referral(bench.refer("another workshop"), MendingTest.advice(bench), "", ""));
		assertEquals(List.of("Referral"), texts(early, "h1"));
		assertTrue(texts(early, "p").contains("another workshop"));
		assertTrue(texts(early, "li").containsAll(List.of("No crank", "Load")), texts(early, "li").toString());
		assertTrue(texts(early, "dd").contains("Battery: Flat"), "it is ruled out");
		Bench late = bench.enter(MendingTest.LOAD, "pass");
		Document page = read(JobSheet.referral(late, MendingTest.advice(late), "", ""));
		assertTrue(texts(page, "p").containsAll(List.of("the specialist", "No test that has to do with the complaint is left out.")));
	}

	@Test
	void whoTakesAJobOverIsWarnedOfThePartsThatItMayBe() {
		Bench flat = Bench.of(MendingTest.SMALL).choose("osier").enter(MendingTest.NO_CRANK, "present").enter(MendingTest.VOLTS, "11.4").refer("another workshop");
		assertTrue(JobSheet.referral(flat, MendingTest.advice(flat), "", "").contains("</strong>Battery gas"), JobSheet.referral(flat, MendingTest.advice(flat), "", ""));
		Bench good = Bench.of(MendingTest.SMALL).choose("osier").enter(MendingTest.NO_CRANK, "present").enter(MendingTest.VOLTS, "12.6").refer("another workshop");
		assertFalse(JobSheet.referral(good, MendingTest.advice(good), "", "").contains("</strong>Battery gas"));
	}

	@Test
	void whateverIsWrittenStaysText() {
		String nasty = "<b>&\\\"'</style><script>alert(1)</script>]]>\u0007\u202E";
		String[] text = MendingTest.TEXT.clone();
		for (int i = 0; i < text.length; i++) {
			text[i] = text[i].replace("\"Osier van\"", "\"" + nasty.replace("\u0007", "").replace("\u202E", "") + "\"").replace("\"Charge.\"", "\"<i>Charge</i>\"")
					.replace("\"Acid\"", "\"<u>Acid</u>\"");
		}
		RuleBase rules = Examples.rules(text);
		Bench bench = Bench.of(rules).choose("osier").enter(MendingTest.NO_CRANK, "present").enter(MendingTest.VOLTS, "11.4").refer(nasty);
		Advice advice = MendingTest.advice(bench);
		for (String html : List.of(JobSheet.of(bench, advice, nasty, nasty), JobSheet.referral(bench, advice, nasty, nasty))) {
			Document page = read(html);
			for (String tag : List.of("script", "b", "i", "u")) {
				assertEquals(0, page.getElementsByTagName(tag).getLength(), tag);
			}
			assertTrue(texts(page, "dd").contains("<b>&\"'</style><script>alert(1)</script>]]>"), texts(page, "dd").toString());
		}
	}

	/** Paper is A4 in one country and Letter in another. */
	@Test
	void fitsOnAnyPaper() {
		String html = sheet(MendingTest.osier());
		assertTrue(html.contains("@page { margin: 15mm; }"));
		assertFalse(Pattern.compile("@page[^}]*size").matcher(html).find());
		assertTrue(html.contains("break-inside: avoid"));
		Matcher widths = Pattern.compile("width: ([0-9.]+)(mm|rem)").matcher(html);
		int found = 0;
		while (widths.find()) {
			// 1 rem is 16 px, of which 96 are an inch
			double mm = Double.parseDouble(widths.group(1)) * (widths.group(2).equals("mm") ? 1 : 16 * 25.4 / 96);
			assertTrue(mm <= 180, widths.group());
			found++;
		}
		assertTrue(found > 1);
		assertFalse(html.contains("http:") || html.contains("https:") || html.contains("url(") || html.contains("src="), "nothing else is needed");
	}

	@ParameterizedTest
	@ValueSource(strings = { "electric-van", "farm-tractor", "light-van" })
	void everyJobOfTheExamplesHasItsSheet(String name) {
		RuleBase base = Examples.checked(name).rules();
		for (Case job : base.cases()) {
			Bench bench = MendingTest.bench(base, job);
			Advice advice = MendingTest.advice(bench);
			for (Mending.Cause cause : Mending.of(bench, advice).causes()) {
				bench = MendingTest.verified(bench, advice, cause.repairs().get(0).repair());
			}
			String html = JobSheet.of(bench, advice, job.name(), "2026-11-30");
			Document page = read(html);
			assertEquals(html, JobSheet.of(bench, advice, job.name(), "2026-11-30"));
			assertTrue(rows(page).stream().filter(row -> row.matches("[0-9]+\\|.*")).count() >= job.found().size(), job.name());
			assertEquals(job.causes().size(), texts(page, "p").stream().filter("Verified: everything is as expected."::equals).count(), job.name());
			read(JobSheet.referral(bench, advice, job.name(), ""));
		}
	}
}
