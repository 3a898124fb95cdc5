package org.baywright.language.ide.live;

import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/** Looks now and then whether what live projects build on has changed on the disk, wherever that lies. */
final class Lookout {

	private static final long LOOK_AGAIN_MILLIS = 1000;
	private static final Set<LiveProject> WATCHED = ConcurrentHashMap.newKeySet();
	private static final ScheduledExecutorService CLOCK = Executors.newSingleThreadScheduledExecutor(task -> {
		Thread thread = new Thread(task, "Look at what is built on");
		thread.setDaemon(true);
		return thread;
	});

	static {
		CLOCK.scheduleWithFixedDelay(Lookout::look, LOOK_AGAIN_MILLIS, LOOK_AGAIN_MILLIS, TimeUnit.MILLISECONDS);
	}

	private Lookout() {
	}

	static void begin(LiveProject project) {
		WATCHED.add(project);
	}

	static void end(LiveProject project) {
		WATCHED.remove(project);
	}

	private static void look() {
		for (LiveProject project : WATCHED) {
			try {
				project.lookBeneath();
			} catch (RuntimeException e) {
				// a folder that goes while it is looked at; the next look sees that it is gone
			}
		}
	}
}
