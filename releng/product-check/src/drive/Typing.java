package drive;

import java.util.stream.Collectors;

/** A rule that is typed as fast as people type, while the machine is kept busy. */
final class Typing {

	private static final String TYPED = """
			rule typed_out "Typed by hand" {
			given sometimes_dead
			run ground_drop
			expect at_most 0.3 V
			met : clears ground_strap.loose
			above : confirms ground_strap.loose
			because "It (may) be {so}."
			source practice
			by "A. Author" on 2026-03-02
			}
			part typed_part "Lamp" {
			fault dim "Dim"
			}
			""";

	private final Drive drive;
	private final Hands hands;

	Typing(Drive drive, Hands hands) {
		this.drive = drive;
		this.hands = hands;
	}

	void go() {
		drive.check("Enter takes what a list offers that was asked for while it was open", () -> {
			String before = hands.see(drive::editorText);
			hands.click(drive.editor());
			hands.key("ctrl+End", "Return");
			hands.type("part", 90);
			hands.rest(1500);
			hands.key("ctrl+space");
			hands.rest(700);
			hands.picture("asked-for");
			hands.key("Return");
			hands.until("a part to fill in", () -> drive.editorText().contains("part name \""));
			hands.key("Escape");
			for (int i = 0; i < 40 && !hands.see(drive::editorText).equals(before); i++) {
				hands.key("ctrl+z");
			}
			hands.until("all of it is undone", () -> drive.editorText().equals(before));
		});
		for (int delay : new int[] { 1, 12, 45, 80 }) {
			drive.check("a rule typed letter by letter, one each " + delay + " ms, on a busy machine, stands as it was typed", () -> {
				try (Busy busy = new Busy()) {
					typed(delay);
				}
			});
		}
	}

	/** Whatever lists open and whatever is closed by itself: the words are those that were typed. */
	private void typed(int delay) {
		String before = hands.see(drive::editorText);
		hands.click(drive.editor());
		hands.key("ctrl+End", "Return");
		// in one go: Enter comes in the same rhythm
		hands.typeLines(TYPED, delay);
		hands.rest(500);
		hands.key("Escape");
		String after = hands.see(drive::editorText);
		String got = lines(after.substring(Math.min(before.length(), after.length())));
		String wanted = lines(TYPED);
		for (int i = 0; i < 400 && !hands.see(drive::editorText).equals(before); i++) {
			hands.key("ctrl+z");
		}
		if (!got.equals(wanted)) {
			throw new AssertionError("typed: " + wanted + " but there stands: " + got);
		}
		hands.until("all of it is undone", () -> drive.editorText().equals(before));
	}

	/** The lines as they were typed, whatever is put before them by itself. */
	private static String lines(String text) {
		return text.lines().map(line -> line.strip().replaceAll("\\s+", " ")).filter(line -> !line.isEmpty()).collect(Collectors.joining("\n"));
	}

	/** More work than the machine has hands for. */
	private static final class Busy implements AutoCloseable {

		private volatile boolean over;

		Busy() {
			for (int i = 0; i < 2 * Runtime.getRuntime().availableProcessors(); i++) {
				Thread thread = new Thread(() -> {
					while (!over) {
						Thread.onSpinWait();
					}
				}, "busy");
				thread.setDaemon(true);
				thread.start();
			}
		}

		@Override
		public void close() {
			over = true;
		}
	}
}
