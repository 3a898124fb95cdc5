package org.baywright.cli.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;

import org.baywright.language.workspace.FileStamps;

/** The rule files of projects as they were at one moment: names, sizes and times. */
public final class Watch {

	private static final long LOOK_AGAIN_MILLIS = 300;

	private final List<Path> paths;
	private final String state;

	private Watch(List<Path> paths) {
		this.paths = paths;
		state = state();
	}

	/** Looks at projects now. */
	public static Watch of(List<Path> paths) {
		return new Watch(paths);
	}

	/**
	 * Waits until something has changed.
	 *
	 * @param beneath the folders and rule packs that the projects build on, each as it was when it was read
	 * @throws java.util.concurrent.CancellationException if the user wants to stop
	 */
	public void awaitChange(SortedMap<Path, String> beneath, Progress progress) throws InterruptedException {
		while (state.equals(state()) && beneath.entrySet().stream().allMatch(entry -> FileStamps.ofBuiltOn(entry.getKey()).equals(entry.getValue()))) {
			progress.requireWanted();
			Thread.sleep(LOOK_AGAIN_MILLIS);
		}
	}

	private String state() {
		List<String> files = new ArrayList<>();
		for (Path path : paths) {
			try {
				if (Files.isDirectory(path)) {
					files.add(path + " " + FileStamps.of(path));
				} else {
					files.add(path + " " + FileStamps.ofFile(path));
				}
			} catch (IOException e) {
				files.add(path + " " + e.getMessage());
			}
		}
		return String.join("\n", files);
	}
}
