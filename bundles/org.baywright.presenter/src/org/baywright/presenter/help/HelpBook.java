package org.baywright.presenter.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.check.Checks;
import org.baywright.analysis.check.HelpPages;
import org.baywright.presenter.Say;

/** All pages of help, in the order of the contents. */
public final class HelpBook {

	/** The page of the language. */
	public static final String LANGUAGE = "language";

	private final List<HelpPage> pages;

	/**
	 * Makes a book.
	 *
	 * @param workbench the pages on the program itself, which come first
	 */
	public HelpBook(List<HelpPage> workbench) {
		List<HelpPage> all = new ArrayList<>(workbench);
		HelpPages.page(LANGUAGE).ifPresent(text -> all.add(HelpPage.of(LANGUAGE, "Writing rules", text)));
		HelpPages.page(HelpPages.PROBLEMS).ifPresent(text -> all.add(HelpPage.of(HelpPages.PROBLEMS, "Writing rules", text)));
		for (String id : Checks.ids()) {
			HelpPages.page(id).ifPresent(text -> all.add(HelpPage.of(id, "Kinds of flaws", text)));
		}
		pages = List.copyOf(all);
	}

	/** Returns all pages. */
	public List<HelpPage> pages() {
		return pages;
	}

	/** Returns a page by its id, or that on a kind of problem, which is part of a page. */
	public Optional<HelpPage> page(String id) {
		return pages.stream().filter(page -> page.id().equals(id)).findFirst()
				.or(() -> HelpPages.page(id).map(text -> HelpPage.of(id, "Writing rules", text)));
	}

	/** Returns the pages that hold all of the words, those first that hold them in their title. */
	public List<HelpPage> search(String words) {
		List<HelpPage> titled = new ArrayList<>();
		List<HelpPage> others = new ArrayList<>();
		for (HelpPage page : pages) {
			if (Say.holds(page.title() + " " + page.id(), words)) {
				titled.add(page);
			} else if (Say.holds(page.title() + "\n" + page.markdown(), words)) {
				others.add(page);
			}
		}
		titled.addAll(others);
		return titled;
	}
}
