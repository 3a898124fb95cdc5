package org.baywright.cli.work;

import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;

import org.baywright.analysis.Listener;
import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;

/** Shows how far long work is, and passes on the wish to stop. May be called from several threads. */
public final class Progress implements Listener {

	private static final long PAUSE_NANOS = 100_000_000;
	private static final String CLEAR = "\r\u001B[K";

	private enum Form {
		SILENT, LINE, LIST
	}

	private final Form form;
	private final Output out;
	private final AtomicBoolean cancelled;
	private String phase = "";
	private boolean shown;
	private long lastShown;
	private int lastTenth = -1;

	private Progress(Form form, Output out, AtomicBoolean cancelled) {
		this.form = form;
		this.out = out;
		this.cancelled = cancelled;
	}

	/** Shows nothing. */
	public static Progress silent(AtomicBoolean cancelled) {
		return new Progress(Form.SILENT, null, cancelled);
	}

	/** Keeps one line of a terminal up to date. */
	public static Progress line(Output out, AtomicBoolean cancelled) {
		return new Progress(Form.LINE, out, cancelled);
	}

	/** Writes a new line for each phase and each tenth of it. */
	public static Progress list(Output out, AtomicBoolean cancelled) {
		return new Progress(Form.LIST, out, cancelled);
	}

	/** Begins a phase, such as "Reading van". */
	public synchronized void phase(String name) {
		requireWanted();
		phase = Style.safe(name);
		lastTenth = -1;
		lastShown = 0;
		if (form == Form.LINE) {
			show(phase + " …");
		}
	}

	@Override
	public synchronized void progress(int done, int total) {
		if (form == Form.SILENT || total == 0) {
			return;
		}
		String text = phase + ": " + done + " of " + total;
		int tenth = (int) (10L * done / total);
		if (form == Form.LINE && (done == total || System.nanoTime() - lastShown >= PAUSE_NANOS)) {
			lastShown = System.nanoTime();
			show(text);
		} else if (form == Form.LIST && tenth != lastTenth) {
			lastTenth = tenth;
			out.println(text);
			out.flush();
		}
	}

	private void show(String text) {
		shown = true;
		out.print(CLEAR + text);
		out.flush();
	}

	/** Takes the progress line away, so that results can be written. */
	public synchronized void end() {
		if (shown) {
			shown = false;
			out.print(CLEAR);
			out.flush();
		}
	}

	@Override
	public boolean isCancelled() {
		return cancelled.get();
	}

	/** @throws CancellationException if the user wants to stop */
	public void requireWanted() {
		if (isCancelled()) {
			throw new CancellationException();
		}
	}
}
