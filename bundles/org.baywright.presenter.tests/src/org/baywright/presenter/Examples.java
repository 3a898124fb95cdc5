package org.baywright.presenter;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.RuleBase;

/** The example projects of the product, read and checked once, and small rules given as text. */
public final class Examples {

	/** Names of the three example projects. */
	public static final List<String> ALL = List.of("electric-van", "farm-tractor", "light-van");

	private static final Map<String, ProjectState> CHECKED = new ConcurrentHashMap<>();

	private Examples() {
	}

	/** Returns an example project, or a file of {@code flawed}, with its check. */
	public static ProjectState checked(String name) {
		return CHECKED.computeIfAbsent(name, key -> check(project(key)));
	}

	/** Reads an example project, to be changed in memory. */
	public static RuleProject project(String name) {
		try {
			return RuleProject.open(folder().resolve(name));
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Returns rules given as text, with their check. */
	public static ProjectState text(String... lines) {
		RuleProject project = RuleProject.inMemory("small");
		project.update("small.bay", String.join("\n", lines) + "\n");
		return check(project);
	}

	/** Returns rules given as text that must be without problems. */
	public static RuleBase rules(String... lines) {
		ProjectState state = text(lines);
		if (!state.problems().isEmpty()) {
			throw new IllegalArgumentException(state.problems().toString());
		}
		return state.rules();
	}

	private static ProjectState check(RuleProject project) {
		Snapshot snapshot = project.snapshot();
		return new ProjectState(snapshot.rules(), snapshot.problems(), snapshot.dropped(),
				Optional.of(new Analysis().check(snapshot.rules(), Listener.NONE)), snapshot.rules(), true);
	}

	private static Path folder() {
		String root = System.getProperty("baywright.root");
		for (Path at = Path.of(root == null ? "" : root).toAbsolutePath(); at != null; at = at.getParent()) {
			if (Files.isDirectory(at.resolve("rules-examples"))) {
				return at.resolve("rules-examples");
			}
		}
		throw new IllegalStateException("no folder rules-examples above the working directory");
	}
}
