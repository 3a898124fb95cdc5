package org.baywright.language.ide.testing;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.workspace.RuleProject;

/**
 * A rule text with a cursor in it, written as {@code @}, together with the names that most tests need.
 *
 * @param text the text without the mark
 * @param offset where the mark stood
 * @param services the services of a project that holds both
 */
public record Cursor(String text, int offset, EditorServices services) {

	/** The file that the text is put into. */
	public static final String FILE = "here.bay";

	/** The file with the names that most tests need. */
	public static final String NAMES = "names.bay";

	/** The day on which everything is written. */
	public static final Clock CLOCK = Clock.fixed(Instant.parse("2026-04-01T12:00:00Z"), ZoneOffset.UTC);

	/** Names that most tests need; all are invented. */
	public static final String COMMON = """
			family tarn "Tarn T3 van" {
			  trait engine : diesel "2.0 diesel", petrol, electric
			  trait built : year 2015 .. 2021
			}
			family heron "Heron chassis cab" { trait doors : two, four }
			state ignition : off, on, cranking
			tool multimeter "Digital multimeter"
			hazard charging_gas "Gas from a charging battery" { caution "Air the place." }
			module bcm "Body control module" answers in ignition on
			code low_supply "Supply voltage low" on bcm = dtc U3003 sub 16
			sign no_crank "Engine does not crank"
			part battery "Battery" hazards charging_gas {
			  fault flat "Battery flat" seen 30
			  fault open_cell "One cell open"
			}
			test rest_voltage "Battery voltage at rest" { measures V 0 .. 18 step 0.1  in ignition off  takes 8 min }
			test lamp "Charge lamp" { results lit, dark  takes 1 min }
			rule lamp_dark "Lamp dark" {
			  given no_crank
			  run lamp
			  on dark : suspects battery.flat
			  on lit  : clears battery.flat
			  because "No current, no light."
			  source practice
			  by "R. Falk" on 2026-03-02
			}
			repair recharge "Recharge the battery" {
			  fixes battery.flat
			  steps "Charge it."
			  verify { repeat what confirmed }
			}
			""";

	/** Reads a text with one {@code @}, beside the common names. */
	public static Cursor in(String marked) {
		int offset = marked.indexOf('@');
		String text = marked.replace("@", "");
		RuleProject project = RuleProject.inMemory("cursor");
		project.update(NAMES, COMMON);
		project.update(FILE, text);
		return new Cursor(text, offset, new EditorServices(project, CLOCK));
	}

	/** Returns the text with the mark. */
	public static String mark(String text, int offset) {
		return text.substring(0, offset) + "@" + text.substring(offset);
	}
}
