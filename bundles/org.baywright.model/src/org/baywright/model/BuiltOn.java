package org.baywright.model;

/**
 * Another project, or a rule pack, whose elements are among those of a project that builds on it.
 *
 * @param path where it lies, relative to the project that builds on it, with forward slashes
 * @param meaning fingerprint of what it says now
 * @param rules what it says by itself, with what it builds on in turn
 * @param span where the project that builds on it says so
 */
public record BuiltOn(String path, String meaning, RuleBase rules, Span span) {
}
