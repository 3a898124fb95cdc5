package org.baywright.language.ide.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.baywright.language.ide.testing.Cursor;
import org.junit.jupiter.api.Test;

/** What is done on a card changes just that in the text, and nothing else. */
class CardTest {

	@Test
	void aValueIsFilledInAnew() {
		assertEquals("""
				// how long
				test fuse  "Fuse"  {
				  results whole, blown   // two
				  takes   9 min          // with the cover
				}
				""", new Hand("""
				// how long
				test fuse  "Fuse"  {
				  results whole, blown   // two
				  takes   @8 min          // with the cover
				}
				""").fill("Takes", 0, "9 min").text());
	}

	@Test
	void whatDoesNotFitIsRefusedAndSaysWhatToWrite() {
		Hand hand = new Hand("test fuse { @takes 8 min }\n").fill("Takes", 0, "soon");
		assertEquals("“soon” does not fit. Write a number and its unit, such as 12.4 V or 8 min.", hand.refused);
		assertEquals("test fuse { takes 8 min }\n", hand.text());
		assertEquals("test fuse { takes 12.5 min }\n", hand.fill("Takes", 0, "12,5 min").text());
	}

	@Test
	void aTitleWithQuotesAndBackslashesIsWrittenSoThatItReadsTheSame() {
		Hand hand = new Hand("sign @dark \"Dark\"\n").fill("Title", 0, "The \"left\" lamp \\ dark");
		assertEquals("sign dark \"The \\\"left\\\" lamp \\\\ dark\"\n", hand.text());
		assertEquals("The \"left\" lamp \\ dark", hand.shown("Title", 0));
		assertEquals("sign dark\n", hand.fill("Title", 0, "").text());
	}

	@Test
	void aClauseIsAddedWhereItUsuallyStands() {
		assertEquals("""
				test fuse {
				  results whole, blown
				  needs multimeter // the small one
				  takes 5 min
				  cost 3
				}
				""", new Hand("""
				test fuse {
				  results whole, blown
				  needs @multimeter // the small one
				  cost 3
				}
				""").fill("Takes", 0, "5 min").text());
		assertEquals("test fuse { results whole, blown  takes 5 min  cost 3 }\n",
				new Hand("test @fuse { results whole, blown  cost 3 }\n").fill("Takes", 0, "5 min").text());
		assertEquals("test fuse {\n  takes 5 min\n}\n", new Hand("test @fuse {}\n").fill("Takes", 0, "5 min").text());
		assertEquals("test fuse {\n  takes 5 min\n}\n", new Hand("test @fuse {\n}\n").fill("Takes", 0, "5 min").text());
	}

	@Test
	void aClauseOfSeveralValuesIsWrittenOnceItIsWhole() {
		Hand hand = new Hand("test @fuse {\n}\n").fill("Measures", 1, "0").fill("Measures", 2, "18");
		assertEquals("test fuse {\n}\n", hand.text());
		assertTrue(hand.field("Measures").lines().get(0).isDraft());
		assertEquals("test fuse {\n  measures V 0 .. 18 step 0.1\n}\n", hand.fill("Measures", 3, "0.1").fill("Measures", 0, "V").text());
		assertFalse(hand.field("Measures").lines().get(0).isDraft());
	}

	@Test
	void aClauseGoesWithItsLineAndWhatIsSaidBehindIt() {
		String before = """
				test fuse {
				  // what comes out
				  results whole, blown
				  takes @8 min // long
				  // what it costs
				  cost 3
				}
				""";
		assertEquals("""
				test fuse {
				  // what comes out
				  results whole, blown
				  // what it costs
				  cost 3
				}
				""", new Hand(before).delete("Takes", 0).text());
		assertEquals("test fuse { takes 8 min }\n", new Hand("test @fuse { results a, b  takes 8 min }\n").delete("Results", 0).text());
		assertEquals("test fuse { results a, b }\n", new Hand("test @fuse { results a, b  takes 8 min }\n").delete("Takes", 0).text());
	}

	@Test
	void whatIsEmptiedIsTakenAway() {
		assertEquals("test fuse {\n  cost 3\n}\n", new Hand("test @fuse {\n  takes 8 min\n  cost 3\n}\n").fill("Takes", 0, "").text());
	}

	@Test
	void aNameIsMadeOfItsTitle() {
		assertEquals("""
				part lamp "Lamp" {
				  fault broken "Broken"
				  fault broken_2 "Broken!" seen 4
				}
				""", new Hand("part @lamp \"Lamp\" {\n  fault broken \"Broken\"\n}\n").more("Fault").fill("Fault", 2, "Broken!").press("Fault", Bit.Kind.ADD, 1)
				.fill("Fault", 4, "4").text());
		assertEquals("part lamp {\n  fault ^seen \"Seen\"\n}\n", new Hand("part @lamp {\n}\n").fill("Fault", 0, "Seen").text());
	}

	@Test
	void aNameThatAnotherFileHasIsNotGivenAgain() {
		assertEquals("part battery_2 \"Battery\" {\n}\n", new Hand("@").begin("part").fill("Title", 0, "Battery").text());
	}

	@Test
	void namesAreChosenByTheirTitles() {
		Hand hand = new Hand("test @fuse {\n  results whole, blown\n}\n");
		assertEquals(List.of("Digital multimeter"), hand.titles("Needs", 0));
		assertEquals("test fuse {\n  results whole, blown\n  needs multimeter\n}\n", hand.fill("Needs", 0, "digital").text());
		assertEquals("Digital multimeter", hand.shown("Needs", 0));
		hand.fill("Needs", 0, "Hammer");
		assertEquals("There is nothing here that is called “Hammer”. Choose from the list, whose last line adds it.", hand.refused);
	}

	@Test
	void aConditionIsRowsOfWhatAndHow() {
		Hand hand = new Hand("rule r {\n  given no_crank // why\n  @run rest_voltage\n}\n");
		assertEquals("Engine does not crank", hand.shown("Given", 0));
		assertEquals(List.of("", "present", "absent", "unexplained", "not present", "not absent", "not unexplained").stream().sorted().toList(),
				hand.offered("Given", 0).stream().sorted().toList());
		hand.press("Given", Bit.Kind.ADD, 0).fill("Given", 1, "Battery voltage at rest").pick("Given", 2, "below").fill("Given", 2, "12.4 V");
		assertEquals("rule r {\n  given no_crank, rest_voltage below 12.4 V // why\n  run rest_voltage\n}\n", hand.text());
		hand.pick("Given", 0, "any of these");
		assertEquals("rule r {\n  given no_crank or rest_voltage below 12.4 V // why\n  run rest_voltage\n}\n", hand.text());
		hand.press("Given", Bit.Kind.REMOVE, 0);
		assertEquals("rule r {\n  given rest_voltage below 12.4 V // why\n  run rest_voltage\n}\n", hand.text());
	}

	@Test
	void groupsOfConditionsStandInParentheses() {
		Hand hand = new Hand("rule r {\n  given no_crank, low_supply\n  @run rest_voltage\n}\n").press("Given", Bit.Kind.ADD_GROUP, 0);
		assertEquals("rule r {\n  given no_crank, low_supply\n  run rest_voltage\n}\n", hand.text());
		hand.fill("Given", 2, "bcm").pick("Given", 4, "silent").fill("Given", 3, "lamp").pick("Given", 5, "is").fill("Given", 4, "dark");
		assertEquals("rule r {\n  given no_crank, low_supply, (bcm silent or lamp is dark)\n  run rest_voltage\n}\n", hand.text());
	}

	@Test
	void whatATestCanGiveIsOffered() {
		assertEquals(List.of("below", "at most", "above", "at least", "value"), new Hand("rule r {\n  @run rest_voltage\n}\n").offered("Expect", 0));
		Hand hand = new Hand("rule r {\n  @run rest_voltage\n}\n").pick("Expect", 0, "value").fill("Expect", 0, "12.4 V").press("Expect", Bit.Kind.ADD, 0);
		assertEquals("rule r {\n  run rest_voltage\n  expect 12.4 V .. 13 V\n}\n", hand.fill("Expect", 1, "13 V").text());
	}

	@Test
	void outcomesAreATableOfResultsAndVerdicts() {
		Hand hand = new Hand("rule r {\n  run lamp\n  @on dark : suspects battery.flat // so far\n  on lit  : clears battery.flat\n}\n");
		assertEquals("Battery flat", hand.shown("Outcome", 1));
		assertEquals("rule r {\n  run lamp\n  on dark : confirms battery.flat // so far\n  on lit  : clears battery.flat\n}\n",
				hand.pick("Outcome", 1, "confirms").text());
		assertEquals(List.of("lit", "dark"), hand.titles("Outcome", 0));
	}

	@Test
	void whatAJobFoundOfACodeMayBeItsStatusByte() {
		Hand hand = new Hand("job @\"Lamp\" {\n  found low_supply\n}\n");
		assertTrue(hand.offered("Found", 0).containsAll(List.of("active", "status")), hand.offered("Found", 0).toString());
		assertEquals("job \"Lamp\" {\n  found low_supply status 2F\n}\n", hand.pick("Found", 0, "status").fill("Found", 1, "2F").text());
	}

	@Test
	void whereOnlyAValueFitsNobodyChoosesThatFirst() {
		Hand hand = new Hand("job @\"Lamp\" {\n  found lamp\n}\n");
		assertEquals(List.of("lit", "dark"), hand.titles("Found", 1));
		assertEquals("job \"Lamp\" {\n  found lamp dark\n}\n", hand.fill("Found", 1, "dark").text());
		hand = new Hand("job @\"Lamp\" {\n  found lamp dark\n}\n").press("Found", Bit.Kind.ADD, 0).fill("Found", 2, "rest_voltage");
		assertEquals("job \"Lamp\" {\n  found lamp dark, rest_voltage 12.4 V\n}\n", hand.fill("Found", 3, "12.4 V").text());
	}

	@Test
	void aCommaBeforeThreeDigitsIsAskedAbout() {
		Hand hand = new Hand("rule r {\n  @run rest_voltage\n  expect at_least 11 V\n}\n");
		assertEquals("rule r {\n  run rest_voltage\n  expect at_least 11 V\n}\n", hand.fill("Expect", 0, "12,000 mV").text());
		assertTrue(hand.refused.contains("may mean two numbers"), hand.refused);
		assertEquals("rule r {\n  run rest_voltage\n  expect at_least 12.5 V\n}\n", hand.fill("Expect", 0, "12,5 V").text());
	}

	@Test
	void whatIsMissingIsAddedWhereItIsNamed() {
		Hand hand = new Hand("rule r {\n  @run rest_voltage\n}\n");
		assertEquals(List.of("sign"), hand.addable("Given", 0));
		assertEquals(List.of("test"), hand.addable("Run", 0));
		assertEquals("rule r {\n  given hums_at_night\n  run rest_voltage\n}\n\nsign hums_at_night \"Hums at night\"\n",
				hand.add("Given", 0, "sign", "Hums at night").text());
		assertEquals("", hand.refused);
		hand = new Hand("rule r {\n  @run rest_voltage\n}\n").add("Given", 0, "sign", "...");
		assertEquals("No name can be made of \u201c...\u201d. Use letters.", hand.refused);
		assertEquals(List.of(), new Hand("repair fill {\n  @fixes battery.flat\n}\n").addable("Fixes", 0), "a fault stands in its part");
	}

	@Test
	void whatIsAddedFromANewCardStandsBeforeIt() {
		Hand hand = new Hand("@").begin("code").fill("Title", 0, "Wet").add("Module", 0, "module", "Door box");
		assertTrue(hand.text().contains("module door_box \"Door box\"\n"), hand.text());
	}

	@Test
	void anElementIsWrittenOnceMoreWithANameAndATitleOfItsOwn() {
		assertEquals("// why\npart lamp \"Lamp\" {\n  fault broken\n}\n\npart lamp_2 \"Lamp (copy)\" {\n  fault broken\n}\n",
				new Hand("// why\npart @lamp \"Lamp\" {\n  fault broken\n}\n").duplicate().text());
		assertEquals("job \"J\" {\n}\n\njob \"J (copy)\" {\n}\n", new Hand("job @\"J\" {\n}\n").duplicate().text());
		String twice = new Hand("sign a@bc \"Abc\"\n").duplicate().duplicate().text();
		assertTrue(twice.contains("sign abc_2 \"Abc (copy)\"") && twice.contains("sign abc_3 \"Abc (copy 2)\""), twice);
	}

	@Test
	void theFirstOutcomeOfARuleIsBegunWithAResult() {
		Hand hand = new Hand("rule r {\n  @run lamp\n}\n");
		assertEquals(List.of("otherwise", "on"), hand.offered("Outcome", 0));
		assertEquals(List.of("lit", "dark"), hand.pick("Outcome", 0, "on").titles("Outcome", 0));
	}

	@Test
	void stepsOfAVerificationAreAddedAndMoved() {
		Hand hand = new Hand("""
				repair fill "Fill" {
				  fixes battery.flat
				  verify {
				    clear bcm // first
				    @repeat what confirmed
				  }
				}
				""").press("Verify", Bit.Kind.ADD, 0).pick("Verify", 2, "read").fill("Verify", 1, "Body control module");
		assertEquals("""
				repair fill "Fill" {
				  fixes battery.flat
				  verify {
				    clear bcm // first
				    repeat what confirmed
				    read bcm
				  }
				}
				""", hand.text());
		assertEquals("repair fill {\n  steps \"Second.\" \"First.\"\n}\n",
				new Hand("repair @fill {\n  steps \"First.\" \"Second.\"\n}\n").press("Steps", Bit.Kind.DOWN, 0).text());
	}

	@Test
	void linesOfOneKindChangePlaces() {
		assertEquals("part lamp {\n  fault b \"B\"\n  fault a // first\n}\n",
				new Hand("part @lamp {\n  fault a\n  fault b \"B\" // first\n}\n").up("Fault", 1).text());
	}

	@Test
	void anElementIsWrittenOnceItsHeadIsWhole() {
		Hand hand = new Hand("sign dark \"Dark\"\n@").begin("code").fill("Title", 0, "Lamp circuit open");
		assertEquals("sign dark \"Dark\"\n", hand.text());
		hand.fill("Module", 0, "Body control module").pick("Code", 0, "dtc").fill("Code", 0, "B1001");
		assertEquals("sign dark \"Dark\"\n\ncode lamp_circuit_open \"Lamp circuit open\" on bcm = dtc B1001\n", hand.text());
		assertEquals("Lamp circuit open", hand.card().title());
		assertEquals("sign dark \"Dark\"\n\npart lamp \"Lamp\" {\n}\n", new Hand("sign dark \"Dark\"\n@").begin("part").fill("Title", 0, "Lamp").text());
	}

	@Test
	void anElementGoesWithTheCommentThatStandsOnIt() {
		String before = "// the file\n\nsign dark\n\n// about the lamp\n// and its wire\nsign lit @\n\nsign off\n";
		assertEquals("// the file\n\nsign dark\n\nsign off\n", new Hand(before).deleteElement().text());
		assertEquals("sign dark\n", new Hand("sign dark\n\nsign lit@\n").deleteElement().text());
	}

	@Test
	void whatCannotBeReadIsShownAsItIsWrittenAndNothingElseChanges() {
		Hand hand = new Hand("test fuse {\n  @takes soon\n  cost 3\n}\n");
		assertEquals("takes soon", hand.field("As written").lines().get(0).bits().get(0).value());
		assertEquals("test fuse {\n  takes soon\n  cost 4\n}\n", hand.fill("Cost", 0, "4").text());
	}

	@Test
	void anElementWithoutItsBraceIsNeverWrittenOver() {
		Card card = new Hand("sign dark\ntest fuse {\n  @takes 8 min\n").card();
		assertEquals("This test, in line 2, cannot be read, so it cannot be shown as a card. Put it right in the text.", card.unread().orElseThrow().sentence());
		assertEquals(List.of(), card.fields());
	}

	@Test
	void aFamilyWithoutBracesGetsThem() {
		Hand hand = new Hand("family wren \"Wren\" @like tarn // ours\n").fill("Trait", 0, "doors");
		hand.pick("Trait", 0, "named values").fill("Trait", 1, "Two");
		assertEquals("family wren \"Wren\" like tarn {\n  trait doors : two \"Two\"\n} // ours\n", hand.text());
	}

	@Test
	void everyAuthorSignsOnADay() {
		assertEquals("rule r {\n  by \"A. Author\" on 2026-04-01\n}\n", new Hand("rule @r {\n}\n").fill("By", 0, "A. Author").text());
	}

	@Test
	void everyKindOfElementAndEveryAlternativeHasPlainWords() {
		for (String word : Cursor.in("@").services().cards().kinds()) {
			assertTrue(Labels.isNamed(word), word);
			assertFalse(Labels.explained(word).isBlank(), word);
			assertFalse(Labels.element(word).contains("_"), word);
		}
		Hand family = new Hand("family @f \"F\" {\n  trait engine : petrol\n}\n");
		assertEquals(List.of("named values", "a number from … to …"), family.offered("Trait", 0));
		assertEquals("Values", new Hand("state @s \"S\" : off, on\n").field("Values").label());
		assertEquals(List.of("do not drive", "do not start", "make safe"),
				new Hand("sign @s \"S\"\n").press("Precaution", Bit.Kind.ADD, 0).offered("Precaution", 0));
	}

	@Test
	void everyChoiceIsSaidInWordsOfTheTradeAndNotOfTheGrammar() {
		Set<String> sorts = Arrays.stream(Shape.Sort.values()).map(sort -> sort.name().toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
		int seen = 0;
		for (Form form : Cursor.in("@").services().cards().forms().values()) {
			List<Shape> shapes = new ArrayList<>(form.clauses());
			shapes.add(form.head());
			for (int i = 0; i < shapes.size(); i++) {
				Shape shape = shapes.get(i);
				if (shape instanceof Shape.Choice choice) {
					seen++;
					choice.options().forEach(option -> assertFalse(sorts.contains(Bits.label(option)), () -> form.element().word() + ": " + Bits.label(option)));
				}
				shapes.addAll(shape instanceof Shape.Choice choice ? choice.options() : shape instanceof Shape.Row row ? row.parts()
						: shape instanceof Shape.Maybe maybe ? List.of(maybe.part()) : shape instanceof Shape.Many many ? List.of(many.item())
						: shape instanceof Shape.Condition condition ? List.of(condition.atom()) : List.of());
			}
		}
		assertTrue(seen > 20);
	}

	@Test
	void whatIsEmptySaysWhatBelongsThere() {
		Hand hand = new Hand("test @t \"T\" {\n  measures V 0 .. 18 step 0.1\n}\n");
		assertEquals(List.of("unit, such as V", "from", "to", "step"), hand.field("Measures").lines().get(0).bits().stream().map(Bit::hint)
				.filter(hint -> !hint.isEmpty()).toList());
		assertEquals(List.of("file", "what it shows"), hand.field("Picture").lines().get(0).bits().stream().map(Bit::hint).toList());
		assertTrue(hand.field("Measures").help().endsWith("A test either measures or has named results."));
	}

	@Test
	void aWorkshopIsFilledIn() {
		Hand hand = new Hand("@tool recorder \"Recorder\"\n").begin("workshop").fill("Title", 0, "Yard");
		assertEquals("tool recorder \"Recorder\"\n\nworkshop \"Yard\" {\n}\n", hand.text());
		hand.fill("Price of an hour", 0, "72").pick("Reading modules", 0, "each").press("Reading modules", Bit.Kind.ADD, 0).fill("Reading modules", 0, "4 min");
		hand.fill("Tools not at hand", 0, "Recorder").pick("Highest skill at hand", 0, "trained");
		assertEquals("""
				tool recorder "Recorder"

				workshop "Yard" {
				  hour 72
				  scan each takes 4 min
				  lacks recorder
				  skill trained
				}
				""", hand.text());
		assertEquals(List.of("Title", "Price of an hour", "Reading modules", "Tools not at hand", "Highest skill at hand"),
				hand.card().fields().stream().map(Card.Field::label).toList());
	}

	@Test
	void howLongGettingToAValueTakesIsFilledIn() {
		assertEquals("state net : awake, asleep \"Asleep\" takes 20 min\n",
				new Hand("state @net : awake, asleep \"Asleep\"\n").press("Values", Bit.Kind.ADD, 1).fill("Values", 4, "20 min").text());
	}
}
