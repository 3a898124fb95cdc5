package org.baywright.pack.manifest;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The version of the pack's format. A greater {@code minor} only adds properties, which older readers pass over; a
 * greater {@code major} changes what is there.
 */
public record FormatVersion(int major, int minor) {

	/**
	 * The version that is written. Version 2 knows what version 1 could not say; what it reads of version 1 means what it
	 * meant.
	 */
	public static final FormatVersion CURRENT = new FormatVersion(2, 0);

	private static final Pattern FORM = Pattern.compile("([1-9][0-9]{0,3})\\.(0|[1-9][0-9]{0,3})");

	/**
	 * Reads a version.
	 *
	 * @throws PackException if it is not a version, or one that cannot be read
	 */
	public static FormatVersion of(String text) throws PackException {
		Matcher form = FORM.matcher(text);
		if (!form.matches()) {
			throw new PackException("The pack's format version is not one such as 1.0.");
		}
		FormatVersion version = new FormatVersion(Integer.parseInt(form.group(1)), Integer.parseInt(form.group(2)));
		if (version.major > CURRENT.major) {
			throw new PackException("The pack has format version " + version + "; this Baywright reads versions up to "
					+ CURRENT.major + ".x. Get a newer Baywright to read it.");
		}
		return version;
	}

	/** Returns whether the version is older than the one that is written. */
	public boolean isOlder() {
		return major < CURRENT.major || major == CURRENT.major && minor < CURRENT.minor;
	}

	/** Returns whether the version may hold properties that this reader does not know. */
	public boolean isNewer() {
		return major > CURRENT.major || major == CURRENT.major && minor > CURRENT.minor;
	}

	@Override
	public String toString() {
		return major + "." + minor;
	}
}
