package org.baywright.language.ide;

import com.google.inject.Injector;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.baywright.analysis.Report;
import org.baywright.language.formatting2.Formatting;
import org.baywright.language.ide.card.Card;
import org.baywright.language.ide.card.Cards;
import org.baywright.language.ide.card.Change;
import org.baywright.language.ide.card.Drafts;
import org.baywright.language.ide.colour.Coloured;
import org.baywright.language.ide.colour.Colouring;
import org.baywright.language.ide.complete.Completion;
import org.baywright.language.ide.complete.Proposal;
import org.baywright.language.ide.complete.Skeleton;
import org.baywright.language.ide.fix.Fixes;
import org.baywright.language.ide.fix.QuickFix;
import org.baywright.language.ide.fix.Signature;
import org.baywright.language.ide.fold.Fold;
import org.baywright.language.ide.fold.Folding;
import org.baywright.language.ide.hover.Hover;
import org.baywright.language.ide.hover.Hovering;
import org.baywright.language.ide.hover.RuleUses;
import org.baywright.language.ide.layout.LayingOut;
import org.baywright.language.ide.mining.Mining;
import org.baywright.language.ide.mining.Minings;
import org.baywright.language.ide.names.Renaming;
import org.baywright.language.ide.names.Target;
import org.baywright.language.ide.names.Usages;
import org.baywright.language.ide.names.Use;
import org.baywright.language.ide.outline.FoundSymbol;
import org.baywright.language.ide.outline.Outline;
import org.baywright.language.ide.outline.OutlineItem;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.ide.typing.AutoEdit;
import org.baywright.language.ide.typing.Typed;
import org.baywright.language.services.BayGrammarAccess;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.PictureFile;
import org.baywright.model.RuleBase;
import org.eclipse.xtext.nodemodel.INode;

/**
 * What an editor asks of a project. Places are offsets into the texts that the project holds; {@link RuleProject#update}
 * comes first. A file is named by its path relative to the project; of one that the project lacks there is nothing to
 * say. Each method holds the project's lock while it reads, so it can be called from any thread but the one that draws.
 */
public final class EditorServices {

	private final RuleProject project;
	private final Clock clock;
	private final Usages usages;
	private final Completion completion;
	private final LayingOut layout;
	private final Cards cards;
	private volatile Supplier<String> author = () -> "";
	private RuleBase counted;
	private RuleUses uses;

	/** @param project the project */
	public EditorServices(RuleProject project) {
		this(project, Clock.systemDefaultZone());
	}

	/**
	 * @param project the project
	 * @param clock tells the date of today
	 */
	public EditorServices(RuleProject project, Clock clock) {
		this.project = project;
		this.clock = clock;
		Injector injector = project.services();
		usages = new Usages(project);
		completion = new Completion(injector.getInstance(BayGrammarAccess.class), clock);
		layout = new LayingOut(injector.getInstance(Formatting.class));
		cards = new Cards(injector.getInstance(BayGrammarAccess.class).getGrammar(), completion);
	}

	/** Says who writes here: an author's name, or the empty text while nobody has given one. Fixes sign with it. */
	public void signAs(Supplier<String> name) {
		author = name;
	}

	/** Returns the project. */
	public RuleProject project() {
		return project;
	}

	private Optional<String> text(String file) {
		return project.source(file).map(source -> source.text());
	}

	private static int within(String text, int offset) {
		return Math.max(0, Math.min(offset, text.length()));
	}

	private RuleUses uses(RuleBase base) {
		if (counted != base) {
			counted = base;
			uses = RuleUses.of(base);
		}
		return uses;
	}

	// ---- writing ---------------------------------------------------------------------------------------------------

	/** Returns what can be written at a place, best first. */
	public List<Proposal> complete(String file, int offset) {
		synchronized (project) {
			return text(file).map(text -> completion.at(project.names(), text, within(text, offset),
					() -> project.root().map(PictureFile::in).orElse(List.of()))).orElse(List.of());
		}
	}

	/** Returns skeletons of whole elements, the usual ones first. */
	public List<Skeleton> templates() {
		return completion.templates();
	}

	/** Returns what to do in place of inserting what was typed; see {@link AutoEdit#at}. */
	public static Optional<Typed> autoEdit(String text, int offset, String typed) {
		return AutoEdit.at(text, within(text, offset), typed);
	}

	/** Returns what lays a file out, or nothing if its syntax is wrong. */
	public Optional<List<TextEdit>> format(String file) {
		return format(file, 0, Integer.MAX_VALUE / 2);
	}

	/** Returns what lays a part of a file out, or nothing if the file's syntax is wrong. */
	public Optional<List<TextEdit>> format(String file, int offset, int length) {
		synchronized (project) {
			return project.resource(file).flatMap(tree -> layout.changes(tree, text(file).orElseThrow(), offset, length));
		}
	}

	/** Returns what answers the problems and flaws that touch a range; see {@link Fixes#at}. */
	public List<QuickFix> fixes(String file, int offset, int length, Snapshot snapshot, Optional<Report> report) {
		return Fixes.at(file, offset, length, snapshot, report, new Signature(author.get(), LocalDate.now(clock)));
	}

	// ---- cards -----------------------------------------------------------------------------------------------------

	/** Returns what makes changes of the text of what is done on a card; it needs no lock. */
	public Cards cards() {
		return cards;
	}

	/** Returns the elements of a file, also those that cannot be read. */
	public List<Card.Item> cardItems(String file) {
		return text(file).map(cards::items).orElse(List.of());
	}

	/**
	 * Returns the card of the element at a place.
	 *
	 * @param drafts what was begun on it and cannot be written yet
	 * @param report what was found in this text, if it was checked
	 */
	public Optional<Card> card(String file, int offset, Drafts drafts, Optional<Report> report) {
		synchronized (project) {
			return text(file).flatMap(text -> cards.card(project.names(), file, text, offset, drafts, project.snapshot().problems(), report));
		}
	}

	/** Returns the card of an element that is not written yet; {@link Cards#kinds} are the kinds. */
	public Optional<Card> blankCard(String file, String kind, Drafts drafts) {
		synchronized (project) {
			return text(file).flatMap(text -> cards.blank(project.names(), file, text, kind, drafts));
		}
	}

	/** Returns the names that fit at a place of a line of a card, with their titles, best first. */
	public List<Change.Named> cardChoices(Card card, String line, List<Integer> path) {
		synchronized (project) {
			return cards.choices(project.names(), card, line, path);
		}
	}

	/** Adds what is not there yet and names it on a line of a card; see {@link Cards#changeAdding}. */
	public Cards.Outcome cardAdding(Card card, String line, List<Integer> path, String kind, String title, Drafts drafts, LocalDate today) {
		synchronized (project) {
			return cards.changeAdding(project.names(), card, line, path, kind, title, drafts, today);
		}
	}

	/** Returns where what an element declares is named elsewhere, sorted. */
	public List<Use> usedElsewhere(Card card) {
		synchronized (project) {
			return usages.all(card.file()).stream().filter(named -> named.use().declaration() && isIn(named.use(), card))
					.flatMap(named -> usages.of(named.target()).stream()).filter(use -> !use.file().equals(card.file()) || !isIn(use, card))
					.distinct().sorted().toList();
		}
	}

	private static boolean isIn(Use use, Card card) {
		return use.offset() >= card.offset() && use.offset() < card.offset() + card.length();
	}

	// ---- names -----------------------------------------------------------------------------------------------------

	/** Returns what the name at a place means. */
	public Optional<Target> target(String file, int offset) {
		synchronized (project) {
			return usages.at(file, offset).map(Usages.Named::target);
		}
	}

	/** Returns where the thing at a place is declared; a trait can be declared in several families. */
	public List<Use> definition(String file, int offset) {
		return references(file, offset, true).stream().filter(Use::declaration).toList();
	}

	/** Returns where the thing at a place is named, sorted. */
	public List<Use> references(String file, int offset, boolean withDeclaration) {
		synchronized (project) {
			return usages.at(file, offset).map(named -> usages.of(named.target())).orElse(List.of()).stream()
					.filter(use -> withDeclaration || !use.declaration()).toList();
		}
	}

	/** Returns where the thing at a place is named in the same file; a declaration counts as writing. */
	public List<Use> occurrences(String file, int offset) {
		synchronized (project) {
			return usages.at(file, offset).map(named -> usages.in(file, named.target())).orElse(List.of());
		}
	}

	/** Returns the name that {@link #rename} would change. */
	public Optional<Use> prepareRename(String file, int offset) {
		synchronized (project) {
			return new Renaming(project, usages).prepare(file, offset);
		}
	}

	/** Returns why a name cannot be given, if it cannot; see {@link Renaming#refused}. */
	public Optional<String> refusedName(String file, int offset, String newName) {
		synchronized (project) {
			return new Renaming(project, usages).refused(file, offset, newName);
		}
	}

	/** Gives the thing at a place another name, in all files; see {@link Renaming#rename}. */
	public Renaming.Result rename(String file, int offset, String newName) {
		synchronized (project) {
			return new Renaming(project, usages).rename(file, offset, newName);
		}
	}

	/** Returns names of the project; see {@link Outline#symbols}. */
	public List<FoundSymbol> symbols(String query) {
		synchronized (project) {
			return Outline.symbols(project.names(), query);
		}
	}

	// ---- reading ---------------------------------------------------------------------------------------------------

	/** Explains what stands at a place. */
	public Optional<Hover> hover(String file, int offset) {
		synchronized (project) {
			RuleBase base = project.snapshot().rules();
			return text(file).flatMap(text -> new Hovering(usages).at(file, text, offset, base, uses(base)));
		}
	}

	/** Returns the elements of a file. */
	public List<OutlineItem> outline(String file) {
		synchronized (project) {
			return project.tree(file).map(Outline::of).orElse(List.of());
		}
	}

	/** Returns what can be folded in a file. */
	public List<Fold> folds(String file) {
		return text(file).map(Folding::of).orElse(List.of());
	}

	/** Returns a colour for each word of a file that is not plain, in the order of the text. */
	public List<Coloured> colours(String file) {
		synchronized (project) {
			return project.tree(file).map(tree -> {
				INode root = tree.getParseResult() == null ? null : tree.getParseResult().getRootNode();
				return Colouring.of(text(file).orElseThrow(), root, usages.all(file));
			}).orElse(List.of());
		}
	}

	/** Returns what there is to tell beside the declarations of a file; see {@link Minings}. */
	public List<Mining> minings(String file, Optional<Report> report) {
		synchronized (project) {
			if (project.tree(file).isEmpty()) {
				return List.of();
			}
			return new Minings(project.snapshot().rules(), uses(project.snapshot().rules()), report).of(usages.all(file));
		}
	}
}
