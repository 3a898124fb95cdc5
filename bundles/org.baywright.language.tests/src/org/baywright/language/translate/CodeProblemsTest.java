package org.baywright.language.translate;

import org.baywright.language.testing.MarkedText;
import org.junit.jupiter.api.Test;

class CodeProblemsTest {

	@Test
	void textCodesHaveTheFormOfTheStandard() {
		MarkedText.check("""
				code c1 on bcm = dtc U3003
				code c2 on bcm = dtc u3003 sub 1a
				code c3 on bcm = dtc X3003
				                     ^^^^^ error code-form: A trouble code of this form begins with P, C, B or U, not with X. > Write it as the scan tool shows it, such as U3003, or use `raw` for a maker's own form.
				code c4 on bcm = dtc P4003
				                     ^^^^^ error code-form: The second character of a trouble code of this form is 0, 1, 2 or 3, not 4. > Write it as the scan tool shows it, such as U3003, or use `raw` for a maker's own form.
				code c5 on bcm = dtc P030
				                     ^^^^ error code-form: A trouble code of this form has five characters; P030 has 4. > Write it as the scan tool shows it, such as U3003, or use `raw` for a maker's own form.
				code c6 on bcm = dtc P03G0
				                     ^^^^^ error code-form: The last three characters of a trouble code of this form are hexadecimal digits (0 to 9, A to F); G is none. > Write it as the scan tool shows it, such as U3003, or use `raw` for a maker's own form.
				code c7 on bcm = dtc P0300 sub 1
				                               ^ error code-form: The failure type after sub is two hexadecimal digits, such as 16 or 1A; 1 is not. > Write the two digits after the dash of the code.
				code c8 on bcm = dtc P0300 sub GG
				                               ^^ error code-form: The failure type after sub is two hexadecimal digits, such as 16 or 1A; GG is not. > Write the two digits after the dash of the code.
				code c9 on bcm = dtc 3003
				                     ^^^^ error code-form: A trouble code of this form has five characters; 3003 has 4. > Write it as the scan tool shows it, such as U3003, or use `raw` for a maker's own form.
				""");
	}

	@Test
	void numbersFitInTheMessageOfTheStandard() {
		MarkedText.check("""
				code c1 on ecm = j1939 spn 524287 fmi 31
				code c2 on ecm = j1939 spn 524288 fmi 0
				                           ^^^^^^ error code-form: An SPN is a whole number from 0 to 524287; 524288 is not. > Write the number that the scan tool shows as SPN.
				code c3 on ecm = j1939 spn 1 fmi 32
				                                 ^^ error code-form: An FMI is a whole number from 0 to 31; 32 is not. > Write the number that the scan tool shows as FMI.
				code c4 on ecm = j1939 spn 1.5 fmi 2
				                           ^^^ error code-form: An SPN is a whole number from 0 to 524287; 1.5 is not. > Write the number that the scan tool shows as SPN.
				code c5 on ecm = j1939 spn 1 fmi 25
				                                 ^^ warning code-reserved: SAE J1939-73 reserves FMI 25, so no module should send it. > Check the number that the scan tool shows as FMI.
				""");
	}

	@Test
	void aRawCodeIsLeftAlone() {
		MarkedText.check("""
				code c1 on bcm = raw "anything // at all"
				code c2 on bcm = raw " "
				                 ^^^^^^^ error code-form: The text of the code is empty. > Write the code as the maker's tool shows it.
				""");
	}

	@Test
	void theModuleMustExist() {
		MarkedText.check("""
				code c1 on bmc = dtc U3003
				           ^^^ error unknown-name: There is no module `bmc`. > Did you mean `bcm`?
				code c2 on ignition = dtc U3003
				           ^^^^^^^^ error unknown-name: `ignition` is a state, and a module is needed here. > Name a module.
				""");
	}

	@Test
	void modulesAnswerInStatesThatExist() {
		MarkedText.check("""
				module m1 on tarn, heronn answers in ignition on
				                   ^^^^^^ error unknown-name: There is no family `heronn`. > Did you mean `heron`?
				module m2 answers in ignitoin on
				                     ^^^^^^^^ error unknown-name: There is no state `ignitoin`. > Did you mean `ignition`?
				module m3 answers in ignition of
				                              ^^ error syntax: `of` is a word of the language, so it cannot be a name as it stands. > Write `^of`, or choose another name.
				""");
	}
}
