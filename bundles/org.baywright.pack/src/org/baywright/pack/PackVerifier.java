package org.baywright.pack;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.check.Checks;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Picture;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.Verification.Aspect;
import org.baywright.pack.Verification.Outcome;
import org.baywright.pack.Verification.Result;
import org.baywright.pack.format.AgreedForm;
import org.baywright.pack.format.ManifestForm;
import org.baywright.pack.format.RulesForm;
import org.baywright.pack.json.CanonicalJson;
import org.baywright.pack.json.JsonText;
import org.baywright.pack.manifest.FormatVersion;
import org.baywright.pack.manifest.PackException;
import org.baywright.pack.manifest.PackManifest;
import org.baywright.pack.sheet.Sheet;

/** Looks at every aspect of a pack and says of each whether it is as it should be. */
public final class PackVerifier {

	private final List<Result> results = new ArrayList<>();
	private Optional<Pack> pack = Optional.empty();

	private PackVerifier() {
	}

	/**
	 * Verifies a file.
	 *
	 * @throws IOException if the file cannot be read
	 */
	public static Verification verify(Path file) throws IOException {
		try {
			return verify(PackReader.bytes(file));
		} catch (PackException e) {
			return new Verification(List.of(new Result(Aspect.ARCHIVE, Outcome.FAILED, e.getMessage())), Optional.empty());
		}
	}

	/** Verifies the bytes of a pack. */
	public static Verification verify(byte[] bytes) {
		PackVerifier verifier = new PackVerifier();
		verifier.all(bytes);
		return new Verification(verifier.results, verifier.pack);
	}

	/**
	 * Makes all checks on the rules of a pack again and compares what they find with what the manifest says.
	 *
	 * @param pack a pack that was read
	 * @param listener hears of progress and can stop the checks
	 * @throws java.util.concurrent.CancellationException if the listener asked to stop
	 */
	public static Result prove(Pack pack, Listener listener) {
		Report report = new Analysis().check(pack.rules(), listener);
		PackManifest manifest = pack.manifest();
		TreeSet<String> found = new TreeSet<>();
		report.flaws().forEach(flaw -> found.add(flaw.severity() + " " + flaw.acceptanceKey()
				+ (flaw.accepted().isPresent() ? " accepted" : "")));
		TreeSet<String> stated = new TreeSet<>();
		manifest.flaws().forEach(flaw -> stated.add(flaw.severity() + " " + flaw.id() + "@" + flaw.meaning()
				+ (flaw.accepted().isPresent() ? " accepted" : "")));
		if (!report.checks().equals(manifest.checks())) {
			return new Result(Aspect.PROOFS, Outcome.OPEN,
					"The pack was checked by " + manifest.checks().size() + " checks of Baywright " + manifest.tool()
							+ ", this one makes " + report.checks().size() + "; the two cannot be compared.");
		}
		if (manifest.signOff().isPresent() && manifest.isDraft() == report.breaches().isEmpty()) {
			return new Result(Aspect.PROOFS, Outcome.FAILED, "The manifest says that the sign-off is " + (manifest.isDraft() ? "not met; it is." : "met; it is not."));
		}
		long passed = report.cases().stream().filter(CaseResult::passed).count();
		if (!found.equals(stated) || passed != manifest.cases()) {
			return new Result(Aspect.PROOFS, Outcome.FAILED, difference(found, stated, passed, manifest.cases()));
		}
		return new Result(Aspect.PROOFS, Outcome.PASSED, "All " + report.checks().size() + " checks find what the manifest says: "
				+ PackText.number(found.size(), "flaw") + ", " + PackText.number(passed, "finished job") + " brought to the known end.");
	}

	private static String difference(TreeSet<String> found, TreeSet<String> stated, long passed, int statedPassed) {
		for (String one : found) {
			if (!stated.contains(one)) {
				return "The checks find what the manifest does not say: " + one + ".";
			}
		}
		for (String one : stated) {
			if (!found.contains(one)) {
				return "The manifest says what the checks do not find: " + one + ".";
			}
		}
		return "The manifest says that " + PackText.number(statedPassed, "finished job") + " come to the known end; there are " + passed + ".";
	}

	/** Something that is looked at; it throws if it is not as it should be. */
	private interface Look<T> {
		T look() throws PackException;
	}

	private <T> Optional<T> look(Aspect aspect, String passed, Look<T> look) {
		try {
			T value = look.look();
			results.add(new Result(aspect, Outcome.PASSED, passed));
			return Optional.of(value);
		} catch (PackException e) {
			results.add(new Result(aspect, Outcome.FAILED, e.getMessage()));
			return Optional.empty();
		}
	}

	private void all(byte[] bytes) {
		look(Aspect.ARCHIVE, "The file is a zip archive with the entries of a rule pack.", () -> Archive.read(bytes))
				.ifPresent(entries -> entries(bytes, entries));
		for (Aspect aspect : Aspect.values()) {
			if (aspect != Aspect.PROOFS && results.stream().noneMatch(result -> result.aspect() == aspect)) {
				results.add(new Result(aspect, Outcome.OPEN, "Not looked at, since what it builds on failed."));
			}
		}
	}

	private void entries(byte[] bytes, Map<String, byte[]> entries) {
		Optional<PackManifest> manifest = look(Aspect.MANIFEST, "The manifest can be read.",
				() -> PackReader.manifest(entries));
		if (manifest.isEmpty()) {
			return;
		}
		look(Aspect.FINGERPRINT, "The rules and the sheet are those that the manifest names.", () -> {
			PackReader.requireHashes(manifest.get(), entries);
			return true;
		});
		Optional<RuleBase.Builder> read = look(Aspect.RULES, "The rules can be read.",
				() -> PackReader.rules(manifest.get(), entries));
		Optional<RuleBase> rules = read.flatMap(elements -> look(Aspect.REFERENCES,
				"Every name that the rules use is defined, and once.", () -> PackReader.closed(elements)));
		if (rules.isPresent() && !(Pictures.among(entries).isEmpty() && Picture.of(rules.get()).isEmpty())) {
			look(Aspect.REFERENCES, "Every picture that the rules show is there, and no other.", () -> {
				Pictures.requireFit(rules.get(), Pictures.among(entries));
				return true;
			});
		}
		look(Aspect.CANONICAL, "Both JSON texts are canonical (RFC 8785), byte by byte.", () -> {
			requireCanonical(Archive.MANIFEST, entries);
			requireCanonical(Archive.RULES, entries);
			return true;
		});
		if (rules.isPresent()) {
			derived(manifest.get(), rules.get(), entries);
			sheet(manifest.get(), rules.get(), entries);
		}
		look(Aspect.PACKING, "The archive is byte for byte as Baywright packs it.", () -> {
			if (!Arrays.equals(bytes, Archive.write(entries))) {
				throw new PackException("The archive is not byte for byte as Baywright packs it: somebody packed it anew, or cut or added something.");
			}
			return true;
		});
		if (rules.isPresent() && isPassedSoFar()) {
			pack = Optional.of(new Pack(manifest.get(), rules.get(),
					new String(entries.get(Archive.SHEET), StandardCharsets.UTF_8)));
		}
	}

	private boolean isPassedSoFar() {
		return results.stream().noneMatch(result -> result.outcome() == Outcome.FAILED);
	}

	private static void requireCanonical(String name, Map<String, byte[]> entries) throws PackException {
		byte[] content = entries.get(name);
		JsonText.read(name, content); // a text that is nested without end would exhaust whoever puts it in order
		if (!Arrays.equals(content, CanonicalJson.bytes(new String(content, StandardCharsets.UTF_8)))) {
			throw new PackException(name + " is not in canonical form (RFC 8785).");
		}
	}

	private void derived(PackManifest manifest, RuleBase rules, Map<String, byte[]> entries) {
		if (manifest.version().isNewer()) {
			results.add(new Result(Aspect.DERIVED, Outcome.OPEN, "Not looked at: the pack has a newer format version, "
					+ manifest.version() + "."));
			return;
		}
		look(Aspect.DERIVED, manifest.version().isOlder()
				? "The counts are right; what else the pack derives from the rules is not compared in its older format version, " + manifest.version() + "."
				: "What the pack derives from the rules (meanings, reach, counts) is right.", () -> {
			if (!manifest.counts().equals(ManifestForm.counts(rules))) {
				throw new PackException("The manifest counts other elements than there are.");
			}
			if (manifest.cases() < 0 || manifest.cases() > rules.cases().size()) {
				throw new PackException("The manifest says that " + PackText.number(manifest.cases(), "finished job") + " come to the known end; the rules hold "
						+ rules.cases().size() + ".");
			}
			Optional<PackManifest.Standing> error = manifest.flaws().stream().filter(flaw -> flaw.severity() == Severity.ERROR).findFirst();
			if (error.isPresent()) {
				throw new PackException("The manifest holds the error " + error.get().id()
						+ ". No pack is written while an error stands, and none can be accepted.");
			}
			requireAgreed(manifest, rules);
			Optional<Rule> altered = rules.chains().stream().flatMap(chain -> chain.rules().stream())
					.filter(rule -> !rules.rule(rule.name()).map(Meaning::fingerprint).equals(Optional.of(Meaning.fingerprint(rule)))).findFirst();
			Set<String> laws = rules.laws().stream().map(Meaning::text).collect(Collectors.toSet());
			Optional<Law> gone = rules.chains().stream().flatMap(chain -> chain.laws().stream()).filter(law -> !laws.contains(Meaning.text(law)))
					.findFirst();
			if (gone.isPresent()) {
				throw new PackException("The law \"" + gone.get().title() + "\" follows from a chain and is not there.");
			}
			if (altered.isPresent()) {
				throw new PackException("The rule " + altered.get().name() + " says something else than follows from its chain.");
			}
			if (!manifest.version().isOlder() && !Arrays.equals(entries.get(Archive.RULES), CanonicalJson.bytes(RulesForm.write(rules)))) {
				throw new PackException("rules.json says something else than follows from its rules:"
						+ " a meaning, a reach, a resolved band or a stale mark is wrong.");
			}
			return true;
		});
	}

	/** What the manifest says of peer review follows from the rules, and whether the sign-off is met from the flaws that it holds. */
	private static void requireAgreed(PackManifest manifest, RuleBase rules) throws PackException {
		boolean met = manifest.flaws().stream().noneMatch(flaw -> Checks.isOfSignOff(flaw.check())
				&& !flaw.at().map(at -> Span.isElsewhere(at.substring(0, at.lastIndexOf(':')))).orElse(false));
		if (!manifest.signOff().equals(AgreedForm.signOff(rules, met))) {
			throw new PackException("The manifest says something else of the sign-off than the rules and the flaws.");
		}
		// a pack that was made before says nothing of it
		boolean says = manifest.signOff().isPresent() || !manifest.reviewed().isEmpty();
		if (says && !manifest.reviewed().equals(AgreedForm.reviewed(rules))) {
			throw new PackException("The manifest says something else of who agreed with what than the rules.");
		}
	}

	private void sheet(PackManifest manifest, RuleBase rules, Map<String, byte[]> entries) {
		if (!manifest.tool().equals(ToolVersion.CURRENT) || !manifest.version().equals(FormatVersion.CURRENT)) {
			results.add(new Result(Aspect.SHEET, Outcome.OPEN,
					"Not compared with the rules: it was made by Baywright " + manifest.tool() + ", in format version "
							+ manifest.version() + "."));
			return;
		}
		look(Aspect.SHEET, "The sheet says what the rules say.", () -> {
			if (!Arrays.equals(entries.get(Archive.SHEET), Sheet.of(rules, manifest, Pictures.among(entries)))) {
				throw new PackException("rules.html says something else than the rules.");
			}
			return true;
		});
	}
}
