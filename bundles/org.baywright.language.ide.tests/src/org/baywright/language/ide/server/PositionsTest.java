package org.baywright.language.ide.server;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.baywright.language.ide.complete.Slot;
import org.baywright.language.text.SourceText;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.junit.jupiter.api.Test;

class PositionsTest {

	private static final String MIXED = "a\r\nb\u00e4\ud83d\ude97c\rd\n\ne";

	@Test
	void everyOffsetHasAPositionAndBack() {
		SourceText text = new SourceText("x", MIXED);
		for (int offset = 0; offset <= MIXED.length(); offset++) {
			Position position = Positions.range(text, offset, 0).getStart();
			boolean withinLineEnd = offset > 0 && offset < MIXED.length() && MIXED.charAt(offset - 1) == '\r'
					&& MIXED.charAt(offset) == '\n';
			assertEquals(withinLineEnd ? offset - 1 : offset, Positions.offset(MIXED, position), "offset " + offset);
		}
	}

	@Test
	void positionsBeyondTheTextAreItsEnds() {
		assertEquals(1, Positions.offset(MIXED, new Position(0, 99)));
		assertEquals(MIXED.length(), Positions.offset(MIXED, new Position(99, 0)));
		assertEquals(0, Positions.offset("", new Position(0, 3)));
	}

	/** Pieces of a text exchanged by position give what the same pieces exchanged by offset give. */
	@Test
	void changesByPosition() {
		Random random = new Random(3);
		String plain = MIXED.repeat(5).replace("\r\n", "\n");
		Document document = new Document("u", 0, plain);
		for (int i = 1; i <= 300; i++) {
			int from = random.nextInt(plain.length() + 1);
			int to = from + random.nextInt(Math.min(5, plain.length() - from + 1));
			String piece = "x\n\u00e4yz".substring(0, random.nextInt(6));
			Range range = Positions.range(new SourceText("x", plain), from, to - from);
			document = document.changed(i, List.of(new TextDocumentContentChangeEvent(range, piece)));
			plain = plain.substring(0, from) + piece + plain.substring(to);
			assertEquals(plain, document.text());
		}
		assertEquals(300, document.version());
	}

	@Test
	void placesMoveWithTheText() {
		SourceText old = new SourceText("x", "one\ntwo\nthree\n");
		Moved moved = new Moved(old.text(), new SourceText("x", "one\nnew\ntwo!\nthree\n"));
		assertEquals(Optional.of(old.span(0, 3)), moved.place(old.span(0, 3)));
		assertEquals(Optional.of(new SourceText("x", "one\nnew\ntwo!\nthree\n").span(13, 5)), moved.place(old.span(8, 5)));
		assertEquals(Optional.empty(), moved.place(old.span(3, 6)));
	}

	@Test
	void snippetsKeepTheirSigns() {
		assertEquals("a \\$\\} ${1:b\\\\} c ${1:b\\\\}", Completions.snippet("a $} b\\ c b\\", List.of(new Slot(5, 2, 1), new Slot(10, 2, 1))));
	}
}
