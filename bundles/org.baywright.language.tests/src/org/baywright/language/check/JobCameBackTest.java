package org.baywright.language.check;

import org.baywright.analysis.check.JobCameBack;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link JobCameBack}: common practice. */
class JobCameBackTest {

	private static final String RULES = """
			family plover
			sign dead
			part lamp { fault blown fault socket }
			test look { results whole, broken, dirty }
			rule a { given dead run look on whole : proves nothing on broken : confirms lamp.blown on dirty : confirms lamp.socket }
			rule b { given dead, look is broken then confirms lamp.blown }
			rule c { given dead, look is dirty then confirms lamp.blown }
			""";

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(JobCameBack.class);
	}

	@Test
	void onlyRulesThatConfirmedTheCauseAreNamed() {
		MarkedFlaws.check(JobCameBack.class, RULES + """
				job "stays" { on plover found dead, look broken was lamp.blown took 30 min spent 4 afterwards dead absent }
				job "one day" { on plover found dead, look broken was lamp.blown came_back after 24 h }
				//  ^^^^^^^^^ warning job-came-back: The job "one day", in which rules a and b confirmed the cause, came back after 1 day; look whether the cause was another one, the repair does not last, or its verification passes too early.
				//   also: line 5 (rule a confirmed it), line 6 (rule b confirmed it)
				job "referred" { on plover found dead was referred came_back after 2 d }
				//  ^^^^^^^^^^ warning job-came-back: The job "referred" came back after 2 days; look whether the cause was another one, the repair does not last, or its verification passes too early.
				""");
	}
}
