package org.baywright.language.ide.names;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.WeakHashMap;
import org.baywright.language.ide.text.Words;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Symbol;
import org.baywright.language.index.ValueOwner;
import org.baywright.language.workspace.RuleProject;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.resource.XtextResource;

/**
 * Finds what names mean and where they stand. What one file says is kept until its text changes. Callers hold the
 * project's lock.
 */
public final class Usages {

	private final RuleProject project;
	private final Map<XtextResource, List<Written>> known = new WeakHashMap<>();

	/** @param project the project to search */
	public Usages(RuleProject project) {
		this.project = project;
	}

	/** A name at a place and what it means. */
	public record Named(Target target, Use use) {
	}

	private List<Written> written(String file) {
		return project.tree(file).map(tree -> known.computeIfAbsent(tree, Usages::read)).orElse(List.of());
	}

	private static List<Written> read(XtextResource tree) {
		INode root = tree.getParseResult() == null ? null : tree.getParseResult().getRootNode();
		return Written.in(root);
	}

	/** Returns the name at an offset, which may also stand right behind it. */
	public Optional<Named> at(String file, int offset) {
		Written found = null;
		for (Written name : written(file)) {
			boolean touches = name.offset() <= offset && offset <= name.offset() + name.length();
			// of two names that touch, the one that begins here
			if (touches && (found == null || name.offset() == offset || found.offset() + found.length() <= offset)) {
				found = name;
			}
		}
		Written name = found;
		return name == null ? Optional.empty()
				: target(name).map(target -> new Named(target, use(file, text(file), name)));
	}

	/** Returns all places of a thing in one file, in the order of the text. */
	public List<Use> in(String file, Target target) {
		String text = text(file);
		List<Use> uses = new ArrayList<>();
		for (Written name : written(file)) {
			if (name.name().endsWith(target.simpleName()) && target(name).filter(target::equals).isPresent()) {
				uses.add(use(file, text, name));
			}
		}
		return uses;
	}

	/** Returns all places of a thing in the project, sorted. */
	public List<Use> of(Target target) {
		List<Use> uses = new ArrayList<>();
		project.allFiles().forEach(file -> uses.addAll(in(file, target)));
		return uses;
	}

	/** Returns each name of a file that means something, in the order of the text. */
	public List<Named> all(String file) {
		String text = text(file);
		List<Named> found = new ArrayList<>();
		for (Written name : written(file)) {
			target(name).ifPresent(target -> found.add(new Named(target, use(file, text, name))));
		}
		return found;
	}

	private Optional<Target> target(Written name) {
		if (name.owner().isPresent()) {
			return value(name.owner().get(), name.name());
		}
		if (name.kind().isPresent()) {
			boolean there = name.declaration() || !project.names().get(Key.of(name.kind().get(), name.name())).isEmpty();
			return there ? Optional.of(Target.of(name.kind().get(), name.name())) : Optional.empty();
		}
		return subject(name.name()).map(kind -> Target.of(kind, name.name()));
	}

	private Optional<Target> value(ValueOwner owner, String value) {
		Optional<Kind> kind = owner.kind().isPresent() ? owner.kind() : subject(owner.name());
		return kind.map(known -> new Target(known, owner.name(), Optional.of(value)));
	}

	private Optional<Kind> subject(String name) {
		List<Symbol> symbols = project.names().get(Key.subject(name));
		return symbols.isEmpty() ? Optional.empty() : Optional.of(symbols.get(0).kind());
	}

	private String text(String file) {
		return project.source(file).orElseThrow().text();
	}

	private static Use use(String file, String text, Written name) {
		String line = text.substring(Words.startOfLine(text, name.offset()), Words.endOfLine(text, name.offset()));
		return new Use(file, name.offset(), name.length(), line.strip(), name.declaration());
	}
}
