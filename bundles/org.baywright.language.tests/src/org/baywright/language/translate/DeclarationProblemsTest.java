package org.baywright.language.translate;

import org.baywright.language.testing.MarkedText;
import org.junit.jupiter.api.Test;

class DeclarationProblemsTest {

	@Test
	void aFamilyCannotBuildOnItself() {
		MarkedText.check("""
				family a like b { }
				              ^ error family-circle: The family `a` builds on itself: a on b on c on a. > Take one `like` out of the circle.
				family b like c { }
				              ^ error family-circle: The family `b` builds on itself: b on c on a on b. > Take one `like` out of the circle.
				family c like a { }
				              ^ error family-circle: The family `c` builds on itself: c on a on b on c. > Take one `like` out of the circle.
				""");
	}

	@Test
	void aFamilyCannotBuildOnItselfDirectly() {
		MarkedText.check("""
				family a like a { }
				              ^ error family-circle: The family `a` builds on itself: a on a. > Take one `like` out of the circle.
				""");
	}

	@Test
	void theParentMustExist() {
		MarkedText.check("""
				family a like taarn { }
				              ^^^^^ error unknown-name: There is no family `taarn`. > Did you mean `tarn`?
				""");
	}

	@Test
	void aTraitIsDeclaredOnce() {
		MarkedText.check("""
				family a {
				  trait doors : two, four
				  trait doors : three
				        ^^^^^ error duplicate-name: The family `a` already has a trait `doors`. > Put all values into one trait, or choose another name.
				}
				""");
	}

	@Test
	void aTraitValueIsListedOnce() {
		MarkedText.check("""
				family a { trait doors : two, four, two }
				                                    ^^^ error value-twice: The trait `doors` already has a value `two`. > List each value once.
				""");
	}

	@Test
	void aRangeBeginsWithTheSmallerNumber() {
		MarkedText.check("""
				family a { trait made : year 2020 .. 2010 }
				                             ^^^^ error range-reversed: The range 2020 .. 2010 ends before it begins. > Write the smaller value first.
				""");
	}

	@Test
	void aTraitCountsInWholeNumbers() {
		MarkedText.check("""
				family a { trait load : t 0.5 .. 3 }
				                          ^^^ error whole-number-needed: A trait counts in whole numbers; 0.5 is none. > Write a whole number.
				""");
	}

	@Test
	void aTraitSharesTheNameSpaceOfFindings() {
		MarkedText.check("""
				family a { trait no_crank : yes, no }
				                 ^^^^^^^^ error duplicate-name: There is already a sign `no_crank` in findings.bay. > Choose another name.
				""");
	}

	@Test
	void vinPatternsHaveTheFormOfTheStandard() {
		MarkedText.check("""
				family a {
				  vin "WOZ"
				      ^^^^^ error vin-form: A vehicle identification number never has the letter O, which would be taken for a digit. > Write the first characters, with ? for any character.
				  vin "WZZ?3"
				  vin "W-Z"
				      ^^^^^ error vin-form: A vehicle identification number has only letters A to Z and digits; - is neither. > Write the first characters, with ? for any character.
				  vin ""
				      ^^ error vin-form: The beginning of a vehicle identification number is empty. > Write the first characters, with ? for any character.
				  vin "123456789012345678"
				      ^^^^^^^^^^^^^^^^^^^^ error vin-form: A vehicle identification number has 17 characters; this beginning has 18. > Write the first characters, with ? for any character.
				}
				""");
	}

	@Test
	void stateValuesAreListedOnce() {
		MarkedText.check("""
				state door : open, shut, open
				                         ^^^^ error value-twice: The state `door` already has a value `open`. > List each value once.
				""");
	}

	@Test
	void namesAreUsedOnce() {
		MarkedText.check("""
				sign no_crank
				     ^^^^^^^^ error duplicate-name: There is already a sign `no_crank` in findings.bay. > Choose another name.
				test charge_lamp { results a, b }
				     ^^^^^^^^^^^ error duplicate-name: There is already a test `charge_lamp` in findings.bay. > Choose another name.
				sign rest_voltage
				     ^^^^^^^^^^^^ error duplicate-name: There is already a test `rest_voltage` in findings.bay. > Choose another name.
				tool multimeter
				     ^^^^^^^^^^ error duplicate-name: There is already a tool `multimeter` in vehicles.bay. > Choose another name.
				family tarn
				       ^^^^ error duplicate-name: There is already a family `tarn` in vehicles.bay. > Choose another name.
				state door : open, shut
				state door : open, shut
				      ^^^^ error duplicate-name: There is already a state `door`. > Choose another name.
				part battery { fault flat }
				     ^^^^^^^ error duplicate-name: There is already a part `battery` in power/battery.bay. > Choose another name.
				""");
	}

	@Test
	void aFaultIsDeclaredOnce() {
		MarkedText.check("""
				part relay { fault stuck fault worn fault stuck }
				                                          ^^^^^ error duplicate-name: The part `relay` already has a fault `stuck`. > Choose another name.
				""");
	}

	@Test
	void aSeenCountIsWhole() {
		MarkedText.check("""
				part relay { fault stuck seen 2.5 }
				                              ^^^ error whole-number-needed: Jobs are counted in whole numbers; 2.5 is none. > Write a whole number.
				""");
	}

	@Test
	void exclusiveFaultsDiffer() {
		MarkedText.check("""
				exclusive battery.discharged, battery.discharged
				                              ^^^^^^^^^^^^^^^^^^ error fault-twice: `battery.discharged` is named twice. > Name each fault once.
				exclusive battery.discharged, battery.flat
				                              ^^^^^^^^^^^^ error unknown-name: There is no fault `battery.flat`. > Define the fault, or correct the name.
				exclusive battery, starter.worn
				          ^^^^^^^ error unknown-name: `battery` is a part, and a fault of the part is needed here. > Write `battery.discharged` or `battery.open_cell`.
				""");
	}
}
