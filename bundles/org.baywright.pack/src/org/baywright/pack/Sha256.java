package org.baywright.pack;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The hash function of FIPS 180-4, as packs use it. */
final class Sha256 {

	private Sha256() {
	}

	/** Returns the hash in 64 hexadecimal digits, lower case. */
	static String of(byte[] bytes) {
		try {
			return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
		} catch (NoSuchAlgorithmException e) {
			throw new IllegalStateException("every Java platform must provide SHA-256", e);
		}
	}
}
