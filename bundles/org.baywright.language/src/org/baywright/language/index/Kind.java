package org.baywright.language.index;

import java.util.Locale;
import org.baywright.language.bay.BayPackage;
import org.eclipse.emf.ecore.EClass;

/** Kinds of things that have a name. */
public enum Kind {

	FAMILY("family"), STATE("state"), TOOL("tool"), HAZARD("hazard"), PART("part"), RULE("rule"), REPAIR("repair"),
	SIGN("sign"), TEST("test"), CODE("code"), MODULE("module"), TRAIT("trait"), FAULT("fault");

	private final String word;

	Kind(String word) {
		this.word = word;
	}

	/** Returns what a technician calls it. */
	public String word() {
		return word;
	}

	/** Returns the word with its article. */
	public String aWord() {
		return "a " + word;
	}

	/** Returns whether a condition can speak of it; all such names share one name space. */
	public boolean isSubject() {
		return ordinal() >= SIGN.ordinal();
	}

	/** Returns what a technician calls an element of the language, whether it has a name of its own or not. */
	public static String word(EClass type) {
		Kind kind = of(type);
		return kind != null ? kind.word : switch (type.getClassifierID()) {
		case BayPackage.CASE -> "job";
		case BayPackage.BUILDS_ON -> "project built on";
		case BayPackage.SIGN_OFF -> "sign-off";
		case BayPackage.EXCLUSIVE -> "list of exclusive faults";
		default -> type.getName().toLowerCase(Locale.ROOT);
		};
	}

	/** Returns the kind of an element of the language, or null if it has no name of its own. */
	public static Kind of(EClass type) {
		return switch (type.getClassifierID()) {
		case BayPackage.FAMILY -> FAMILY;
		case BayPackage.STATE -> STATE;
		case BayPackage.TOOL -> TOOL;
		case BayPackage.HAZARD -> HAZARD;
		case BayPackage.PART -> PART;
		case BayPackage.RULE, BayPackage.CHAIN -> RULE;
		case BayPackage.REPAIR -> REPAIR;
		case BayPackage.SIGN -> SIGN;
		case BayPackage.TEST -> TEST;
		case BayPackage.CODE -> CODE;
		case BayPackage.MODULE -> MODULE;
		case BayPackage.TRAIT -> TRAIT;
		case BayPackage.FAULT -> FAULT;
		default -> null;
		};
	}
}
