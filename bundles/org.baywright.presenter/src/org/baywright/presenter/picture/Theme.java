package org.baywright.presenter.picture;

import java.util.EnumMap;
import java.util.Map;

/**
 * Colours of the picture, each as {@code #rrggbb}.
 *
 * @param background behind everything
 * @param text titles and details
 * @param label labels of the lines
 * @param line lines that stand for one condition, and what follows
 * @param alternative lines that stand for one of several conditions
 * @param chosen outline of the chosen node
 * @param boxes colours of the nodes
 */
public record Theme(String background, String text, String label, String line, String alternative, String chosen,
		Map<Node.Kind, Paint> boxes) {

	/** Inside and outline of a node. */
	public record Paint(String fill, String outline) {
	}

	/** Dark letters on a light ground, also for paper. */
	public static final Theme LIGHT = new Theme("#ffffff", "#1b1f24", "#444b54", "#68717c", "#8a6d1f", "#0b57c4",
			boxes("#eef2f6", "#68717c", "#fff6dc", "#8a6d1f", "#e4f0ff", "#2f5f9e", "#fbe3e1", "#a4322a", "#fdeedd", "#a05a12",
					"#e2f3e5", "#2e7040", "#efe7f6", "#6a4795"));

	/** Light letters on a dark ground. */
	public static final Theme DARK = new Theme("#1e2126", "#eceff3", "#b9c1cb", "#8c96a3", "#c9a94f", "#7fb2ff",
			boxes("#2b3038", "#8c96a3", "#3a331d", "#c9a94f", "#1f3350", "#7fa9dd", "#4a2321", "#e58a82", "#47301a", "#e0a263",
					"#1e3a26", "#79bd8b", "#362a45", "#b795dc"));

	private static Map<Node.Kind, Paint> boxes(String... colours) {
		Paint seen = new Paint(colours[0], colours[1]);
		Paint rule = new Paint(colours[4], colours[5]);
		Map<Node.Kind, Paint> boxes = new EnumMap<>(Node.Kind.class);
		boxes.put(Node.Kind.SIGN, new Paint(colours[2], colours[3]));
		boxes.put(Node.Kind.CODE, seen);
		boxes.put(Node.Kind.MODULE, seen);
		boxes.put(Node.Kind.TEST, seen);
		boxes.put(Node.Kind.RULE, rule);
		boxes.put(Node.Kind.RULE_WITH_TEST, rule);
		boxes.put(Node.Kind.STEP, rule);
		boxes.put(Node.Kind.NOTHING, seen);
		boxes.put(Node.Kind.MORE, seen);
		boxes.put(Node.Kind.CONFIRMED, new Paint(colours[6], colours[7]));
		boxes.put(Node.Kind.SUSPECTED, new Paint(colours[8], colours[9]));
		boxes.put(Node.Kind.CLEARED, new Paint(colours[10], colours[11]));
		boxes.put(Node.Kind.REFERRAL, new Paint(colours[12], colours[13]));
		return boxes;
	}
}
