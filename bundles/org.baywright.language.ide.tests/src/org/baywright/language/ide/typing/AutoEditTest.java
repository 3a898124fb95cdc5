package org.baywright.language.ide.typing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.junit.jupiter.api.Test;

class AutoEditTest {

	private static void typed(String before, String typed, String after) {
		int offset = before.indexOf('@');
		String text = before.replace("@", "");
		Typed done = EditorServices.autoEdit(text, offset, typed)
				.orElse(new Typed(TextEdit.insert(offset, typed), offset + typed.length()));
		assertEquals(after, Cursor.mark(Edits.apply(text, List.of(done.edit())), done.caret()));
	}

	@Test
	void pairs() {
		typed("rule a @", "{", "rule a {@}");
		typed("rule a {@}", "}", "rule a {}@");
		typed("rule a @b", "{", "rule a {@b");
		typed("because @", "\"", "because \"@\"");
		typed("because \"x@\"", "\"", "because \"x\"@");
		typed("because \"x@", "\"", "because \"x\"@");
		typed("is any of @", "(", "is any of (@)");
		typed("is any of (a@)", ")", "is any of (a)@");
	}

	@Test
	void nothingInTextsAndComments() {
		typed("because \"@\"", "{", "because \"{@\"");
		typed("// @", "{", "// {@");
		typed("// @", "\"", "// \"@");
	}

	@Test
	void newLines() {
		typed("rule a {@}", "\n", "rule a {\n  @\n}");
		typed("rule a {@", "\n", "rule a {\n  @");
		typed("rule a {\n  given b@\n}", "\n", "rule a {\n  given b\n  @\n}");
		typed("rule a {\n  given b,@\n}", "\n", "rule a {\n  given b,\n        @\n}");
		typed("rule a {\n  given b,\n        c@\n}", "\n", "rule a {\n  given b,\n        c\n  @\n}");
		typed("sign a@", "\n", "sign a\n@");
		typed("  // a @b", "\n", "  // a \n  // @b");
		typed("  // a@", "\n", "  // a\n  @");
		typed("  because \"a@\"", "\n", "  because \"a\n  @\"");
	}

	@Test
	void aClosingBraceGoesBack() {
		typed("rule a {\n  given b\n  @\n", "}", "rule a {\n  given b\n}@\n");
		typed("rule a {\n  given b @\n", "}", "rule a {\n  given b }@\n");
	}

	@Test
	void theBraceThatFollowsIsTheOneTyped() {
		typed("rule a {\n  given b\n  @\n}\n", "}", "rule a {\n  given b\n}@\n");
		typed("rule a {\r\n  given b\r\n  @\r\n}\r\n", "}", "rule a {\r\n  given b\r\n}@\r\n");
		typed("rule a {\n  given b@\n}", "}", "rule a {\n  given b\n}@");
		typed("rule a { b @ }", "}", "rule a { b  }@");
		typed("part x }\nrepair a {\n  verify { b@\n}\n", "}", "part x }\nrepair a {\n  verify { b}@\n}\n");
		typed("part x }\nrepair a {\n  verify {\n    b@\n}\n", "}", "part x }\nrepair a {\n  verify {\n    b}@\n}\n");
		typed("part a {\n  outcome {\n    x\n    @\n  }\n}\n", "}", "part a {\n  outcome {\n    x\n  }@\n}\n");
	}

	@Test
	void aBraceThatIsMissingIsWritten() {
		typed("part a {\n  outcome {\n    x\n  @\n}\n", "}", "part a {\n  outcome {\n    x\n}@\n}\n");
		typed("rule a {\n  given b // {\n  @\n}\n", "}", "rule a {\n  given b // {\n}@\n");
		typed("rule a @\n  given b\n}\n", "{", "rule a {@\n  given b\n}\n");
	}
}
