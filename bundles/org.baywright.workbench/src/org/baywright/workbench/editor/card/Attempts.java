package org.baywright.workbench.editor.card;

import java.util.function.BooleanSupplier;

import org.eclipse.swt.widgets.Control;

/**
 * What is on its way into a card: it is done once the card is up to date, and not on another one. All methods belong to
 * the screen's thread.
 */
final class Attempts {

	/** How often something is tried again until the card is up to date, and how long that is apart, in milliseconds. */
	private static final int TRIES = 50;
	private static final int APART = 60;

	private final Control page;
	/** Counts the elements that were shown: what is on its way for one is not done on another. */
	private int visit;
	/** How much is on its way into the card. */
	private int waiting;

	Attempts(Control page) {
		this.page = page;
	}

	/** Tries something until it says that it was done. */
	void attempt(BooleanSupplier what) {
		attempt(visit, what, TRIES);
	}

	private void attempt(int of, BooleanSupplier what, int tries) {
		if (of == visit && !what.getAsBoolean() && tries > 0) {
			waiting++;
			again(() -> {
				waiting--;
				attempt(of, what, tries - 1);
			});
		}
	}

	/** Begins something that has to be asked first; returns what ends it. */
	int begin() {
		waiting++;
		return visit;
	}

	/** Ends what was begun; returns whether its element is still the one that is shown. */
	boolean end(int begun) {
		waiting--;
		return begun == visit;
	}

	/**
	 * Waits until nothing is on its way any more, and not for ever.
	 *
	 * @param flush is called before it is looked, each time
	 * @param then leads to another element; nothing is done any more on the one before
	 */
	void leave(Runnable flush, Runnable then) {
		leave(flush, then, TRIES);
	}

	private void leave(Runnable flush, Runnable then, int tries) {
		flush.run();
		if (waiting > 0 && tries > 0) {
			again(() -> leave(flush, then, tries - 1));
			return;
		}
		visit++;
		then.run();
	}

	private void again(Runnable what) {
		page.getDisplay().timerExec(APART, () -> {
			if (!page.isDisposed()) {
				what.run();
			}
		});
	}
}
