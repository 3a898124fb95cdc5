package org.baywright.cli;

import org.baywright.cli.work.Progress;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;
import org.baywright.sharing.SharingListener;

import picocli.CommandLine.Option;

/** Which copy of a shared project a command works with. */
final class CopyOption {

	@Option(names = "--in", paramLabel = "FOLDER", defaultValue = ".", description = "The folder of your copy. Default: this folder.")
	private String folder = ".";

	SharedProject open(Session session) throws SharingException {
		return SharedProject.open(session.resolve(folder), listener(session));
	}

	/** Returns what shows how far a step is, on a terminal, and stops it with Ctrl+C. */
	static SharingListener listener(Session session) {
		Progress progress = session.progress(false);
		return new SharingListener() {
			@Override
			public void doing(String what) {
				progress.phase(what);
				progress.end();
			}

			@Override
			public boolean isCancelled() {
				return session.cancelled().get();
			}
		};
	}
}
