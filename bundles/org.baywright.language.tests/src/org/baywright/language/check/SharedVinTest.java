package org.baywright.language.check;

import org.baywright.analysis.check.SharedVin;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link SharedVin}: ISO 3779. */
class SharedVinTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(SharedVin.class);
	}

	@Test
	void beginningsThatDoNotExcludeEachOther() {
		MarkedFlaws.check(SharedVin.class, """
				base family all { vin "WZZ" }
				family a like all { vin "WZZA" vin "WZZB" }
				family a_long like a { vin "WZZA9" }
				family b { vin "WXA?1" }
				family c { vin "WXB?1" }
				family d { vin "WX?21??X" }
				//             ^^^^^^^^^^ warning shared-vin: A number that begins with WXA21??X belongs to family b and to family d; write more of the beginnings, until they differ.
				//   also: line 4 (family b)
				//             ^^^^^^^^^^ warning shared-vin: A number that begins with WXB21??X belongs to family c and to family d; write more of the beginnings, until they differ.
				//   also: line 5 (family c)
				family e { vin "wzza9" vin "V" vin "WZZB1" }
				//             ^^^^^^^ warning shared-vin: A number that begins with WZZA9 belongs to family a and to family e; write more of the beginnings, until they differ.
				//   also: line 2 (family a), line 2 (family a), line 11 (family e)
				//             ^^^^^^^ warning shared-vin: A number that begins with WZZA9 belongs to family a_long and to family e; write more of the beginnings, until they differ.
				//   also: line 3 (family a_long)
				//             ^^^^^^^ warning shared-vin: A number that begins with WZZA9 belongs to family all and to family e; write more of the beginnings, until they differ.
				//   also: line 1 (family all), line 11 (family e)
				family none like all
				""");
	}
}
