package org.baywright.pack;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;


import org.baywright.model.PictureFile;
import org.baywright.pack.manifest.PackException;

/** The zip archive of a pack: the same entries in the same order, and behind them the pictures by name; all stored as they are. */
final class Archive {

	static final String MANIFEST = "manifest.json";
	static final String RULES = "rules.json";
	static final String SHEET = "rules.html";

	/** The entries in the order in which they are stored. */
	static final List<String> ENTRIES = List.of(MANIFEST, RULES, SHEET);

	/** A pack of 100,000 rules stays far below this; more is an attack or a mistake. */
	static final long MAX_BYTES = 1L << 27;

	private static final int END_MARK = 'P' | 'K' << 8 | 5 << 16 | 6 << 24;
	private static final int END_LENGTH = 22;

	/**
	 * Any fixed time would do. The first moment that the archive format knows would not: Java marks it by an extra field.
	 */
	private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 2, 1, 0, 0);

	private Archive() {
	}

	/** Returns the archive. Its bytes depend on the entries only: compressors differ from machine to machine. */
	static byte[] write(Map<String, byte[]> entries) {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
			List<String> names = new ArrayList<>(ENTRIES);
			names.addAll(Pictures.among(entries).keySet());
			for (String name : names) {
				byte[] content = entries.get(name);
				CRC32 checksum = new CRC32();
				checksum.update(content);
				ZipEntry entry = new ZipEntry(name);
				entry.setMethod(ZipEntry.STORED);
				entry.setSize(content.length);
				entry.setCompressedSize(content.length);
				entry.setCrc(checksum.getValue());
				entry.setTimeLocal(NO_TIME);
				zip.putNextEntry(entry);
				zip.write(content);
				zip.closeEntry();
			}
		} catch (IOException e) {
			throw new UncheckedIOException("memory cannot fail to be written", e);
		}
		return bytes.toByteArray();
	}

	/**
	 * Reads the entries. Nothing is ever unpacked to a disk, so that no name of an entry can do harm.
	 *
	 * @throws PackException if an entry is missing, is there twice, does not belong there or is far too large
	 */
	static Map<String, byte[]> read(byte[] archive) throws PackException {
		return read(archive, MAX_BYTES);
	}

	static Map<String, byte[]> read(byte[] archive, long maxBytes) throws PackException {
		if (archive.length < 4 || archive[0] != 'P' || archive[1] != 'K') {
			throw new PackException("The file is not a rule pack: a pack is a zip archive.");
		}
		if (!hasEnd(archive)) {
			throw new PackException("The pack is cut short: the end of the archive is missing. Copy it again.");
		}
		Map<String, byte[]> entries = new TreeMap<>();
		try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
			long left = maxBytes;
			for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
				String name = entry.getName();
				if (!ENTRIES.contains(name) && PictureFile.ofName(name).isPresent()) {
					throw new PackException("The pack holds an entry that does not belong there: " + shown(name) + ".");
				}
				byte[] content = read(zip, name, left);
				left -= content.length;
				if (entries.put(name, content) != null) {
					throw new PackException("The pack holds " + name + " twice.");
				}
			}
		} catch (IOException | IllegalArgumentException e) {
			throw new PackException("The pack is damaged: it cannot be unpacked.", e);
		}
		for (String name : ENTRIES) {
			if (!entries.containsKey(name)) {
				throw new PackException("The pack lacks " + name + "; it is damaged or no rule pack.");
			}
		}
		return entries;
	}

	/** The record at the end of a zip archive says how long the list of entries before it is (PKWARE APPNOTE 4.3.16). */
	private static boolean hasEnd(byte[] archive) {
		ByteBuffer bytes = ByteBuffer.wrap(archive).order(ByteOrder.LITTLE_ENDIAN);
		for (int at = archive.length - END_LENGTH; at >= 0; at--) {
			if (archive[at] == 'P' && bytes.getInt(at) == END_MARK) {
				long list = Integer.toUnsignedLong(bytes.getInt(at + 12)) + Integer.toUnsignedLong(bytes.getInt(at + 16));
				if (list == at) {
					return true;
				}
			}
		}
		return false;
	}

	private static byte[] read(ZipInputStream zip, String name, long left) throws IOException, PackException {
		ByteArrayOutputStream content = new ByteArrayOutputStream();
		byte[] buffer = new byte[1 << 16];
		for (int count = zip.read(buffer); count >= 0; count = zip.read(buffer)) {
			left -= count;
			if (left < 0) {
				throw new PackException(name + " is larger than any rule pack needs; it is not unpacked.");
			}
			content.write(buffer, 0, count);
		}
		return content.toByteArray();
	}

	private static String shown(String name) {
		String cut = name.length() > 80 ? name.substring(0, 80) + "…" : name;
		return cut.codePoints().map(c -> Character.isISOControl(c) ? '?' : c)
				.collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
	}
}
