package org.baywright.pack.sheet;

import java.util.List;

import org.baywright.model.RuleBase;
import org.baywright.pack.PackManifest;
import org.baywright.pack.PackManifest.Accepted;
import org.baywright.pack.PackManifest.Remark;
import org.baywright.pack.PackManifest.Standing;

/** What was checked and what stands. */
final class CheckSection {

	private final RuleBase base;
	private final PackManifest manifest;
	private final Html html;

	CheckSection(RuleBase base, PackManifest manifest, Html html) {
		this.base = base;
		this.manifest = manifest;
		this.html = html;
	}

	void write() {
		html.open("section", "id", "checks").element("h2", "What was checked");
		html.element("p", "No error stands. The rules bring " + manifest.cases() + " of " + base.cases().size()
				+ " finished jobs to the end that they had. " + manifest.checks().size() + " checks were made: "
				+ String.join(", ", manifest.checks()) + ".");
		findings("Open: nobody has said why these may stand", manifest.openFindings());
		findings("Accepted by the author", manifest.acceptedFindings());
		findings("Worth knowing", manifest.findings().stream()
				.filter(finding -> !finding.isOpen() && finding.accepted().isEmpty()).toList());
		if (!manifest.problems().isEmpty()) {
			html.element("h3", "Remarks on the text").open("ul");
			for (Remark problem : manifest.problems()) {
				html.element("li", problem.at().map(at -> at + ": ").orElse("") + problem.message()
						+ (problem.advice().isEmpty() ? "" : " " + problem.advice()));
			}
			html.close();
		}
		html.close();
	}

	private void findings(String title, List<Standing> findings) {
		if (findings.isEmpty()) {
			return;
		}
		html.element("h3", title + " (" + findings.size() + ")").open("ul");
		for (Standing finding : findings) {
			html.open("li").text(finding.message() + " ")
					.element("span", finding.at().map(at -> at + ", ").orElse("") + finding.check(), "class", "name");
			html.list(finding.story());
			finding.accepted().ifPresent(accepted -> html.element("p", "Accepted: " + say(accepted)));
			html.close();
		}
		html.close();
	}

	private static String say(Accepted accepted) {
		return accepted.reason() + accepted.author().map(author -> " – " + author).orElse("")
				+ accepted.date().map(date -> ", " + date).orElse("");
	}
}
