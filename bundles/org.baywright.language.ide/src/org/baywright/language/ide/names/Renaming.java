package org.baywright.language.ide.names;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.language.conversion.Texts;
import org.baywright.language.ide.text.Spelled;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Symbol;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.Span;

/** Gives a thing another name, wherever it is named. */
public final class Renaming {

	private final RuleProject project;
	private final ProjectIndex index;
	private final Usages usages;

	/**
	 * @param project the project
	 * @param usages where names stand in it
	 */
	public Renaming(RuleProject project, Usages usages) {
		this.project = project;
		index = project.names();
		this.usages = usages;
	}

	/** What comes of a wish for another name. */
	public sealed interface Result {
	}

	/** The changes of each file, by file and place. */
	public record Changes(SortedMap<String, List<TextEdit>> edits) implements Result {
	}

	/** Why the name cannot be given, in one plain sentence. */
	public record Refused(String message) implements Result {
	}

	/**
	 * Gives the thing at a place another name.
	 *
	 * @param file path relative to the project
	 * @param offset where its name stands
	 * @param newName the name without part and without {@code ^}, which is added where it is needed
	 */
	public Result rename(String file, int offset, String newName) {
		Optional<String> refused = refused(file, offset, newName);
		if (refused.isPresent()) {
			return new Refused(refused.get());
		}
		Target target = usages.at(file, offset).orElseThrow().target();
		String name = Texts.plainName(newName.strip());
		return name.equals(target.simpleName()) ? new Changes(new TreeMap<>()) : changes(target, name);
	}

	/** Returns why a name cannot be given, in one plain sentence, or nothing if it can; the parameters are those of {@link #rename}. */
	public Optional<String> refused(String file, int offset, String newName) {
		Optional<Usages.Named> named = usages.at(file, offset);
		if (named.isEmpty()) {
			return Optional.of("There is no name here that could be changed.");
		}
		String name = Texts.plainName(newName.strip());
		if (!Spelled.isName(name)) {
			return Optional.of("`" + newName + "` is not a valid name. A name is made of letters, digits and _ and begins with a letter.");
		}
		Target target = named.get().target();
		Optional<Use> elsewhere = usages.of(target).stream().filter(use -> use.declaration() && Span.isElsewhere(use.file())).findFirst();
		if (elsewhere.isPresent()) {
			return Optional.of("`" + target.simpleName() + "` is declared in " + elsewhere.get().file()
					+ ", which this project only builds on. Rename it there.");
		}
		return name.equals(target.simpleName()) ? Optional.empty() : taken(target, name);
	}

	private Changes changes(Target target, String name) {
		String written = target.value().isPresent() ? Spelled.writtenValue(name) : Spelled.written(name);
		SortedMap<String, List<TextEdit>> edits = new TreeMap<>();
		for (Use use : usages.of(target)) {
			if (Span.isElsewhere(use.file())) {
				continue; // what is built on knows nothing of this name; it only has an error that it shares
			}
			edits.computeIfAbsent(use.file(), none -> new ArrayList<>())
					.add(new TextEdit(use.offset(), use.length(), written));
		}
		return new Changes(Followers.follow(project, edits, target.simpleName(), name));
	}

	private Optional<String> taken(Target target, String name) {
		if (target.value().isPresent()) {
			boolean taken = index.all(target.kind()).stream().filter(owner -> owner.name().equals(target.name()))
					.anyMatch(owner -> Values.names(owner.element()).contains(name));
			return taken ? Optional.of("`" + target.name() + "` has a value `" + name + "` already.") : Optional.empty();
		}
		String full = target.kind() == Kind.FAULT ? target.name().substring(0, target.name().indexOf('.') + 1) + name : name;
		Key key = target.kind().isSubject() ? Key.subject(full) : Key.of(target.kind(), full);
		for (Symbol other : index.get(key)) {
			return Optional.of("There is already " + other.kind().aWord() + " `" + full + "` in " + other.file() + ".");
		}
		return Optional.empty();
	}

	/** Returns the place of the name that can be changed here, if there is one. */
	public Optional<Use> prepare(String file, int offset) {
		return usages.at(file, offset).map(Usages.Named::use);
	}
}
