package org.baywright.presenter.help;

/**
 * A page of help.
 *
 * @param id its name, by which others link to it
 * @param chapter the chapter it belongs to
 * @param title its title
 * @param markdown its text
 */
public record HelpPage(String id, String chapter, String title, String markdown) {

	/** Makes a page whose title is its first heading. */
	public static HelpPage of(String id, String chapter, String markdown) {
		String first = markdown.lines().filter(line -> line.startsWith("# ")).findFirst().map(line -> line.substring(2)).orElse(id);
		return new HelpPage(id, chapter, first.strip(), markdown);
	}
}
