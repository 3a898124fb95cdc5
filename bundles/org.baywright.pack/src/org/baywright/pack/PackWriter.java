package org.baywright.pack;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

import org.baywright.analysis.CaseResult;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.pack.format.AgreedForm;
import org.baywright.pack.format.ManifestForm;
import org.baywright.pack.format.RulesForm;
import org.baywright.pack.json.CanonicalJson;
import org.baywright.pack.manifest.FormatVersion;
import org.baywright.pack.manifest.PackException;
import org.baywright.pack.manifest.PackManifest;
import org.baywright.pack.sheet.Sheet;

/**
 * Makes packs. The bytes of a pack depend on the rules, what was found and the version of Baywright, on nothing else:
 * not on the machine, the day, the time zone, the locale or the order in which the files were read.
 */
public final class PackWriter {

	private PackWriter() {
	}

	/** A pack as bytes, and as whoever reads these finds it. */
	public record Made(byte[] bytes, Pack pack) {
	}

	/**
	 * Returns the pack.
	 *
	 * @throws PackRefused if an error stands, or the sign-off is not met and the pack is to be no draft
	 * @throws PackException if the rules cannot be written, which a checked rule base always can
	 */
	public static byte[] bytes(PackContents contents) throws PackException {
		return make(contents).bytes();
	}

	/**
	 * Makes the pack and reads it back.
	 *
	 * @throws PackRefused if an error stands, or the sign-off is not met and the pack is to be no draft
	 * @throws PackException if the rules cannot be written, which a checked rule base always can
	 */
	public static Made make(PackContents contents) throws PackException {
		contents.requireNothingBlocks();
		PackReader.closed(new RuleBase.Builder(contents.rules().name()).add(contents.rules()));
		Pictures.requireFit(contents.rules(), contents.pictures());
		byte[] rules = CanonicalJson.bytes(RulesForm.write(contents.rules()));
		String fingerprint = Sha256.of(rules);
		PackManifest draft = manifest(contents, fingerprint, new TreeMap<>());
		byte[] sheet = Sheet.of(RulesForm.sorted(contents.rules()), draft, contents.pictures());

		SortedMap<String, PackManifest.Entry> entries = new TreeMap<>();
		entries.put(Archive.RULES, new PackManifest.Entry(rules.length, fingerprint));
		entries.put(Archive.SHEET, new PackManifest.Entry(sheet.length, Sha256.of(sheet)));
		contents.pictures().forEach((name, picture) -> entries.put(name, new PackManifest.Entry(picture.length, Sha256.of(picture))));
		byte[] manifest = CanonicalJson.bytes(ManifestForm.write(manifest(contents, fingerprint, entries)));
		Map<String, byte[]> all = new TreeMap<>(contents.pictures());
		all.putAll(Map.of(Archive.MANIFEST, manifest, Archive.RULES, rules, Archive.SHEET, sheet));
		byte[] pack = Archive.write(all);
		return new Made(pack, PackReader.read(pack)); // a pack that nobody can read must not leave the house
	}

	/**
	 * Returns the fingerprint that a pack of these rules has: SHA-256 in 64 hexadecimal digits.
	 *
	 * @throws PackException if the rules cannot be written, which a checked rule base always can
	 */
	public static String fingerprint(RuleBase rules) throws PackException {
		return Sha256.of(CanonicalJson.bytes(RulesForm.write(rules)));
	}

	/**
	 * Writes the pack to a file, which is replaced as a whole or not at all.
	 *
	 * @param target the file; folders that are missing are made
	 * @throws PackRefused if an error stands, or the sign-off is not met and the pack is to be no draft
	 * @throws PackException if the rules cannot be written, which a checked rule base always can
	 * @throws IOException if the file cannot be written
	 */
	public static void write(PackContents contents, Path target) throws PackException, IOException {
		WholeFile.write(target, bytes(contents));
	}

	private static PackManifest manifest(PackContents contents, String fingerprint,
			SortedMap<String, PackManifest.Entry> entries) {
		return new PackManifest(FormatVersion.CURRENT, contents.rules().name(), contents.tool(), fingerprint, entries,
				ManifestForm.counts(contents.rules()), contents.report().checks().stream().sorted().toList(),
				contents.report().all().stream().sorted().map(ManifestForm::standing).toList(),
				contents.problems().stream().sorted(PackWriter::byPlace).map(ManifestForm::remark).toList(),
				ManifestForm.builtOn(contents.rules()),
				AgreedForm.signOff(contents.rules(), contents.report().breaches().isEmpty()), AgreedForm.reviewed(contents.rules()),
				(int) contents.report().cases().stream().filter(CaseResult::passed).count());
	}

	private static int byPlace(Problem one, Problem other) {
		return Comparator.comparing(Problem::span).thenComparing(Problem::id).thenComparing(Problem::message)
				.compare(one, other);
	}
}
