package org.baywright.language.workspace;

import com.google.inject.Injector;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.baywright.language.BayStandaloneSetup;
import org.baywright.language.index.IndexAdapter;
import org.baywright.language.index.ProjectIndex;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Symbol;
import org.baywright.language.syntax.CodeInSign;
import org.baywright.language.text.Nesting;
import org.baywright.language.text.SourceText;
import org.baywright.language.translate.FileTranslation;
import org.baywright.model.PictureFile;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.RuleBase;
import org.baywright.model.SignOff;
import org.baywright.model.Span;
import org.baywright.model.Workshop;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.resource.IResourceFactory;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.util.StringInputStream;

/**
 * A rule project: the texts of its files and what they say. A change of one file re-reads that file only, and translates
 * again only the files that looked up something whose meaning changed. All methods may be called from any thread; what
 * {@link #snapshot()} returns never changes.
 */
public final class RuleProject {

	private static final Comparator<Problem> ORDER = Comparator.comparing(Problem::span).thenComparing(Problem::severity)
			.thenComparing(Problem::id).thenComparing(Problem::message);

	private final String name;
	private final Optional<Path> root;
	private final Injector injector;
	private final XtextResourceSet resources;
	private final ProjectIndex index = new ProjectIndex();
	/** Its own files, and those of what it builds on. */
	private final SortedMap<String, ParsedFile> files = new TreeMap<>(ProjectIndex.FILES);
	private final Map<String, Problem> unreadable = new HashMap<>();
	private final Set<Key> changed = new HashSet<>();
	private final Grounds grounds;
	private TakenOver taken = TakenOver.NOTHING;
	private boolean isTakenOver;
	/** Its only file, if it is a rule pack; else the empty text. */
	private String pack = "";
	private Taken said;
	private RuleBase saidBy;
	private long version;
	private Snapshot snapshot;

	private RuleProject(String name, Optional<Path> root, Injector injector) {
		this(name, root, injector, new Grounds(injector));
	}

	private RuleProject(String name, Optional<Path> root, Injector injector, Grounds grounds) {
		this.grounds = grounds;
		this.name = name;
		this.root = root;
		this.injector = injector;
		resources = injector.getInstance(XtextResourceSet.class);
		IndexAdapter.attach(resources, index);
	}

	/**
	 * Opens a project.
	 *
	 * @param path a folder, whose {@code .bay} files belong to the project at any depth, or one {@code .bay} file
	 * @throws IOException if there is no such folder or file, or the folder cannot be read
	 */
	public static RuleProject open(Path path) throws IOException {
		return open(path, LoadListener.NONE);
	}

	/**
	 * Opens a project and tells a listener how far it is.
	 *
	 * @param path a folder, whose {@code .bay} files belong to the project at any depth, or one {@code .bay} file
	 * @param listener hears of each file and may cancel
	 * @throws IOException if there is no such folder or file, or the folder cannot be read
	 * @throws CancellationException if the listener cancels
	 */
	public static RuleProject open(Path path, LoadListener listener) throws IOException {
		return open(path, listener, BayStandaloneSetup.injector());
	}

	/** As {@link #open(Path, LoadListener)}, with the language's services from elsewhere. */
	public static RuleProject open(Path path, LoadListener listener, Injector injector) throws IOException {
		Path whole = path.toAbsolutePath().normalize();
		if (Files.isDirectory(whole)) {
			RuleProject project = new RuleProject(name(whole), Optional.of(whole), injector);
			ProjectFiles found = ProjectFiles.beneath(whole);
			found.passedOver().forEach(project::putProblem);
			project.load(found.files(), listener);
			return project;
		}
		if (Files.exists(whole) && !Files.isRegularFile(whole)) {
			throw new FileSystemException(path.toString(), null, "it is a pipe or a device, not a rule file");
		}
		if (!Files.isRegularFile(whole)) {
			throw new NoSuchFileException(path.toString());
		}
		String file = whole.getFileName().toString();
		String name = ProjectFiles.hasEnding(file) ? file.substring(0, file.lastIndexOf('.')) : file;
		RuleProject project = new RuleProject(name, Optional.of(whole.getParent()), injector);
		project.load(new TreeMap<>(Map.of(file, whole)), listener);
		return project;
	}

	/** Reads a project that others build on; see {@link Grounds}. */
	static RuleProject beneath(Path folder, Injector injector, Grounds grounds, int most) throws IOException {
		RuleProject project = new RuleProject(name(folder), Optional.of(folder), injector, grounds);
		ProjectFiles found = ProjectFiles.beneath(folder, most);
		found.passedOver().forEach(project::putProblem);
		project.load(found.files(), LoadListener.NONE);
		return project;
	}

	/** Returns a rule pack as a project of one file, whose path is the pack's; see {@link Grounds}. */
	static RuleProject ofPack(String name, Path pack, String text, Injector injector, Grounds grounds) {
		RuleProject project = new RuleProject(name, Optional.of(pack.getParent()), injector, grounds);
		project.pack = pack.getFileName().toString();
		project.put(project.pack, RuleText.of(text));
		return project;
	}

	private boolean isOwn(String file) {
		return !Span.isElsewhere(file) || file.equals(pack);
	}

	/**
	 * Returns the project of a folder before any of its files is read; {@link #reload} reads one.
	 *
	 * @param folder the folder
	 */
	public static RuleProject unread(Path folder) {
		Path whole = folder.toAbsolutePath().normalize();
		return new RuleProject(name(whole), Optional.of(whole), BayStandaloneSetup.injector());
	}

	private static String name(Path folder) {
		return folder.getFileName() == null ? "rules" : folder.getFileName().toString();
	}

	/**
	 * Returns the rule files that lie in a project's folder now, whether they were read or not, in order.
	 *
	 * @param folder the folder
	 * @throws IOException if it cannot be read
	 */
	public static List<String> filesIn(Path folder) throws IOException {
		return List.copyOf(ProjectFiles.beneath(folder.toAbsolutePath().normalize()).files().keySet());
	}

	/**
	 * Returns whether a file belongs to a project: its name ends in {@code .bay}, in small or capital letters, it is not
	 * hidden by a dot in front, and it lies in no folder that is, nor in one of build output ({@code target}).
	 *
	 * @param path its path relative to the project, with forward slashes
	 */
	public static boolean isRuleFile(String path) {
		return ProjectFiles.isOne(path);
	}

	/**
	 * Returns whether a file can be a picture that rules show, by its name.
	 *
	 * @param path its path relative to the project, with forward slashes
	 */
	public static boolean isPicture(String path) {
		return PictureFile.ofName(path).isEmpty();
	}

	/**
	 * Returns a project without files, to be filled by {@link #update}.
	 *
	 * @param name its name
	 */
	public static RuleProject inMemory(String name) {
		return new RuleProject(name, Optional.empty(), BayStandaloneSetup.injector());
	}

	private synchronized void load(SortedMap<String, Path> found, LoadListener listener) {
		int done = 0;
		for (Map.Entry<String, Path> entry : found.entrySet()) {
			if (listener.isCancelled()) {
				throw new CancellationException();
			}
			try {
				put(entry.getKey(), RuleText.read(entry.getValue()));
			} catch (IOException e) {
				putProblem(entry.getKey(), ProjectFiles.unreadable(entry.getKey(), e));
			}
			listener.fileRead(entry.getKey(), ++done, found.size());
		}
	}

	private void putProblem(String file, Problem problem) {
		unreadable.put(file, problem);
		changed();
	}

	/** Returns the project's name: that of its folder, or of its only file without the ending. */
	public String name() {
		return name;
	}

	/** Returns the folder, if the project was read from one. */
	public Optional<Path> root() {
		return root;
	}

	/** Returns the paths of its own files relative to the project, in order. */
	public synchronized List<String> files() {
		return files.keySet().stream().filter(this::isOwn).toList();
	}

	/** Returns the paths of its files and of those of what it builds on, these first. */
	public synchronized List<String> allFiles() {
		takeOver();
		return List.copyOf(files.keySet());
	}

	/**
	 * Gives a file a new text, or adds it to the project. Nothing is written to disk. A text equal to the present one
	 * changes nothing, and a file of what the project builds on stays as it is there.
	 *
	 * @param file path relative to the project, with forward slashes
	 * @param text all of its text
	 */
	public synchronized void update(String file, String text) {
		Objects.requireNonNull(text, "text");
		ParsedFile present = files.get(file);
		if (!Span.isElsewhere(file) && (present == null || !present.source().text().equals(text))) {
			put(file, RuleText.of(text));
		}
	}

	/**
	 * Reads a file again from disk; a file that is gone leaves the project. Pictures are looked at anew.
	 *
	 * @param file path relative to the project, with forward slashes
	 * @throws IllegalStateException if the project was not read from disk
	 */
	public synchronized void reload(String file) {
		Path path = root.orElseThrow(() -> new IllegalStateException("the project has no folder")).resolve(file);
		if (Span.isElsewhere(file)) {
			return;
		}
		if (isPicture(file)) {
			changed();
			return;
		}
		if (!Files.exists(path) || !Files.isRegularFile(path)) {
			remove(file);
			return;
		}
		try {
			RuleText text = RuleText.read(path);
			ParsedFile present = files.get(file);
			if (present == null || !present.source().text().equals(text.text())) {
				put(file, text);
			}
		} catch (IOException e) {
			remove(file);
			putProblem(file, ProjectFiles.unreadable(file, e));
		}
	}

	/**
	 * Takes a file out of the project.
	 *
	 * @param file path relative to the project, with forward slashes
	 */
	public synchronized void remove(String file) {
		if (!Span.isElsewhere(file)) {
			takeOut(file);
		}
	}

	private void takeOut(String file) {
		if (unreadable.remove(file) != null) {
			changed();
		}
		ParsedFile gone = files.remove(file);
		if (gone != null) {
			resources.getResources().remove(gone.resource());
			changed.addAll(index.replace(file, List.of()));
			changed();
		}
	}

	private void put(String file, RuleText text) {
		String[] segments = Arrays.stream(file.split("/")).map(segment -> URI.encodeSegment(segment, false)).toArray(String[]::new);
		URI uri = URI.createHierarchicalURI("bay", "", null, segments, null, null);
		Nesting nesting = Nesting.of(text.text());
		String toParse = CodeInSign.keptFromParser(nesting.text());
		ParsedFile old = files.get(file);
		if (old != null) {
			resources.getResources().remove(old.resource());
		}
		XtextResource resource = (XtextResource) injector.getInstance(IResourceFactory.class).createResource(uri);
		resources.getResources().add(resource);
		ParsedFile parsed = null;
		List<Symbol> symbols;
		try {
			resource.load(new StringInputStream(toParse, StandardCharsets.UTF_8.name()),
					Map.of(XtextResource.OPTION_ENCODING, StandardCharsets.UTF_8.name()));
			ParsedFile read = new ParsedFile(file, text, nesting.tooDeepAt(), resource, version + 1);
			symbols = read.symbols();
			parsed = read;
		} catch (IOException e) {
			throw new UncheckedIOException("a text in memory cannot be read", e);
		} finally {
			// a tree that was read half would keep its address from all that come after it
			if (parsed == null) {
				resources.getResources().remove(resource);
				if (old != null) {
					resources.getResources().add(old.resource());
				}
			}
		}
		files.put(file, parsed);
		unreadable.remove(file);
		changed.addAll(index.replace(file, symbols));
		changed();
	}

	private void changed() {
		version++;
		snapshot = null;
		isTakenOver = false;
	}

	/** Returns the project as it is now. Costs nothing if nothing has changed since the last call. */
	public synchronized Snapshot snapshot() {
		if (snapshot == null) {
			snapshot = translate();
		}
		return snapshot;
	}

	/** Reads what the project builds on, as far as it does not know it yet. */
	private void takeOver() {
		if (isTakenOver) {
			return;
		}
		List<ParsedFile> own = files().stream().map(files::get).toList();
		taken = TakenOver.by(root, own, grounds);
		grounds.forgetBut(this);
		List.copyOf(files.keySet()).stream().filter(file -> !isOwn(file) && !taken.texts().containsKey(file)).forEach(this::takeOut);
		taken.texts().forEach((file, text) -> {
			ParsedFile present = files.get(file);
			if (present == null || !present.source().text().equals(text)) {
				put(file, RuleText.of(text));
			}
		});
		isTakenOver = true;
	}

	/**
	 * Looks whether what the project builds on has changed on the disk.
	 *
	 * @return whether it has; it is then read again for the next snapshot
	 */
	public synchronized boolean lookBeneath() {
		boolean changed = grounds.forgetChanged();
		if (changed) {
			changed();
		}
		return changed;
	}

	/** Returns the folders and rule packs that the project names itself, as it was last read. */
	Set<Path> builtOn() {
		return taken.targets();
	}

	private Snapshot translate() {
		takeOver();
		RuleBase.Builder rules = new RuleBase.Builder(name);
		List<Problem> problems = new ArrayList<>(unreadable.values());
		problems.addAll(taken.problems());
		rules.builtOn.addAll(taken.builtOn());
		List<String> dropped = new ArrayList<>();
		SortedMap<String, String> sources = new TreeMap<>();
		for (Map.Entry<String, ParsedFile> entry : files.entrySet()) {
			ParsedFile file = entry.getValue();
			FileTranslation translation = file.translation();
			if (translation == null || !Collections.disjoint(translation.used(), changed)) {
				translation = file.translate(index);
			}
			rules.add(translation.part());
			if (!isOwn(entry.getKey())) {
				file.problems().forEach(problem -> taken.toldHere(problem).ifPresent(problems::add));
			} else {
				problems.addAll(file.problems());
			}
			dropped.addAll(translation.dropped());
			sources.put(entry.getKey(), file.source().text());
		}
		changed.clear();
		if (taken.isMissing()) { // what is not there may declare it
			problems.removeIf(problem -> problem.kind() == ProblemKind.UNKNOWN_NAME);
		}
		once(ProblemKind.WORKSHOP_TWICE, "workshop", rules.workshops.stream().map(Workshop::span), problems);
		once(ProblemKind.SIGN_OFF_TWICE, "sign-off", rules.signOffs.stream().map(SignOff::span), problems);
		RuleBase whole = rules.whole(dropped::add);
		root.ifPresent(folder -> problems.addAll(PicturesLooked.at(folder, whole)));
		problems.sort(ORDER);
		return new Snapshot(version, whole, problems.stream().distinct().toList(), sources, dropped, grounds.stamps());
	}

	/** Reports each but the first of what a project may have one of; what it builds on may have another. */
	private static void once(ProblemKind kind, String what, Stream<Span> places, List<Problem> problems) {
		List<Span> own = places.filter(span -> !span.isElsewhere()).toList();
		own.stream().skip(1).forEach(second -> problems.add(new Problem(kind, second, "There is already a " + what
				+ (own.get(0).file().equals(second.file()) ? "." : " in " + own.get(0).file() + "."), "Keep one of the two.")));
	}

	/** Returns what the project says now, for those that build on it. */
	synchronized Taken said() {
		RuleBase rules = snapshot().rules();
		if (said == null || saidBy != rules) {
			said = Taken.now(rules);
			saidBy = rules;
		}
		return said;
	}

	/** Returns the services of the language, for readers of the syntax tree. */
	public Injector services() {
		return injector;
	}

	/**
	 * Returns a file's syntax tree for the platform's services such as content assist. It is replaced, not changed, when
	 * the file gets a new text. Use it only while holding this project's lock.
	 *
	 * @param file path relative to the project, with forward slashes
	 */
	public synchronized Optional<XtextResource> resource(String file) {
		ParsedFile parsed = files.get(file);
		if (parsed == null) {
			return Optional.empty();
		}
		takeOver();
		parsed.linkAnew(version);
		return Optional.of(parsed.resource());
	}

	/**
	 * As {@link #resource}, for readers who follow no references: they may lead to trees of other files that have been
	 * replaced since.
	 *
	 * @param file path relative to the project, with forward slashes
	 */
	public synchronized Optional<XtextResource> tree(String file) {
		return Optional.ofNullable(files.get(file)).map(ParsedFile::resource);
	}

	/** Returns a file's text with its places. */
	public synchronized Optional<SourceText> source(String file) {
		return Optional.ofNullable(files.get(file)).map(ParsedFile::source);
	}

	/** Returns the names of the project. Use them only while holding this project's lock. */
	public synchronized ProjectIndex names() {
		takeOver();
		return index;
	}
}
