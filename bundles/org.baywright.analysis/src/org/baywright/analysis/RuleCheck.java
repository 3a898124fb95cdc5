package org.baywright.analysis;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

import org.baywright.model.Severity;

/** Describes a check. There is one help page and one test class for each. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface RuleCheck {

	/** Returns the stable id: lower case words with hyphens. */
	String id();

	/** Returns how much its flaws matter. */
	Severity severity();

	/** Returns in one sentence what it finds. */
	String summary();

	/** Returns whether its flaws are breaches of the sign-off where the project has one, so that nobody can accept them. */
	boolean signOff() default false;
}
