package org.baywright.language.workspace;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.BuildsOn;
import org.baywright.language.workspace.Ground.Found;
import org.baywright.model.BuiltOn;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Severity;
import org.baywright.model.Span;

/** What a project takes over from those that it builds on, and what is wrong about that. */
final class TakenOver {

	static final TakenOver NOTHING = new TakenOver(Path.of(""));

	private static final Found NO_FOLDER = Found.wrong(Optional.empty(), ProblemKind.BUILDS_ON_MISSING,
			"This text lies in no folder, so nothing lies beside it.", "Save it into the folder of a project first.");

	private final Path folder;
	private final List<Ground> grounds = new ArrayList<>();
	private final List<Problem> problems = new ArrayList<>();
	private final List<BuiltOn> builtOn = new ArrayList<>();
	private final SortedMap<String, String> texts = new TreeMap<>();
	/** Which of those that are built on brings a file, by the file. */
	private final Map<String, Ground> from = new HashMap<>();
	/** What is told of a file there. */
	private final Set<String> toldThere = new HashSet<>();
	private final Set<Path> targets = new LinkedHashSet<>();

	private TakenOver(Path folder) {
		this.folder = folder;
	}

	/**
	 * Finds and reads all that a project builds on.
	 *
	 * @param folder the project's folder, if it lies in one
	 * @param files its own files
	 * @param all what was read already
	 */
	static TakenOver by(Optional<Path> folder, Collection<ParsedFile> files, Grounds all) {
		if (files.stream().allMatch(file -> file.buildsOn().isEmpty())) {
			return NOTHING;
		}
		TakenOver taken = new TakenOver(folder.map(TakenOver::real).orElse(Path.of("")));
		all.begin(taken.folder);
		try {
			for (ParsedFile file : files) {
				for (BuildsOn element : file.buildsOn()) {
					Span path = file.source().span(element, BayPackage.Literals.BUILDS_ON__PATH);
					Span whole = file.source().span(element);
					int behind = path.offset() + path.length();
					Ground ground = new Ground(element.getPath(), List.copyOf(element.getTaken()), path, whole,
							file.source().span(behind, whole.offset() + whole.length() - behind), folder.isEmpty() ? NO_FOLDER : all.find(taken.folder, element.getPath()));
					taken.grounds.add(ground);
					taken.take(ground, all);
				}
			}
		} finally {
			all.end(taken.folder);
		}
		return taken;
	}

	static Path real(Path folder) {
		try {
			return folder.toRealPath();
		} catch (IOException e) {
			return folder; // it is not there yet, so nothing is named by another way
		}
	}

	private void take(Ground ground, Grounds all) {
		Found found = ground.found();
		found.path().ifPresent(targets::add);
		if (found.project().isEmpty()) {
			found.wrong().ifPresent(wrong -> problems.add(new Problem(wrong.kind(), ground.span(), wrong.message(), wrong.advice())));
			return;
		}
		RuleProject project = found.project().get();
		Path there = project.root().orElseThrow();
		Snapshot snapshot = project.snapshot();
		for (Map.Entry<String, String> entry : snapshot.sources().entrySet()) {
			String file = here(there, entry.getKey());
			if (Span.isElsewhere(file)) { // what lies in this project is read with it
				texts.put(file, entry.getValue());
				from.putIfAbsent(file, ground);
			}
		}
		snapshot.problems().forEach(problem -> toldThere.add(key(here(there, problem.span().file()), problem)));
		builtOn.add(new BuiltOn(ProjectFiles.relative(folder, found.path().orElseThrow()),
				project.said().fingerprint(), snapshot.rules(), ground.element()));
		List<Path> circle = all.way(found.path().orElseThrow(), folder);
		List<Problem> errors = snapshot.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).toList();
		if (!circle.isEmpty()) {
			List<Path> way = new ArrayList<>(List.of(folder));
			way.addAll(circle);
			problems.add(new Problem(ProblemKind.BUILDS_ON_ITSELF, ground.span(), "`" + ground.written() + "` builds on this project in turn: "
					+ Grounds.names(way) + ".", "Take it out, or move what both need to a project of its own."));
		} else if (!errors.isEmpty()) {
			problems.add(errors(ground, errors, there));
		} else {
			Taken.judge(ground, project.said()).ifPresent(problems::add);
		}
	}

	private Problem errors(Ground ground, List<Problem> errors, Path there) {
		Problem first = errors.get(0);
		Span span = first.span();
		return new Problem(ProblemKind.BUILDS_ON_ERRORS, ground.span(),
				"`" + ground.written() + "` has " + (errors.size() == 1 ? "an error" : errors.size() + " errors") + " in its text"
						+ (errors.size() == 1 ? ", in " : ", the first in ") + here(there, span.file()) + ":" + span.line() + ":" + span.column()
						+ ": " + first.message(),
				"Put it right there; what it declares is missing here until then.");
	}

	/** Returns the path of a file of another project as it is seen from this one. */
	private String here(Path there, String file) {
		return ProjectFiles.relative(folder, there.resolve(file).normalize());
	}

	private static String key(String file, Problem problem) {
		return problem.id() + " " + file + " " + problem.span().offset();
	}

	/** Returns the texts to read here too, by their path as it is seen from this project. */
	SortedMap<String, String> texts() {
		return texts;
	}

	List<BuiltOn> builtOn() {
		return builtOn;
	}

	/** Returns what is wrong where the project says what it builds on. */
	List<Problem> problems() {
		return problems;
	}

	/** Returns whether something is not there, so that nobody knows which names it would bring. */
	boolean isMissing() {
		return grounds.stream().anyMatch(ground -> ground.found().project().isEmpty());
	}

	/** Returns the folders and packs that the project names itself. */
	Set<Path> targets() {
		return targets;
	}

	/**
	 * Returns how a problem in a file of another project is told here: not at all if it is told there; at the place where
	 * that project is named if it comes of both.
	 */
	Optional<Problem> toldHere(Problem problem) {
		Span span = problem.span();
		Ground ground = from.get(span.file());
		if (ground == null || toldThere.contains(key(span.file(), problem))) {
			return Optional.empty();
		}
		return Optional.of(new Problem(problem.kind(), ground.span(),
				"Together with what is declared here, " + span + " is wrong: " + problem.message(), problem.advice()));
	}
}
