import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * Says under which licences jars say that they are: java Licences.java JAR...
 *
 * One line for each jar: name and version of the part, comma, licences as SPDX writes them in alphabetical order. The
 * first of these that names one counts: manifest, about file, licence file, project file. "from memory" where none does.
 */
class Licences {

	private static final Map<String, Pattern> NAMES = new LinkedHashMap<>();

	static {
		name("Apache-1.1", "may not be called \"Apache\"");
		name("Apache-2.0", "Apache-2\\.0|apache\\.org/licenses/LICENSE-2\\.0|Apache License,?\\s+Version 2\\.0|The Apache Software License, Version 2\\.0");
		name("EPL-2.0", "EPL-2\\.0|epl-2\\.0|epl-v20|Eclipse Public License\\s*(,|-)?\\s*(Version|v\\.?)\\s*2\\.0");
		name("EPL-1.0", "EPL-1\\.0|epl-v10|Eclipse Public License\\s*(,|-)?\\s*(Version|v\\.?)\\s*1\\.0");
		name("GPL-2.0-only WITH Classpath-exception-2.0", "classpath/license\\.html");
		name("LGPL-2.1-or-later", "LGPL-?2\\.1|LGPL,? version 2\\.1|GNU Lesser General Public License\\s*(,|\\()?\\s*(Version|v\\.?)\\s*2\\.1");
		name("MIT", "\\bMIT License|opensource\\.org/licenses?/mit|licenses/MIT|>MIT<");
		name("BSD-2-Clause", "BSD[- ]2-Clause|other materials provided with the distribution\\.\\s+THIS SOFTWARE IS PROVIDED BY");
		name("BSD-3-Clause", "BSD-3-Clause|Eclipse Distribution License|edl-v10|BSD licence");
		name("Unicode-3.0", "UNICODE LICENSE V3");
		name("W3C-19990505", "W3C Software");
	}

	private static void name(String spdx, String pattern) {
		NAMES.put(spdx, Pattern.compile(pattern, Pattern.CASE_INSENSITIVE));
	}

	public static void main(String[] jars) throws IOException {
		for (String jar : jars) {
			try (ZipFile zip = new ZipFile(jar)) {
				System.out.println(Path.of(jar).getFileName().toString().replaceAll("_([^_]*)\\.jar$", " $1, ") + said(zip));
			}
		}
	}

	private static String said(ZipFile zip) throws IOException {
		Matcher manifest = Pattern.compile("(?m)^Bundle-License: *(.*)$")
				.matcher(read(zip, zip.getEntry("META-INF/MANIFEST.MF")).replaceAll("\r?\n ", ""));
		if (manifest.find() && !ids(manifest.group(1)).isEmpty()) {
			return line(ids(manifest.group(1)));
		}
		for (String file : new String[] { "about[^/]*\\.html", "(META-INF/)?LICENSE[^/]*", "META-INF/maven/.*/pom\\.xml" }) {
			TreeSet<String> found = new TreeSet<>();
			for (ZipEntry entry : zip.stream().filter(entry -> entry.getName().matches(file)).toList()) {
				String text = read(zip, entry);
				Matcher licences = Pattern.compile("(?s)<licenses>.*?</licenses>").matcher(text);
				found.addAll(entry.getName().endsWith("pom.xml") ? ids(licences.find() ? licences.group() : "") : ids(text));
			}
			if (!found.isEmpty()) {
				return line(found);
			}
		}
		return "from memory";
	}

	private static String line(TreeSet<String> ids) {
		return String.join(" or ", ids);
	}

	private static TreeSet<String> ids(String text) {
		TreeSet<String> ids = new TreeSet<>();
		NAMES.forEach((id, pattern) -> {
			if (pattern.matcher(text).find()) {
				ids.add(id);
			}
		});
		return ids;
	}

	private static String read(ZipFile zip, ZipEntry entry) throws IOException {
		try (InputStream in = zip.getInputStream(entry)) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8);
		}
	}
}
