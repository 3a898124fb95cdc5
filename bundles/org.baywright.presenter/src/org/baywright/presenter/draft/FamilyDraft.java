package org.baywright.presenter.draft;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.NamedValue;
import org.baywright.model.Span;
import org.baywright.model.Trait;
import org.baywright.model.VinPattern;
import org.baywright.model.words.Names;
import org.baywright.model.write.RuleWriter;
import org.baywright.presenter.Say;

/**
 * A family about to be written.
 *
 * @param title what a technician calls it
 * @param name its name in the rules
 * @param fromYear first year of build, or the empty text if the year does not matter
 * @param toYear last year of build, or the empty text
 * @param engines engines by name, separated by commas, or the empty text if they do not matter
 * @param vin the first characters of its VINs, or the empty text
 */
public record FamilyDraft(String title, String name, String fromYear, String toYear, String engines, String vin) {

	private static final Pattern YEAR = Pattern.compile("(19|20)\\d\\d");
	// ISO 3779: no I, O or Q
	private static final Pattern VIN = Pattern.compile("[A-HJ-NPR-Z0-9?]{3,17}");

	/**
	 * Returns what is still wrong, in one sentence.
	 *
	 * @param taken names of families that are there
	 */
	public Optional<String> problem(Collection<String> taken) {
		if (title.isBlank()) {
			return Optional.of("Give the family a title, such as Lark L2 light van.");
		}
		Optional<String> named = Names.problem("family", name, taken);
		if (named.isPresent()) {
			return named;
		}
		if (fromYear.isBlank() != toYear.isBlank()) {
			return Optional.of("Give both years of build, or neither.");
		}
		if (!fromYear.isBlank()) {
			if (!YEAR.matcher(fromYear.strip()).matches() || !YEAR.matcher(toYear.strip()).matches()) {
				return Optional.of("A year of build has four digits, such as 2019.");
			}
			if (fromYear.strip().compareTo(toYear.strip()) > 0) {
				return Optional.of("The first year of build comes after the last.");
			}
		}
		List<String> names = engineNames();
		if (names.stream().anyMatch(String::isEmpty) || names.stream().distinct().count() < names.size()) {
			return Optional.of("Each engine needs a name of its own that begins with a letter, such as diesel_2_0.");
		}
		Matcher characters = VIN.matcher(vin.strip());
		return vin.isBlank() || characters.matches() ? Optional.empty()
				: Optional.of("A VIN begins with at least three capital letters or digits, without I, O and Q; ? stands for any.");
	}

	private List<String> engineNames() {
		return engines.isBlank() ? List.of()
				: Pattern.compile(",").splitAsStream(engines).filter(text -> !text.isBlank()).map(Names::suggest).toList();
	}

	/** Returns the family in the language. */
	public String text() {
		List<Trait> traits = new ArrayList<>();
		if (!engineNames().isEmpty()) {
			traits.add(new Trait("engine", "", new Domain.Names(engineNames().stream().map(each -> new NamedValue(each, each, Span.NONE)).toList()), Span.NONE));
		}
		if (!fromYear.isBlank()) {
			traits.add(new Trait("built", "year",
					new Domain.Quantity("", new BigDecimal(fromYear.strip()), new BigDecimal(toYear.strip()), BigDecimal.ONE), Span.NONE));
		}
		List<VinPattern> vins = vin.isBlank() ? List.of() : List.of(new VinPattern(vin.strip(), false, Span.NONE));
		return new RuleWriter().text(new Family(name, Say.inLine(title), Optional.empty(), false, traits, vins, Span.NONE));
	}
}
