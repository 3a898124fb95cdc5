package org.baywright.pack.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;

import org.baywright.model.RuleBase;
import org.baywright.model.words.Words;
import org.baywright.pack.manifest.PackManifest;

/** Makes the sheet: all rules with what they stand on, to read on a screen or on paper. */
public final class Sheet {

	private final RuleBase base;
	private final PackManifest manifest;
	private final Map<String, byte[]> pictures;
	private final Html html = new Html();

	private Sheet(RuleBase base, PackManifest manifest, Map<String, byte[]> pictures) {
		this.pictures = pictures;
		this.base = base;
		this.manifest = manifest;
	}

	/**
	 * Returns the sheet as an HTML page, in UTF-8.
	 *
	 * @param base the rules, in the order in which they are shown
	 * @param manifest the pack's manifest; its entries do not matter
	 * @param pictures the content of each picture that the rules show, by its file
	 */
	public static byte[] of(RuleBase base, PackManifest manifest, Map<String, byte[]> pictures) {
		return new Sheet(base, manifest, pictures).page().getBytes(StandardCharsets.UTF_8);
	}

	private String page() {
		html.raw("<!DOCTYPE html>\n").open("html", "lang", "en").open("head").raw("<meta charset=\"utf-8\"/>\n")
				.raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n")
				.element("title", manifest.project() + " – diagnostic rules").open("style").raw(style()).close().close();
		html.open("body").element("a", "Skip to the rules", "href", "#rules", "class", "skip");
		head();
		contents();
		html.open("main");
		Words words = new Words(base);
		Gallery gallery = new Gallery(pictures, html);
		new VehicleSection(base, words, html, gallery).write();
		new RuleSection(base, words, html).write();
		new FaultSection(base, words, html, gallery).write();
		new CheckSection(base, manifest, html).write();
		new IndexSection(base, html).write();
		html.close().close().close();
		return html.toString();
	}

	private void head() {
		html.open("header").element("h1", manifest.project()).open("p").text(count("rules", "rule") + ", "
				+ count("tests", "test") + ", " + count("faults", "fault") + ", " + count("repairs", "repair") + ", "
				+ count("jobs", "finished job") + ". Checked by Baywright " + manifest.tool() + ".").close();
		html.open("p").text("Fingerprint of the content: ").element("code", manifest.fingerprint()).close();
		html.open("aside", "class", "notice", "aria-label", "Before you work by this sheet")
				.element("p", "These rules help to find a fault. They do not replace training. Local codes and the law"
						+ " where you work, the vehicle maker’s instructions and licensed practice come first; where they"
						+ " differ from this sheet, they hold.")
				.element("p", "A result proves what stands beside it and nothing else. A code of a module that does not"
						+ " answer is unread: neither stored nor not stored.")
				.close().close();
	}

	private String count(String kind, String word) {
		int count = manifest.count(kind);
		return count + " " + word + (count == 1 ? "" : "s");
	}

	private void contents() {
		html.open("nav", "aria-label", "Contents").element("h2", "Contents").open("ul");
		for (String[] section : new String[][] { { "cautions", "Cautions" }, { "vehicles", "Vehicles" },
				{ "signs", "Signs" }, { "tests", "Tests" }, { "rules", "Rules" }, { "faults", "Faults" },
				{ "repairs", "Repairs" }, { "jobs", "Finished jobs" }, { "checks", "What was checked" },
				{ "index", "Index" } }) {
			html.open("li").link(section[0], section[1]).close();
		}
		html.close().close();
	}

	private static String style() {
		try (InputStream in = Sheet.class.getResourceAsStream("sheet.css")) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8);
		} catch (IOException e) {
			throw new UncheckedIOException("a part of the program cannot be read", e);
		}
	}
}
