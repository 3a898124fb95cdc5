package org.baywright.language.workspace;

import com.google.inject.Injector;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.baywright.language.index.Ways;
import org.baywright.language.workspace.Ground.Found;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;
import org.baywright.model.write.RuleWriter;
import org.baywright.pack.Pack;
import org.baywright.pack.PackReader;
import org.baywright.pack.manifest.PackException;

/**
 * The projects and rule packs that a project builds on, directly or over others, each read once. Only what lies on the
 * disk is read, and only to be read. Guarded by the lock of the project that all is read for.
 */
final class Grounds {

	/** Nobody keeps as many files in a project of rules; who named a folder of something else need not wait for the end of it. */
	private static final int MOST_FILES = 20_000;
	private static final int MOST_DEEP = 50;
	private static final String ADVICE = "Write the way from this project's folder, with forward slashes: a project's folder such as"
			+ " \"../other\", or a rule pack such as \"../other" + Span.PACK + "\".";
	private static final Pattern SCHEME = Pattern.compile("[A-Za-z][A-Za-z0-9+.-]*:.*", Pattern.DOTALL);

	private final Injector injector;
	private final Map<Path, Found> read = new HashMap<>();
	private final SortedMap<Path, String> stamps = new TreeMap<>();
	/** Those of which is just being found out what they say, each built on by the one before. */
	private final Set<Path> open = new LinkedHashSet<>();

	Grounds(Injector injector) {
		this.injector = injector;
	}

	/** Begins to find out what the project of a folder says. */
	void begin(Path folder) {
		open.add(folder);
	}

	void end(Path folder) {
		open.remove(folder);
	}

	/** Returns what a path leads to from the folder of a project. */
	Found find(Path folder, String written) {
		String shown = "`" + written + "`";
		if (written.isBlank()) {
			return Found.wrong(Optional.empty(), ProblemKind.BUILDS_ON_MISSING, "The path says nothing.", ADVICE);
		}
		if (written.startsWith("/") || written.indexOf('\\') >= 0 || SCHEME.matcher(written).matches()) {
			return Found.wrong(Optional.empty(), ProblemKind.BUILDS_ON_MISSING,
					shown + " is no way from this project's folder, so it would lead elsewhere on another machine.", ADVICE);
		}
		Path path;
		try {
			path = folder.resolve(written).normalize();
		} catch (InvalidPathException e) {
			return Found.wrong(Optional.empty(), ProblemKind.BUILDS_ON_MISSING, shown + " is no path.", ADVICE);
		}
		if (path.equals(folder)) {
			return itself(path, shown + " is this project itself.");
		}
		Path real;
		try {
			real = path.toRealPath();
		} catch (NoSuchFileException e) {
			stamps.put(path, "");
			return Found.wrong(Optional.of(path), ProblemKind.BUILDS_ON_MISSING, "There is no folder and no rule pack " + shown + ".", ADVICE);
		} catch (IOException e) {
			return Found.wrong(Optional.of(path), ProblemKind.BUILDS_ON_UNREADABLE, shown + " cannot be read.",
					"Check whether you may read it, and where its links lead.");
		}
		return real.getFileSystem() == folder.getFileSystem() ? read(folder, path, real, shown) : Found.wrong(Optional.of(path),
				ProblemKind.BUILDS_ON_MISSING, shown + " does not lie on the disk.", ADVICE);
	}

	private Found read(Path folder, Path path, Path real, String shown) {
		boolean isFolder = Files.isDirectory(real);
		if (real.equals(folder)) {
			return itself(path, shown + " is this project itself.");
		} else if (folder.startsWith(real)) {
			return itself(path, shown + " is a folder in which this project lies.");
		} else if (isFolder && real.startsWith(folder)) {
			return itself(path, shown + " lies in this project, so its files belong to it already.");
		} else if (!isFolder && !Files.isRegularFile(real)) {
			return Found.wrong(Optional.of(path), ProblemKind.BUILDS_ON_UNREADABLE, shown + " is a pipe or a device, and is not read.", ADVICE);
		} else if (!isFolder && !real.getFileName().toString().endsWith(Span.PACK)) {
			return Found.wrong(Optional.of(path), ProblemKind.BUILDS_ON_MISSING, shown + " is neither a folder nor a rule pack.", ADVICE);
		} else if (open.contains(real)) {
			return new Found(Optional.of(real), Optional.empty(),
					itself(path, shown + " builds on this project in turn: " + names(circle(real)) + ".").wrong());
		}
		// before it is read, so that what changes meanwhile is read again
		stamps.computeIfAbsent(real, Grounds::stamp);
		if (open.size() > MOST_DEEP) {
			return Found.wrong(Optional.of(path), ProblemKind.BUILDS_ON_UNREADABLE, shown + " is not read: more than " + MOST_DEEP
					+ " projects in a row build on each other.", "Let each name what it needs itself.");
		}
		return read.computeIfAbsent(real, there -> isFolder ? folder(there, shown) : pack(there, shown));
	}

	private static Found itself(Path path, String message) {
		return Found.wrong(Optional.of(path), ProblemKind.BUILDS_ON_ITSELF, message, "Take it out, or move what both need to a project of its own.");
	}

	private List<Path> circle(Path end) {
		List<Path> way = new ArrayList<>(open);
		List<Path> circle = new ArrayList<>(way.subList(way.indexOf(end), way.size()));
		circle.add(end);
		// told from the one that it is told in
		Collections.rotate(circle.subList(0, circle.size() - 1), 1);
		circle.set(circle.size() - 1, circle.get(0));
		return circle;
	}

	static String names(List<Path> way) {
		return String.join(" \u2192 ", way.stream().map(Path::getFileName).map(Path::toString).toList());
	}

	private Found folder(Path real, String shown) {
		try {
			RuleProject project = RuleProject.beneath(real, injector, this, MOST_FILES);
			return project.files().isEmpty() ? Found.wrong(Optional.of(real), ProblemKind.BUILDS_ON_MISSING,
					"There are no rule files (*.bay) in " + shown + ".", ADVICE) : new Found(Optional.of(real), Optional.of(project), Optional.empty());
		} catch (ProjectFiles.TooMany e) {
			return Found.wrong(Optional.of(real), ProblemKind.BUILDS_ON_UNREADABLE, shown + " holds more than " + MOST_FILES
					+ " files and folders, which no project of rules does.", "Name the folder of the rules itself.");
		} catch (IOException e) {
			return Found.wrong(Optional.of(real), ProblemKind.BUILDS_ON_UNREADABLE, "The folder " + shown + " cannot be read.",
					"Check whether you may read it.");
		}
	}

	/** A pack is read as the text of its rules, which is a file like any other that is only read. */
	private Found pack(Path real, String shown) {
		try {
			Pack pack = PackReader.read(real);
			String text = new RuleWriter(pack.rules()).all();
			RuleProject project = RuleProject.ofPack(pack.manifest().project(), real, text, injector, this);
			if (!project.said().fingerprint().equals(Taken.now(pack.rules()).fingerprint())) {
				return unreadable(real, "The rule pack " + shown + " says something that no text of rules can say.");
			}
			return new Found(Optional.of(real), Optional.of(project), Optional.empty());
		} catch (PackException e) {
			return unreadable(real, "The rule pack " + shown + " cannot be read: " + e.getMessage());
		} catch (IOException e) {
			return unreadable(real, "The rule pack " + shown + " cannot be read.");
		} catch (IllegalArgumentException | ClassCastException e) {
			return unreadable(real, "The rule pack " + shown + " says something that no text of rules can say.");
		}
	}

	private static Found unreadable(Path real, String message) {
		return Found.wrong(Optional.of(real), ProblemKind.BUILDS_ON_UNREADABLE, message, "Copy it again from where it is whole, or ask for one that this version of Baywright can read.");
	}

	/** Returns the way over those that each builds on from a folder to another one, both included; empty if there is none. */
	List<Path> way(Path from, Path to) {
		return Ways.between(from, to, each -> project(each).map(RuleProject::builtOn).orElse(Set.of()));
	}

	/** Returns the project that was read from a folder or a rule pack, if one was. */
	Optional<RuleProject> project(Path real) {
		return Optional.ofNullable(read.get(real)).flatMap(Found::project);
	}

	/** Forgets what has changed on the disk; returns whether anything has. */
	boolean forgetChanged() {
		boolean changed = false;
		for (Map.Entry<Path, String> entry : stamps.entrySet()) {
			String now = stamp(entry.getKey());
			if (!now.equals(entry.getValue())) {
				entry.setValue(now);
				changed = true;
			}
		}
		if (changed) {
			read.clear();
		}
		return changed;
	}

	/** Forgets what a project does not build on any more, so that a path half typed leaves nothing behind. */
	void forgetBut(RuleProject whose) {
		if (open.isEmpty()) {
			Set<Path> reached = new HashSet<>();
			reach(whose, reached);
			stamps.keySet().retainAll(reached);
			read.keySet().retainAll(reached);
		}
	}

	private void reach(RuleProject project, Set<Path> reached) {
		for (Path next : project.builtOn()) {
			if (reached.add(next)) {
				project(next).ifPresent(there -> reach(there, reached));
			}
		}
	}

	/** Returns what was known of each path when it was read. */
	SortedMap<Path, String> stamps() {
		return new TreeMap<>(stamps);
	}

	/** Looks at a folder or a file as it is now; the empty text stands for one that is not there or cannot be read. */
	static String stamp(Path path) {
		try {
			return Files.isDirectory(path) ? FileStamps.of(path, MOST_FILES).toString() : FileStamps.ofFile(path);
		} catch (IOException e) {
			return "";
		}
	}
}
