package org.baywright.model.code;

import java.util.Optional;

/**
 * A trouble code of SAE J1939-73.
 *
 * @param spn suspect parameter number, 0 to {@link #MAX_SPN}
 * @param fmi failure mode identifier, 0 to {@link #MAX_FMI}
 */
public record J1939Code(int spn, int fmi) implements CodeText {

	/** The greatest number that the 19 bits of the standard hold. */
	public static final int MAX_SPN = 524_287;

	/** The greatest number that the 5 bits of the standard hold. */
	public static final int MAX_FMI = 31;

	/** The greatest count that the 7 bits of the standard hold. */
	public static final int MAX_COUNT = 127;

	private static final int FIRST_RESERVED_FMI = 22;
	private static final int LAST_RESERVED_FMI = 30;

	/**
	 * A code as a module counts it.
	 *
	 * @param code the code
	 * @param count how often it occurred, 0 to 127; 127 also means that the count is not known
	 */
	public record Counted(J1939Code code, int count) {
	}

	@Override
	public String display() {
		return "SPN " + spn + " FMI " + fmi;
	}

	/** Returns a plain sentence on what is wrong with the numbers, or nothing if the standard can carry them. */
	public Optional<String> wrong() {
		if (spn < 0 || spn > MAX_SPN) {
			return Optional.of("An SPN is a whole number from 0 to " + MAX_SPN + "; " + spn + " is not.");
		}
		if (fmi < 0 || fmi > MAX_FMI) {
			return Optional.of("An FMI is a whole number from 0 to " + MAX_FMI + "; " + fmi + " is not.");
		}
		return Optional.empty();
	}

	/** Returns whether the standard has reserved the failure mode, so that no module should send it. */
	public boolean reserved() {
		return fmi >= FIRST_RESERVED_FMI && fmi <= LAST_RESERVED_FMI;
	}

	/**
	 * Packs the code as the four bytes of a DM1 message: 19 bits SPN, least significant byte first, 5 bits FMI,
	 * conversion method 0, 7 bits count.
	 *
	 * @param count how often it occurred, 0 to 127
	 * @throws IllegalArgumentException if a number does not fit
	 */
	public byte[] pack(int count) {
		if (wrong().isPresent() || count < 0 || count > MAX_COUNT) {
			throw new IllegalArgumentException("does not fit in four bytes: " + display() + " count " + count);
		}
		return new byte[] { (byte) spn, (byte) (spn >> 8), (byte) (spn >> 16 << 5 | fmi), (byte) count };
	}

	/**
	 * Reads the four bytes of a DM1 message.
	 *
	 * @throws IllegalArgumentException if there are not four bytes, or they use one of the older orders of the SPN
	 *             (conversion method 1), which cannot be told apart
	 */
	public static Counted unpack(byte[] bytes) {
		if (bytes.length != 4) {
			throw new IllegalArgumentException("four bytes are needed, not " + bytes.length);
		}
		if (bytes[3] < 0) {
			throw new IllegalArgumentException("conversion method 1: the order of the SPN is not known");
		}
		int spn = bytes[0] & 0xFF | (bytes[1] & 0xFF) << 8 | (bytes[2] & 0xE0) << 11;
		return new Counted(new J1939Code(spn, bytes[2] & 0x1F), bytes[3]);
	}
}
