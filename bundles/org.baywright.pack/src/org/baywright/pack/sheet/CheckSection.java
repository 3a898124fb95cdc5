package org.baywright.pack.sheet;

import java.util.List;

import org.baywright.model.Hazard;
import org.baywright.model.RuleBase;
import org.baywright.pack.manifest.PackManifest;
import org.baywright.pack.manifest.PackManifest.Accepted;
import org.baywright.pack.manifest.PackManifest.OfHazard;
import org.baywright.pack.manifest.PackManifest.Remark;
import org.baywright.pack.manifest.PackManifest.SignOff;
import org.baywright.pack.manifest.PackManifest.Standing;

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
		manifest.signOff().ifPresent(this::signOff);
		flaws("Open: nobody has said why these may stand", manifest.openFlaws());
		flaws("Accepted by the author", manifest.acceptedFlaws());
		flaws("Worth knowing", manifest.flaws().stream()
				.filter(flaw -> !flaw.isOpen() && flaw.accepted().isEmpty()).toList());
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

	private void signOff(SignOff signOff) {
		html.element("p", signOff.met() ? "The rules are signed off: all that the project asks for before they count as agreed is met."
				: "Draft: the rules are not signed off. What is missing stands below.");
		html.open("ul");
		if (signOff.agree() > 0) {
			html.element("li", (signOff.agree() == 1 ? "One person agrees" : signOff.agree() + " people agree") + " with each rule and each chain as it stands"
					+ (signOff.withoutAuthor() ? ", other than who wrote it." : "."));
		}
		for (OfHazard of : signOff.hazards()) {
			html.element("li", "One of those who agree with a rule that touches the hazard “" + base.hazard(of.hazard()).map(Hazard::title).orElse(of.hazard())
					+ "” is qualified “" + of.qualification() + "”.");
		}
		html.close();
	}

	private void flaws(String title, List<Standing> flaws) {
		if (flaws.isEmpty()) {
			return;
		}
		html.element("h3", title + " (" + flaws.size() + ")").open("ul");
		for (Standing flaw : flaws) {
			html.open("li").text(flaw.message() + " ")
					.element("span", flaw.at().map(at -> at + ", ").orElse("") + flaw.check(), "class", "name");
			html.list(flaw.story());
			flaw.accepted().ifPresent(accepted -> html.element("p", "Accepted: " + say(accepted)));
			html.close();
		}
		html.close();
	}

	private static String say(Accepted accepted) {
		return accepted.reason() + accepted.author().map(author -> " – " + author).orElse("")
				+ accepted.date().map(date -> ", " + date).orElse("");
	}
}
