package org.baywright.model;

import org.baywright.model.code.CodeText;

/** A trouble code that a module can hold. A code of a silent module is unread: neither present nor absent. */
public record Code(String name, String title, String module, CodeText text, Span span) implements Named {
}
