package org.baywright.language.conversion;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.baywright.language.BayStandaloneSetup;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.Written;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.IGrammarAccess;
import org.junit.jupiter.api.Test;

/** The words that the model knows to be no names are those of the grammar. */
class WrittenTest {

	@Test
	void everyWordOfTheLanguageIsWrittenAsANameThatIsRead() {
		Set<String> needless = new TreeSet<>();
		for (String word : GrammarUtil.getAllKeywords(BayStandaloneSetup.injector().getInstance(IGrammarAccess.class).getGrammar())) {
			if (Character.isLetter(word.charAt(0))) {
				assertEquals(List.of(), problems("sign " + Written.name(word) + "\nstate s : " + Written.value(word) + ", other\n"), word);
				boolean name = problems("sign " + word + "\n").isEmpty();
				boolean value = problems("state s : " + word + ", other\n").isEmpty();
				if (name != Written.name(word).equals(word) || value != Written.value(word).equals(word)) {
					needless.add(word);
				}
			}
		}
		assertEquals(Set.of(), needless);
		assertEquals("battery.^test", Written.name("battery.test"));
		assertEquals("no_crank", Written.name("no_crank"));
	}

	private static List<?> problems(String text) {
		RuleProject project = RuleProject.inMemory("words");
		project.update("a.bay", text);
		return project.snapshot().problems();
	}
}
