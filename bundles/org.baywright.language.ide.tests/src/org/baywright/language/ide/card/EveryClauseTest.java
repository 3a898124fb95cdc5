package org.baywright.language.ide.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;
import org.baywright.language.vocabulary.Clause;
import org.baywright.language.vocabulary.Element;
import org.baywright.language.vocabulary.Vocabulary;
import org.baywright.language.workspace.RuleProject;
import org.junit.jupiter.api.Test;

/** Each clause of each element of the examples can be read as a line of a card, changed and taken away; all else stays. */
class EveryClauseTest {

	private static final LocalDate TODAY = LocalDate.of(2026, 4, 1);

	/** What no example has. */
	private static final SortedMap<String, String> MORE = new TreeMap<>(Map.of("more.bay", """
			test soak "Voltage after a rest" {
			  measures V 0 .. 18 step 0.1
			  wait 1 h // with the doors shut
			  drive above 20 km/h "uphill" for 1 min
			  do "Charge to full."
			  picture "soak.png" "The lamp that must be dark"
			}
			tool meter "Meter"
			workshop "Yard" {
			  hour 72 // with overheads
			  scan each takes 4 min cost 0 needs meter
			  scan all takes 6 min
			  lacks meter
			  skill trained
			}
			remark on change "Waits longer" by "A. Author" on 2026-03-02 "Say why." {
			  at "wait 1 h" // as it was
			  reply by "B. Author" on 2026-03-03 "The doors."
			  settled by "A. Author" on 2026-03-04
			}
			repair wait_longer "Wait longer" {
			  picture "wait.png" "Where to wait"
			}
			"""));

	private static final List<SortedMap<String, String>> PROJECTS = Stream.concat(
			Stream.concat(Samples.projects().stream(), Stream.of(Samples.project("flawed"))).map(Samples::texts), Stream.of(MORE)).toList();

	/** Does something with each card of the examples. */
	private interface Each {
		void accept(EditorServices services, String file, String text, Card card);
	}

	private static void eachCard(Each each) {
		for (SortedMap<String, String> texts : PROJECTS) {
			EditorServices services = new EditorServices(Samples.inMemory(texts));
			texts.forEach((file, text) -> {
				for (Card.Item item : services.cardItems(file)) {
					each.accept(services, file, text, services.card(file, item.offset(), Drafts.NONE, Optional.empty()).orElseThrow());
				}
			});
		}
	}

	@Test
	void eachElementIsReadWhole() {
		Set<String> kinds = new TreeSet<>();
		eachCard((services, file, text, card) -> {
			kinds.add(card.kind());
			boolean sound = !file.startsWith("flawed");
			assertEquals(Optional.empty(), sound ? card.unread() : Optional.empty(), file);
			assertEquals(List.of(), card.fields().stream().filter(field -> field.label().equals("As written"))
					.map(field -> field.lines().get(0).bits().get(0).value()).toList(), file + " " + card.title());
		});
		assertEquals(new TreeSet<>(new EditorServices(RuleProject.inMemory("none")).cards().kinds()), kinds);
	}

	/** What nobody has changed is written as it was, word by word. */
	@Test
	void whatIsReadIsWrittenAsItWas() {
		Set<String> seen = new TreeSet<>();
		eachCard((services, file, text, card) -> {
			for (Card.Field field : card.fields()) {
				for (Line line : field.lines()) {
					if (line.isClause()) {
						seen.add(card.kind() + " " + field.label());
						Sheet.Part part = line.part().orElseThrow();
						assertEquals(words(text.substring(part.offset(), part.end())), words(Writing.line(line.piece().orElseThrow())), file);
					}
				}
			}
		});
		Set<String> all = new TreeSet<>();
		for (Form form : Form.all(grammar()).values()) {
			for (int i = 0; i < form.clauses().size(); i++) {
				all.add(form.element().word() + " " + Labels.field(form.element().word(), form.label(i)));
			}
		}
		all.removeAll(seen);
		assertEquals(Set.of(), all, "each clause stands in an example");
	}

	private static org.eclipse.xtext.Grammar grammar() {
		return RuleProject.inMemory("none").services().getInstance(org.baywright.language.services.BayGrammarAccess.class).getGrammar();
	}

	private static List<String> words(String text) {
		return Words.of(text).stream().filter(word -> word.kind() != Word.Kind.COMMENT).map(Word::text).toList();
	}

	@Test
	void eachClauseCanBeTakenAway() {
		eachCard((services, file, text, card) -> {
			for (Card.Field field : card.fields()) {
				for (Line line : field.lines()) {
					if (line.isClause()) {
						Cards.Outcome outcome = services.cards().change(card, line.key(), new Change.Delete(), Drafts.NONE, TODAY);
						Sheet.Part part = line.part().orElseThrow();
						String after = Edits.apply(text, outcome.edits());
						List<String> left = new ArrayList<>(words(text.substring(0, part.offset())));
						left.addAll(words(text.substring(part.end())));
						assertEquals(left, words(after), file);
						assertOutsideIsKept(text, after, part.offset(), part.end());
					}
				}
			}
		});
	}

	/** All that stands on other lines is there byte for byte. */
	private static void assertOutsideIsKept(String before, String after, int from, int to) {
		String head = before.substring(0, Words.startOfLine(before, from));
		String tail = before.substring(Math.min(before.length(), Words.endOfLine(before, to) + 1));
		assertTrue(after.startsWith(head) && after.endsWith(tail), () -> after);
	}

	/** Each value is filled in anew; nothing but its own words change. */
	@Test
	void eachValueCanBeChanged() {
		int[] count = new int[1];
		eachCard((services, file, text, card) -> {
			for (Card.Field field : card.fields()) {
				for (Line line : field.lines()) {
					for (Bit bit : line.bits()) {
						String typed = typed(services, card, line, bit);
						if (typed != null && !bit.written().isEmpty()) {
							change(services, file, text, card, line, bit, typed);
							count[0]++;
						}
					}
				}
			}
		});
		assertTrue(count[0] > 3000, "changed " + count[0]);
	}

	private static String typed(EditorServices services, Card card, Line line, Bit bit) {
		return switch (bit.kind()) {
		case TEXT, SENTENCE -> "It says \"so\" \\ now";
		case NUMBER -> "7";
		case AMOUNT -> "7 " + (bit.value().contains(" ") ? bit.value().substring(bit.value().indexOf(' ') + 1) : "");
		case DATE -> "2031-01-02";
		default -> null;
		};
	}

	private static void change(EditorServices services, String file, String text, Card card, Line line, Bit bit, String typed) {
		Cards.Outcome outcome = services.cards().change(card, line.key(), new Change.Fill(bit.path(), typed, List.of()), Drafts.NONE, TODAY);
		assertEquals("", outcome.refused(), file);
		List<TextEdit> edits = outcome.edits();
		String after = Edits.apply(text, edits);
		assertTrue(after.length() != text.length() || !after.equals(text) || bit.value().equals(typed.strip()), file + " " + line.key() + " " + bit);
		Optional<Card> again = services.cards().card(services.project().names(), file, after, card.offset(), Drafts.NONE, List.of(), Optional.empty());
		Bit now = again.orElseThrow().line(line.key()).orElseThrow().bits().stream().filter(other -> other.path().equals(bit.path())
				&& other.kind() == bit.kind()).findFirst().orElseThrow(() -> new AssertionError(file + " " + line.key() + " " + bit + " in " + after));
		assertEquals(typed.strip(), now.value(), file);
		assertEquals(words(text).size() + words(now.written()).size() - words(bit.written()).size(), words(after).size(), file);
	}

	/** What is begun with nothing filled in is never written. */
	@Test
	void eachFieldThatIsBlankAddsNothing() {
		eachCard((services, file, text, card) -> card.fields().stream().filter(Card.Field::isBlank).flatMap(field -> field.lines().stream())
				.forEach(line -> assertFalse(line.isDraft(), file + " " + line.key())));
	}

	@Test
	void eachClauseOfTheVocabularyHasAField() {
		for (Form form : Form.all(grammar()).values()) {
			Element element = Vocabulary.of(form.element().rule()).orElseThrow();
			assertEquals(element.clauses().size(), form.clauses().size(), element.rule());
			for (int i = 0; i < element.clauses().size(); i++) {
				Clause clause = element.clauses().get(i);
				assertFalse(form.label(i).isEmpty(), clause.toString());
			}
		}
	}
}
