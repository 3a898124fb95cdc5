package org.baywright.presenter.bench;

import java.util.Collections;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

import org.baywright.model.Reading;

/**
 * How far a repair is.
 *
 * @param steps numbers of the steps that are done, from 0
 * @param told numbers of the notices that were given, from 0
 * @param checks numbers of the steps of the verification that are done and at which nothing is read, from 0
 * @param read what was read in the verification
 */
public record Progress(SortedSet<Integer> steps, SortedSet<Integer> told, SortedSet<Integer> checks, SortedMap<At, Reading> read) {

	/** What can be ticked. */
	public enum Tick {
		/** A step of the repair. */
		STEP,
		/** Somebody who had to be told something. */
		TOLD,
		/** A step of the verification at which nothing is read. */
		CHECK
	}

	/** Nothing is done yet. */
	public static final Progress NONE = new Progress(new TreeSet<>(), new TreeSet<>(), new TreeSet<>(), new TreeMap<>());

	public Progress {
		steps = Collections.unmodifiableSortedSet(new TreeSet<>(steps));
		told = Collections.unmodifiableSortedSet(new TreeSet<>(told));
		checks = Collections.unmodifiableSortedSet(new TreeSet<>(checks));
		read = Collections.unmodifiableSortedMap(new TreeMap<>(read));
	}

	/** Returns whether something is ticked. */
	boolean isTicked(Tick what, int number) {
		return of(what).contains(number);
	}

	private Set<Integer> of(Tick what) {
		return switch (what) {
		case STEP -> steps;
		case TOLD -> told;
		case CHECK -> checks;
		};
	}

	/** Ticks something, or takes the tick away. */
	Progress tick(Tick what, int number) {
		SortedSet<Integer> turned = new TreeSet<>(of(what));
		if (!turned.remove(number)) {
			turned.add(number);
		}
		return switch (what) {
		case STEP -> new Progress(turned, told, checks, read);
		case TOLD -> new Progress(steps, turned, checks, read);
		case CHECK -> new Progress(steps, told, turned, read);
		};
	}

	/** Notes what was read. */
	Progress read(At at, Reading reading) {
		SortedMap<At, Reading> more = new TreeMap<>(read);
		more.put(at, reading);
		return new Progress(steps, told, checks, more);
	}

	/** Takes away what was read. */
	Progress unread(At at) {
		SortedMap<At, Reading> less = new TreeMap<>(read);
		less.remove(at);
		return new Progress(steps, told, checks, less);
	}
}
