package org.baywright.language.translate;

import org.baywright.language.testing.MarkedText;
import org.baywright.language.testing.Samples;
import org.baywright.language.workspace.RuleProject;
import org.junit.jupiter.api.Test;

class DeclarationProblemsTest {

	@Test
	void aFamilyCannotBuildOnItself() {
		MarkedText.check("""
				family a like b { }
				              ^ error family-circle: The family `a` builds on itself: a on b on c on a. > Take one `like` or `has` out of the circle.
				family b like c { }
				              ^ error family-circle: The family `b` builds on itself: b on c on a on b. > Take one `like` or `has` out of the circle.
				family c like a { }
				              ^ error family-circle: The family `c` builds on itself: c on a on b on c. > Take one `like` or `has` out of the circle.
				""");
	}

	@Test
	void aFamilyCannotBuildOnItselfDirectly() {
		MarkedText.check("""
				family a like a { }
				              ^ error family-circle: The family `a` builds on itself: a on a. > Take one `like` or `has` out of the circle.
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
	void aPictureLiesInTheProjectAndCanBeShown() {
		MarkedText.check("""
				part p { picture "/a.png" "A" picture "b/../c.png" "B" picture "C:c.png" "C" picture "d.tif" "D" picture "E.PNG" "E" picture "f" " " fault f }
				                 ^^^^^^^^ error picture-outside: `/a.png` does not lie in the project. > Copy the picture into the project and write its path from there, with forward slashes, such as pictures/fuse_box.jpg.
				                                      ^^^^^^^^^^^^ error picture-outside: `b/../c.png` does not lie in the project. > Copy the picture into the project and write its path from there, with forward slashes, such as pictures/fuse_box.jpg.
				                                                               ^^^^^^^^^ error picture-outside: `C:c.png` does not lie in the project. > Copy the picture into the project and write its path from there, with forward slashes, such as pictures/fuse_box.jpg.
				                                                                                     ^^^^^^^ error picture-type: `d.tif` does not end in .png, .jpg or .jpeg. > Save the picture as PNG or JPEG and write that file's name.
				                                                                                                                             ^^^ error picture-type: `f` does not end in .png, .jpg or .jpeg. > Save the picture as PNG or JPEG and write that file's name.
				                                                                                                                                 ^^^ error empty-text: The text after `picture` says nothing. > Write what it shows, for those who cannot see it.
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

	@Test
	void familiesHaveSystems() {
		MarkedText.check("""
				system bus_b "Bus" { trait gateway : none, fitted }
				system stop_start has bus_b { vin "ZZZ" }
				                              ^^^^^^^^^ error vin-of-system: No vehicle belongs to a system, so it has no numbers. > Move it to the families that have the system.
				base family van { trait gateway : none, fitted }
				family one like van has stop_start, bus_b { }
				family two like bus_b { }
				                ^^^^^ error like-or-has: `bus_b` is a system, and `two` is a family. > Write `has bus_b`.
				family three has van, stop_start, stop_start { }
				                 ^^^ error like-or-has: `van` is a family, and a family has systems. > Write `like van`, or make a system of it.
				                                  ^^^^^^^^^^ warning system-twice: `stop_start` is named twice. > Name each system once.
				system four like van { }
				                 ^^^ error like-or-has: `van` is a family, and `four` is a system. > Take `like` out: a system is like other systems only.
				system has has has { }
				               ^^^ error family-circle: The family `has` builds on itself: has on has. > Take one `like` or `has` out of the circle.
				""");
	}

	@Test
	void aTraitFromTwoSidesIsTheSameOrSaidAnew() {
		MarkedText.check("""
				system old_bus { trait speed : slow }
				system new_bus { trait speed : slow, fast }
				family a has old_bus, new_bus { }
				       ^ error trait-unlike: `a` gets the trait `speed` from `old_bus` and from `new_bus`, with unlike values. > Define the trait in the family itself, or rename one of the two.
				family b has old_bus, new_bus { trait speed : fast }
				system newer_bus like new_bus { trait speed : fast }
				family c has newer_bus { }
				family d has new_bus, newer_bus { }
				       ^ error trait-unlike: `d` gets the trait `speed` from `new_bus` and from `newer_bus`, with unlike values. > Define the trait in the family itself, or rename one of the two.
				""");
	}

	@Test
	void aCycleGoesFromOneValueToAnother() {
		MarkedText.check("""
				state lock : off, on, cranking
				family one { cycle lock : off, wait 30 s, on }
				family two { cycle lock : off, wait 30 s, off }
				             ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error cycle-short: A cycle goes from one value to another. > Name at least two values, such as `off, wait 30 s, on`.
				family three { cycle lock : off, on cycle lock : on, off }
				                                    ^^^^^^^^^^^^^^^^^^^^ error cycle-twice: The family says twice what a cycle of `lock` is. > Keep one of the two.
				family four { cycle lock : off, in }
				                                ^^ error syntax: `in` does not fit here. > After `,` comes the name of a value or `wait`.
				family five { cycle lock : off, of_course, on }
				                                ^^^^^^^^^ error unknown-value: The state `lock` has no value `of_course`.
				""");
	}

	@Test
	void aCycleFromTwoSidesIsTheSameOrSaidAnew() {
		MarkedText.check("""
				state lock : off, on
				system one { cycle lock : off, wait 30 s, on }
				system two { cycle lock : off, wait 1 min, on }
				family a has one, two
				       ^ error cycle-unlike: `a` gets the cycle of `lock` from `one` and from `two`, in unlike ways. > Say in the family itself what a cycle is.
				family b has one, two { cycle lock : off, on }
				system three like two { cycle lock : on, off }
				family c has three
				""");
	}

	@Test
	void whoMakesSafeSaysHow() {
		MarkedText.check("""
				sign burnt do_not_drive do_not_start "It burns." make_safe "Take the battery off."
				sign hot make_safe
				         ^^^^^^^^^ error make-safe-how: `make_safe` does not say how. > Write what must be done first behind it, in quotes.
				sign dry do_not_drive "\u00A0\u2800"
				                      ^^^^ error empty-text: The text after `do_not_drive`, `do_not_start` or `make_safe` says nothing. > Write why, or how, or take the quotes out.
				sign wet do_not_drive ""
				                      ^^ error empty-text: The text after `do_not_drive`, `do_not_start` or `make_safe` says nothing. > Write why, or how, or take the quotes out.
				""");
	}

	@Test
	void aWorkshopSaysEachThingOnce() {
		MarkedText.check("""
				workshop "Yard" { hour 72 hour 80
				                          ^^^^ error clause-twice: `hour` is given twice. > Keep one of the two.
				  scan each takes 4 V cost 1 needs scan_tool
				                  ^^^ error unit-mismatch: 4 V is no duration. > Write how many minutes the work takes.
				  scan all takes 6
				                 ^ error unit-missing: 6 has no unit. > Write `6 min`.
				  scan each takes 3 min needs scan_tol
				  ^^^^ error clause-twice: `scan each` is given twice. > Keep one of the two.
				                              ^^^^^^^^ error unknown-name: There is no tool `scan_tol`. > Did you mean `scan_tool`?
				  lacks clamp, multimeter, clamp lacks clamp
				                           ^^^^^ warning tool-twice: `clamp` is named twice. > Name each tool once.
				                                 ^^^^^ error clause-twice: `lacks` is given twice. > Put all of it after one `lacks`, with commas between.
				                                       ^^^^^ warning tool-twice: `clamp` is named twice. > Name each tool once.
				  skill trained skill basic }
				                ^^^^^ error clause-twice: `skill` is given twice. > Keep one of the two.
				workshop { }
				^^^^^^^^ error workshop-twice: There is already a workshop. > Keep one of the two.
				""");
	}

	@Test
	void aSecondWorkshopIsToldWhereverItStands() {
		RuleProject project = Samples.tarnInMemory();
		project.update("shop.bay", "workshop \"Yard\" { scan each }");
		MarkedText.check("""
				workshop "Other" { hour -1 }
				^^^^^^^^ error workshop-twice: There is already a workshop in shop.bay. > Keep one of the two.
				                        ^ error syntax: `-` does not fit here.
				""", project);
	}

	@Test
	void gettingToAValueTakesATime() {
		MarkedText.check("""
				state network "Network" : awake, asleep "Asleep" takes -20 min, dead takes 3 m, gone takes 20
				                                                       ^^^^^^^ error negative-duration: A duration cannot be less than 0. > Write how many minutes the work takes.
				                                                                           ^^^ error unit-mismatch: 3 m is no duration. > Write how many minutes the work takes.
				                                                                                           ^^ error unit-missing: 20 has no unit. > Write `20 min`.
				test u { results a, b takes 2 hour }
				                              ^^^^ error syntax: `hour` does not fit here. > Did you mean `h`?
				test t { results a, b needs clamp, clamp }
				                                   ^^^^^ warning tool-twice: `clamp` is named twice. > Name each tool once.
				""");
	}
}
