package org.baywright.language.ide.live;

/** Progress that nobody looks at. */
final class Unwatched implements Work.Progress {

	@Override
	public void done(int done, int total) {
		// nobody looks
	}

	@Override
	public boolean isCancelled() {
		return false;
	}
}
