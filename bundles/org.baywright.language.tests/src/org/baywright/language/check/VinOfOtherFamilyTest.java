package org.baywright.language.check;

import org.baywright.analysis.check.VinOfOtherFamily;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link VinOfOtherFamily}: the form of the numbers is ISO 3779. */
class VinOfOtherFamilyTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(VinOfOtherFamily.class);
	}

	@Test
	void theNarrowerBeginningCounts() {
		MarkedFlaws.check(VinOfOtherFamily.class, """
				base family all { vin "WZ" }
				family a like all { vin "WZZ" vin "WZ?A?1" }
				family a_lift like a { vin "WZZ7" }
				family b like all
				family c { vin "WZZ" vin "WZA" }
				family d
				job "parent, number of the child" { on a vin "WZZ7A3B4J00000012" was referred }
				//  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning vin-of-other-family: The number of job "parent, number of the child" is one of family a_lift, and the job is on family a; correct the family or the number.
				//   also: line 3 (family a_lift)
				job "child, number of the child" { on a_lift vin "WZZ7A3B4J00000012" was referred }
				job "child, number of the parent" { on a_lift vin "WZZ8A3B4J00000012" was referred }
				job "as narrow is not narrower" { on a vin "WZZ8A3B4J00000012" was referred }
				job "neither is narrower" { on a vin "WZAA213B4J0000012" was referred }
				job "only its base has one" { on b vin "WZZ8A3B4J00000012" was referred }
				//  ^^^^^^^^^^^^^^^^^^^^^^^ warning vin-of-other-family: The number of job "only its base has one" is one of families a, a_lift and c, and the job is on family b; correct the family or the number.
				//   also: line 2 (family a), line 3 (family a_lift), line 5 (family c)
				job "a family without any" { on d vin "WZB8A3B4J00000012" was referred }
				//  ^^^^^^^^^^^^^^^^^^^^^^ warning vin-of-other-family: The number of job "a family without any" is one of families a, a_lift and b, and the job is on family d; correct the family or the number.
				//   also: line 2 (family a), line 3 (family a_lift), line 4 (family b)
				job "nobody's number" { on d vin "VZB8A3B4J00000012" was referred }
				job "no number" { on d was referred }
				""");
	}
}
