package org.baywright.language.ide.hover;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.ide.names.Target;
import org.baywright.language.ide.names.Usages;
import org.baywright.language.ide.names.Use;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;
import org.baywright.model.RuleBase;
import org.baywright.language.vocabulary.Vocabulary;

/** Finds what stands at a place and explains it. */
public final class Hovering {

	private final Usages usages;

	/** @param usages where names stand */
	public Hovering(Usages usages) {
		this.usages = usages;
	}

	/**
	 * Explains the name or the word of the language at a place.
	 *
	 * @param file path relative to the project
	 * @param text its text
	 * @param offset the place
	 * @param base the rules as far as they are whole
	 * @param uses what has to do with what in them
	 */
	public Optional<Hover> at(String file, String text, int offset, RuleBase base, RuleUses uses) {
		Optional<Usages.Named> named = usages.at(file, offset);
		if (named.isPresent()) {
			Use use = named.get().use();
			return Optional.of(new Hover(use.offset(), use.length(), explain(named.get().target(), base, uses)));
		}
		for (Word word : Words.of(text)) {
			if (word.kind() == Word.Kind.KEYWORD && word.offset() <= offset && offset <= word.end()) {
				return Vocabulary.help(word.text())
						.map(help -> new Hover(word.offset(), word.text().length(), "**" + word.text() + "**\n\n" + help));
			}
		}
		return Optional.empty();
	}

	private String explain(Target target, RuleBase base, RuleUses uses) {
		List<String> paragraphs = new ArrayList<>();
		paragraphs.add("**" + target.word() + "** `" + target.value().orElse(target.name()) + "`");
		paragraphs.addAll(new Explaining(base, uses).of(target));
		List<Use> places = usages.of(target);
		long used = places.stream().filter(use -> !use.declaration()).count();
		String declared = places.stream().filter(Use::declaration).map(Use::file).distinct()
				.reduce((one, other) -> one + ", " + other).map(files -> "Defined in " + files + "; ").orElse("");
		String times = used == 0 ? "not used" : used == 1 ? "used once" : "used " + used + " times";
		paragraphs.add(declared.isEmpty() ? times : declared + times + ".");
		return String.join("\n\n", paragraphs);
	}
}
