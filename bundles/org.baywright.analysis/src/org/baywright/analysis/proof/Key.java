package org.baywright.analysis.proof;

import java.nio.ByteBuffer;
import java.util.List;

import org.baywright.model.Meaning;

/** A fingerprint of 128 bits, taken from SHA-256: equal keys mean equal meaning. */
public record Key(long high, long low) {

	static Key of(String text) {
		ByteBuffer bytes = ByteBuffer.wrap(Meaning.sha256(text));
		return new Key(bytes.getLong(), bytes.getLong());
	}

	static Key of(List<Key> parts, String text) {
		StringBuilder all = new StringBuilder(parts.size() * 34 + text.length());
		parts.forEach(part -> all.append(Long.toHexString(part.high)).append(' ').append(Long.toHexString(part.low))
				.append(';'));
		return of(all.append(text).toString());
	}

	/** Returns this key bound to some context; much cheaper than a full fingerprint and just as reproducible. */
	Key mix(String context) {
		long a = high;
		long b = low;
		for (int i = 0; i < context.length(); i++) {
			a = (a ^ context.charAt(i)) * 0x9E3779B97F4A7C15L;
			b = (b + context.charAt(i)) * 0xC2B2AE3D27D4EB4FL;
			a ^= a >>> 29;
			b ^= b >>> 31;
		}
		return new Key(a, b);
	}

	/** Returns the key of a sequence with a context. */
	static Key sequence(List<Key> parts, String context) {
		long a = parts.size();
		long b = 1;
		for (Key part : parts) {
			a = Long.rotateLeft(a * 0x9E3779B97F4A7C15L ^ part.high, 23);
			b = Long.rotateLeft((b ^ part.low) * 0xC2B2AE3D27D4EB4FL, 27);
		}
		return new Key(a, b).mix(context);
	}
}
