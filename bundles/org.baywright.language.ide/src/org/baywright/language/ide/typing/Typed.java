package org.baywright.language.ide.typing;

import org.baywright.language.ide.text.TextEdit;

/**
 * What becomes of something typed.
 *
 * @param edit the change to make in place of inserting what was typed
 * @param caret where the cursor stands afterwards, in the changed text
 */
public record Typed(TextEdit edit, int caret) {
}
