package org.baywright.presenter.draft;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;

import org.baywright.model.Written;
import org.baywright.presenter.Say;

/**
 * A rule project about to be made.
 *
 * @param name name of the project and of its folder
 * @param family the first family
 * @param starter whether a first sign, test and rule are written too, to be changed at once
 * @param author who writes them
 * @param date when
 */
public record ProjectDraft(String name, FamilyDraft family, boolean starter, String author, LocalDate date) {

	private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]*");

	/**
	 * Returns what is still wrong, in one sentence.
	 *
	 * @param taken names of projects that are there
	 */
	public Optional<String> problem(Collection<String> taken) {
		if (name.isBlank()) {
			return Optional.of("Give the project a name, such as light-vans.");
		}
		if (!NAME.matcher(name).matches() || name.endsWith(".") || name.endsWith(" ")) {
			return Optional.of("The project becomes a folder: use letters, digits, spaces, dots and hyphens.");
		}
		if (isTooLong(name)) {
			return Optional.of("The project becomes a folder, and its name is too long for one: use at most 200 letters.");
		}
		if (taken.stream().anyMatch(name::equalsIgnoreCase)) {
			return Optional.of("There is already a project named " + name + ".");
		}
		Optional<String> wrong = family.problem(List.of());
		if (wrong.isPresent()) {
			return wrong;
		}
		return starter && author.isBlank() ? Optional.of("Say who writes the first rule.") : Optional.empty();
	}

	/** Returns whether some system could not make a file or folder of this name, of which the systems in use allow 255 bytes. */
	public static boolean isTooLong(String name) {
		return name.getBytes(StandardCharsets.UTF_8).length > 200;
	}

	/** Returns the first files by path, all of which the checks pass. */
	public SortedMap<String, String> files() {
		SortedMap<String, String> files = new TreeMap<>();
		files.put("families.bay", "// The vehicles that the rules speak of.\n\n" + family.text());
		if (starter) {
			files.put("starting.bay", firstRules());
		}
		return files;
	}

	private String firstRules() {
		return """
				// A first complaint from sign to repair, to be changed into one of yours. The values are invented.

				state ignition : off, on

				sign no_start "Engine does not start"

				hazard battery_gas "Gas and acid of a battery" {
				  caution "No sparks or flames near a battery, eye protection on. Local safety rules and the maker's instructions come first."
				}

				part battery "12 V battery" hazards battery_gas {
				  fault discharged "Low state of charge"
				}

				test rest_voltage "Battery voltage at rest" {
				  measures V 0 .. 18 step 0.1
				  at battery
				  in ignition off
				  prepare "Headlamps on for 2 min, off, then wait 5 min: it takes the surface charge off."
				  takes 8 min
				  caution battery_gas
				}

				rule low_battery "Battery too low to start" {
				  given no_start
				  run rest_voltage
				  on below 12.0 V     : confirms battery.discharged
				  on 12.0 V .. 12.3 V : suspects battery.discharged
				  on at_least 12.4 V  : clears battery.discharged
				  because "A lead-acid battery that rests below 12.0 V has hardly any charge left; 12.4 V and more is enough to crank."
				  source practice
				  by %1$s on %2$s
				}

				rule start_end "Nothing found" {
				  given no_start unexplained
				  then refers "a specialist, with all results written down"
				  because "What is not found here goes to somebody who can find it."
				  source practice
				  by %1$s on %2$s
				}

				repair recharge "Recharge the battery" {
				  fixes battery.discharged
				  steps "Charge it to the end as its maker says, then take the surface charge off." "Look for what emptied it."
				  caution battery_gas
				  takes 6 h
				  tell_customer "Short trips in winter do not recharge the battery."
				  verify { repeat rest_voltage expect at_least 12.6 V }
				}
				""".formatted(Written.text(Say.inLine(author)), date);
	}
}
