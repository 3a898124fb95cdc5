package org.baywright.language.check;

import org.baywright.analysis.check.CodeTwice;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link CodeTwice}: SAE J2012, ISO 15031-6 and SAE J1939-73 tell codes by their numbers. */
class CodeTwiceTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(CodeTwice.class);
	}

	@Test
	void oneTextInOneModuleIsOneCode() {
		MarkedFlaws.check(CodeTwice.class, """
				family tarn
				module ecm
				module tcm
				code a on ecm = dtc P0300
				code b on ecm = dtc P0300 sub 16
				code c on tcm = dtc P0300
				code d on ecm = dtc p0300
				//   ^ error code-twice: Code d is P0300 of module ecm, and so is code a; keep one name for it.
				//   also: line 4 (code a)
				code e on ecm = dtc P0300 sub 1a
				code f on ecm = dtc P0300 sub 1A
				//   ^ error code-twice: Code f is P0300-1A of module ecm, and so is code e; keep one name for it.
				//   also: line 10 (code e)
				code g on ecm = j1939 spn 100 fmi 3
				code h on ecm = j1939 spn 100 fmi 4
				code i on ecm = j1939 spn 100 fmi 3
				//   ^ error code-twice: Code i is SPN 100 FMI 3 of module ecm, and so is code g; keep one name for it.
				//   also: line 14 (code g)
				code j on ecm = raw "E 1"
				code k on ecm = raw "e 1"
				code l on ecm = raw "P0300"
				code m on ecm = dtc P0300
				//   ^ error code-twice: Code m is P0300 of module ecm, and so is code a; keep one name for it.
				//   also: line 4 (code a)
				""");
	}
}
