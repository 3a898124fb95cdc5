package org.baywright.workbench.wizard;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

import org.baywright.language.workspace.RuleProject;
import org.baywright.workbench.Baywright;

/** The example projects that come with the workbench. */
public final class Examples {

	/**
	 * An example project.
	 *
	 * @param id its name and that of its folder
	 * @param title what it is about, in a line
	 * @param about what can be learnt from it
	 * @param opens the file to open first
	 */
	public record Example(String id, String title, String about, String opens) {
	}

	/** All of them. */
	public static final List<Example> ALL = List.of(
			new Example("first-walk", "The ten-minute walk: a van that sometimes will not start",
					"A small project with a contradiction to find and to mend. Help, Ten-minute walk leads through it.", "rules.bay"),
			new Example("light-van", "Light van: starting, charging, parasitic draw, low-voltage network",
					"Rules with repairs and finished jobs; cheap quick tests before expensive ones.", "rules-starting.bay"),
			new Example("electric-van", "Electric van: isolation, charging inlet, contactors",
					"Hazards, licensed work, and when to refer a job.", "rules-isolation.bay"),
			new Example("farm-tractor", "Farm tractor: hitch hydraulics, engine sensors over J1939",
					"Families that build on one another, codes by SPN and FMI.", "rules-hitch.bay"),
			new Example("trailer-socket", "Trailer socket: what unlike vehicles share",
					"A small project for others to build on.", "rules.bay"),
			new Example("service-truck", "Service truck: builds on the trailer socket",
					"Bring in the trailer socket too, which lies beside it.", "truck.bay"));

	private Examples() {
	}

	/**
	 * Returns the files of an example by path.
	 *
	 * @throws IOException if they cannot be read
	 */
	public static SortedMap<String, String> files(String id) throws IOException {
		SortedMap<String, String> files = new TreeMap<>();
		read(id, "*.bay").forEach((path, content) -> files.put(path, new String(content, StandardCharsets.UTF_8)));
		if (files.isEmpty()) {
			throw new IOException("The example " + id + " is missing from this installation.");
		}
		return files;
	}

	/**
	 * Returns the pictures that an example shows, by path.
	 *
	 * @throws IOException if they cannot be read
	 */
	public static SortedMap<String, byte[]> pictures(String id) throws IOException {
		SortedMap<String, byte[]> pictures = read(id, "*");
		pictures.keySet().removeIf(path -> !RuleProject.isPicture(path));
		return pictures;
	}

	private static SortedMap<String, byte[]> read(String id, String pattern) throws IOException {
		SortedMap<String, byte[]> files = new TreeMap<>();
		String folder = "/examples/" + id + "/";
		Enumeration<URL> found = Baywright.instance().getBundle().findEntries(folder, pattern, true);
		for (URL url : found == null ? List.<URL>of() : Collections.list(found)) {
			String path = url.getPath().substring(url.getPath().indexOf(folder) + folder.length());
			if (!path.endsWith("/")) {
				try (InputStream in = url.openStream()) {
					files.put(path, in.readAllBytes());
				}
			}
		}
		return files;
	}
}
