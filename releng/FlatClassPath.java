import java.io.IOException;
import java.io.InputStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;

/**
 * Copies the jars of one folder to another without their signatures. Java checks the signatures of jars on the class
 * path at each start and keeps signed classes out of its archive, which doubles the time to start.
 */
class FlatClassPath {

	public static void main(String[] args) throws IOException {
		Path target = Files.createDirectories(Path.of(args[1]));
		try (DirectoryStream<Path> jars = Files.newDirectoryStream(Path.of(args[0]), "*.jar")) {
			for (Path jar : jars) {
				copy(jar, target.resolve(jar.getFileName()));
			}
		}
	}

	private static void copy(Path source, Path target) throws IOException {
		try (JarFile from = new JarFile(source.toFile(), false)) {
			if (from.stream().noneMatch(FlatClassPath::isSignature)) {
				Files.copy(source, target);
				return;
			}
			Manifest manifest = new Manifest();
			manifest.getMainAttributes().putAll(from.getManifest().getMainAttributes());
			from.getManifest().getEntries().forEach((name, attributes) -> {
				Attributes kept = new Attributes(attributes);
				kept.keySet().removeIf(key -> key.toString().endsWith("-Digest"));
				if (!kept.isEmpty()) {
					manifest.getEntries().put(name, kept);
				}
			});
			try (JarOutputStream to = new JarOutputStream(Files.newOutputStream(target), manifest)) {
				for (Enumeration<JarEntry> entries = from.entries(); entries.hasMoreElements();) {
					JarEntry entry = entries.nextElement();
					if (entry.getName().equals(JarFile.MANIFEST_NAME) || isSignature(entry)) {
						continue;
					}
					JarEntry copy = new JarEntry(entry.getName());
					copy.setTime(entry.getTime());
					to.putNextEntry(copy);
					try (InputStream content = from.getInputStream(entry)) {
						content.transferTo(to);
					}
					to.closeEntry();
				}
			}
		}
	}

	private static boolean isSignature(JarEntry entry) {
		return entry.getName().matches("META-INF/[^/]*\\.(SF|RSA|DSA|EC)");
	}
}
