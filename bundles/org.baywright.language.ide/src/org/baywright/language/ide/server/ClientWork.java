package org.baywright.language.ide.server;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.baywright.language.ide.live.Work;
import org.eclipse.lsp4j.ProgressParams;
import org.eclipse.lsp4j.WorkDoneProgressBegin;
import org.eclipse.lsp4j.WorkDoneProgressCreateParams;
import org.eclipse.lsp4j.WorkDoneProgressEnd;
import org.eclipse.lsp4j.WorkDoneProgressNotification;
import org.eclipse.lsp4j.WorkDoneProgressReport;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.LanguageClient;

/** Work on threads that tells the client how far it is, once it takes long enough to be noticed. */
final class ClientWork implements Work {

	private static final long NOTICED_MILLIS = 500;

	private final Work threads = Work.onThreads();
	private final LanguageClient client;
	private final Supplier<Abilities> abilities;
	private final AtomicLong numbers = new AtomicLong();
	private final Map<String, Shown> running = new ConcurrentHashMap<>();

	ClientWork(LanguageClient client, Supplier<Abilities> abilities) {
		this.client = client;
		this.abilities = abilities;
	}

	@Override
	public void begin(String title, Task task) {
		threads.begin(title, progress -> {
			Shown shown = new Shown("baywright-" + numbers.incrementAndGet(), title);
			try {
				task.run(shown);
			} finally {
				shown.end();
			}
		});
	}

	/** Stops the task that a client shows under a token. */
	void cancel(String token) {
		Shown shown = running.get(token);
		if (shown != null) {
			shown.cancelled = true;
		}
	}

	private final class Shown implements Progress {

		private final String token;
		private final String title;
		private final long begun = System.nanoTime();
		private boolean created;
		private int percent = -1;
		private volatile boolean cancelled;

		Shown(String token, String title) {
			this.token = token;
			this.title = title;
		}

		@Override
		public synchronized void done(int done, int total) {
			if (!abilities.get().progress() || (System.nanoTime() - begun) / 1_000_000 < NOTICED_MILLIS) {
				return;
			}
			int now = total == 0 ? 100 : (int) (100L * done / total);
			if (!created) {
				created = true;
				running.put(token, this);
				client.createProgress(new WorkDoneProgressCreateParams(Either.forLeft(token)));
				WorkDoneProgressBegin begin = new WorkDoneProgressBegin();
				begin.setTitle(title);
				begin.setCancellable(true);
				begin.setPercentage(now);
				notify(begin);
			} else if (now != percent) {
				WorkDoneProgressReport report = new WorkDoneProgressReport();
				report.setPercentage(now);
				notify(report);
			}
			percent = now;
		}

		private void notify(WorkDoneProgressNotification what) {
			client.notifyProgress(new ProgressParams(Either.forLeft(token), Either.forLeft(what)));
		}

		@Override
		public boolean isCancelled() {
			return cancelled;
		}

		synchronized void end() {
			running.remove(token);
			if (created) {
				notify(new WorkDoneProgressEnd());
			}
		}
	}
}
