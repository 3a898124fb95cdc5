package org.baywright.pack;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

import org.baywright.model.References;
import org.baywright.model.RuleBase;
import org.baywright.pack.format.ManifestForm;
import org.baywright.pack.format.RulesForm;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.json.JsonText;
import org.baywright.pack.manifest.FormatVersion;
import org.baywright.pack.manifest.PackException;
import org.baywright.pack.manifest.PackManifest;

import com.google.gson.JsonElement;

/**
 * Reads packs from anywhere, also from people one does not trust: nothing is unpacked to a disk, sizes and nesting are
 * limited, and what was read is what the manifest's hashes stand for. Use {@link PackVerifier} to learn more about a
 * pack.
 */
public final class PackReader {

	/** As much is taken from what does not say how much it holds. */
	private static final int MAX_STREAM = 1 << 26;

	private PackReader() {
	}

	/**
	 * Reads a pack from a file.
	 *
	 * @throws IOException if the file cannot be read
	 * @throws PackException if it is no pack, is damaged, or is of a version that cannot be read
	 */
	public static Pack read(Path file) throws IOException, PackException {
		return read(bytes(file));
	}

	/**
	 * Reads a pack.
	 *
	 * @throws PackException if it is no pack, is damaged, or is of a version that cannot be read
	 */
	public static Pack read(byte[] pack) throws PackException {
		return read(Archive.read(pack));
	}

	private static Pack read(Map<String, byte[]> entries) throws PackException {
		PackManifest manifest = manifest(entries);
		requireHashes(manifest, entries);
		RuleBase rules = closed(rules(manifest, entries));
		Pictures.requireFit(rules, Pictures.among(entries));
		return new Pack(manifest, rules, new String(entries.get(Archive.SHEET), StandardCharsets.UTF_8));
	}

	/**
	 * Returns the entries of a pack by name, as they are. Nothing but the archive's form has been looked at.
	 *
	 * @throws IOException if the file cannot be read
	 * @throws PackException if it is not an archive of a pack's entries
	 */
	public static Map<String, byte[]> entries(Path file) throws IOException, PackException {
		return Archive.read(bytes(file));
	}

	/**
	 * Returns the entries of a pack by name, after all was looked at that {@link #read(Path)} looks at.
	 *
	 * @throws IOException if the file cannot be read
	 * @throws PackException if it is no pack, is damaged, or is of a version that cannot be read
	 */
	public static Map<String, byte[]> soundEntries(Path file) throws IOException, PackException {
		Map<String, byte[]> entries = entries(file);
		read(entries);
		return entries;
	}

	static byte[] bytes(Path file) throws IOException, PackException {
		boolean endless = !Files.isRegularFile(file) && Files.exists(file);
		if (!endless && Files.size(file) <= Archive.MAX_BYTES) {
			return Files.readAllBytes(file);
		}
		// a pipe or a device has no size
		try (InputStream in = Files.newInputStream(file)) {
			byte[] bytes = endless ? in.readNBytes(MAX_STREAM + 1) : null;
			if (bytes == null || bytes.length > MAX_STREAM) {
				throw new PackException("The file is larger than any rule pack; it is not read.");
			}
			return bytes;
		}
	}

	static PackManifest manifest(Map<String, byte[]> entries) throws PackException {
		JsonElement json = JsonText.read(Archive.MANIFEST, entries.get(Archive.MANIFEST));
		return ManifestForm.read(JsonIn.of(Archive.MANIFEST, json, isStrict(Archive.MANIFEST, json)));
	}

	static RuleBase.Builder rules(PackManifest manifest, Map<String, byte[]> entries) throws PackException {
		JsonElement json = JsonText.read(Archive.RULES, entries.get(Archive.RULES));
		RuleBase.Builder rules = RulesForm.read(JsonIn.of(Archive.RULES, json, isStrict(Archive.RULES, json)));
		FormatVersion version = version(Archive.RULES, json);
		if (!version.equals(manifest.version())) {
			throw new PackException("The manifest has format version " + manifest.version() + ", the rules have " + version + ".");
		}
		if (!rules.name.equals(manifest.project())) {
			throw new PackException("The manifest speaks of project \"" + manifest.project() + "\", the rules of project \""
					+ rules.name + "\".");
		}
		return rules;
	}

	/** Returns the rule base of the elements. @throws PackException if a name leads nowhere or is declared twice */
	static RuleBase closed(RuleBase.Builder elements) throws PackException {
		try {
			RuleBase rules = elements.build();
			References.unique(rules);
			return rules;
		} catch (References.Missing e) {
			throw new PackException(e.getMessage(), e);
		}
	}

	/** What a newer version may have added is passed over; in a version that is known nothing may be unknown. */
	private static boolean isStrict(String entry, JsonElement json) throws PackException {
		return !version(entry, json).isNewer();
	}

	private static FormatVersion version(String entry, JsonElement json) throws PackException {
		return FormatVersion.of(JsonIn.of(entry, json, false).text("version"));
	}

	static void requireHashes(PackManifest manifest, Map<String, byte[]> entries) throws PackException {
		for (Map.Entry<String, PackManifest.Entry> stated : manifest.entries().entrySet()) {
			byte[] content = entries.get(stated.getKey());
			if (content == null) {
				throw new PackException("The pack lacks " + stated.getKey() + ", which the manifest names.");
			}
			if (content.length != stated.getValue().bytes() || !Sha256.of(content).equals(stated.getValue().sha256())) {
				throw new PackException(stated.getKey() + " is not what the manifest says: the pack was changed or is damaged.");
			}
		}
		for (String name : Pictures.among(entries).keySet()) {
			if (!manifest.entries().containsKey(name)) {
				throw new PackException("The pack holds " + name + ", which the manifest does not name.");
			}
		}
		if (!manifest.fingerprint().equals(manifest.entries().get(Archive.RULES).sha256())) {
			throw new PackException("The pack's fingerprint is not that of its rules: the manifest was changed.");
		}
	}
}
