package org.baywright.model;

/** What the status that a module keeps for each code says. */
public final class CodeStatus {

	private static final int TEST_FAILED = 0x01;
	private static final int PENDING = 0x04;
	private static final int CONFIRMED = 0x08;
	private static final int NOT_COMPLETED_SINCE_CLEAR = 0x10;

	private CodeStatus() {
	}

	/**
	 * Returns what the status byte of a code says (ISO 14229-1, "DTC status bit definitions"). The bits, from 0: test
	 * failed, test failed this operation cycle, pending, confirmed, test not completed since last clear, test failed since
	 * last clear, test not completed this operation cycle, warning indicator requested.
	 *
	 * @param status the byte, 0 to 255
	 * @return active, stored, pending, untested or absent
	 * @throws IllegalArgumentException if it is no byte
	 */
	public static CodeReading ofByte(int status) {
		if (status < 0 || status > 0xFF) {
			throw new IllegalArgumentException("not a byte: " + status);
		}
		if ((status & TEST_FAILED) != 0) {
			return CodeReading.ACTIVE;
		} else if ((status & CONFIRMED) != 0) {
			return CodeReading.STORED;
		} else if ((status & PENDING) != 0) {
			return CodeReading.PENDING;
		}
		return (status & NOT_COMPLETED_SINCE_CLEAR) != 0 ? CodeReading.UNTESTED : CodeReading.ABSENT;
	}
}
