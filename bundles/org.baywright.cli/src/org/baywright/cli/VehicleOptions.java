package org.baywright.cli;

import java.util.List;
import java.util.Optional;

import org.baywright.cli.bench.Opening;
import org.baywright.model.RuleBase;

import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The project, the vehicle and its complaint, of commands that find faults. */
final class VehicleOptions {

	@Parameters(paramLabel = "PROJECT", arity = "0..1", defaultValue = ".", description = "Folder of the rule project. Default: this folder.")
	private String given;

	@Option(names = "--vehicle", paramLabel = "FAMILY", description = "The family of the vehicle, by its name or its title.")
	private Optional<String> vehicle = Optional.empty();

	@Option(names = "--with", paramLabel = "TRAIT=VALUE", description = {
			"What the vehicle is like, such as engine=diesel_2_1. May be given several times." })
	private List<String> traits = List.of();

	@Option(names = "--complaint", paramLabel = "SIGN", description = {
			"What is wrong with the vehicle, by the name or the title of the sign. May be given several times." })
	private List<String> complaints = List.of();

	/** Returns the project as the user wrote it. */
	String given() {
		return given;
	}

	/** Returns whether both the vehicle and what is wrong with it are said. */
	boolean areWhole() {
		return vehicle.isPresent() && !complaints.isEmpty();
	}

	/**
	 * Puts on a bench what was said.
	 *
	 * @param where stands before the message: "van-before: "; may be empty
	 * @throws CommandException if that cannot be
	 */
	Opening opening(RuleBase rules, String where) {
		Opening opening = Opening.of(rules, vehicle, traits, complaints);
		if (!opening.wrong().isEmpty()) {
			throw new CommandException(ExitCode.USAGE, where + opening.wrong());
		}
		return opening;
	}
}
