package org.baywright.presenter.plan;

import java.util.ArrayList;
import java.util.List;

/** Writes the tree of a plan as lines: steps are numbered, their results have letters. */
public final class PlanText {

	private static final int LETTERS = 26;

	private final List<Line> lines = new ArrayList<>();
	private int steps;

	private PlanText() {
	}

	/**
	 * A place of the tree.
	 *
	 * @param depth how many steps come before it, from 0
	 * @param number of the result that leads there: "1a"; the empty text for the first place
	 * @param result what was found, with its share: "below 12.0 V, 34 of 100"; the empty text for the first place
	 * @param what what to do, with the number of the step: "2. Load test (10 min)"; or how it ends
	 * @param step whether something is done
	 */
	public record Line(int depth, String number, String result, String what, boolean step) {

		@Override
		public String toString() {
			return (number.isEmpty() ? "" : number + " " + result + ": ") + what;
		}
	}

	/** Returns a line for each place from one on. */
	public static List<Line> of(Twig first) {
		PlanText text = new PlanText();
		text.add(first, 0, "");
		return text.lines;
	}

	private void add(Twig twig, int depth, String number) {
		boolean step = twig.kind() == Twig.Kind.STEP;
		int own = step ? ++steps : 0;
		String detail = twig.detail().isEmpty() || twig.kind() == Twig.Kind.CONFIRMED ? "" : " (" + twig.detail() + ")";
		boolean goesNoFurther = twig.after().size() == 1 && twig.after().get(0).kind() == Twig.Kind.MORE;
		lines.add(new Line(depth, number, number.isEmpty() ? "" : twig.leads(), (step ? own + ". " : "") + twig.title() + detail + (goesNoFurther ? " …" : ""), step));
		for (int i = 0; i < twig.after().size() && !goesNoFurther; i++) {
			add(twig.after().get(i), depth + 1, own + letter(i));
		}
	}

	private static String letter(int number) {
		return (number < LETTERS ? "" : letter(number / LETTERS - 1)) + (char) ('a' + number % LETTERS);
	}
}
