package org.baywright.cli.work;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.cli.report.Project;
import org.baywright.cli.report.TextReport;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.fix.Fixes;
import org.baywright.language.ide.fix.QuickFix;
import org.baywright.language.ide.fix.Signature;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.text.Spelling;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Mend;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;

/**
 * Puts right the typing errors in rule files for which an editor offers one answer. What changes what a rule says or who
 * stands for it is never done without a person; it is told.
 *
 * @param told what was done and what was left, a line for each
 */
public record Fixing(List<String> told) {

	/** A project in which one fix brings the next is not a project to be mended by a program. */
	private static final int MOST = 1000;


	/** What is wrong, wherever it stands. */
	private record Wrong(String id, String about, Span span, boolean text) {

		String key() {
			return id + " " + about;
		}
	}

	/** The texts with what is wrong in them. */
	private record State(Snapshot snapshot, Report report, List<Wrong> wrong) {

		Map<String, Integer> counts() {
			Map<String, Integer> counts = new HashMap<>();
			wrong.forEach(one -> counts.merge(one.key(), 1, Integer::sum));
			return counts;
		}
	}

	/**
	 * Mends a project.
	 *
	 * @param path a folder with rule files, or one rule file
	 * @param given the path as the user wrote it
	 * @param only kinds of flaws to mend, {@link Project#TEXT} for problems of the text; all if empty
	 * @param progress hears of it and may stop it before anything is written
	 * @throws IOException if a file cannot be read or written; the message is for the user
	 */
	public static Fixing of(Path path, String given, Set<String> only, Progress progress) throws IOException {
		RuleProject project = Projects.open(path, given, progress);
		progress.phase("Fixing " + project.name());
		Work work = new Work(project, only, progress, Projects.prefix(path, given));
		SortedMap<String, String> before = project.snapshot().sources();
		work.all();
		List<String> told = new ArrayList<>(work.done);
		told.addAll(work.left.values());
		SortedMap<String, String> now = project.snapshot().sources();
		int written = 0;
		for (Map.Entry<String, String> entry : now.entrySet()) {
			String old = before.get(entry.getKey());
			if (!entry.getValue().equals(old)) {
				if (RuleText.replace(project.root().orElseThrow().resolve(entry.getKey()), old, entry.getValue())) {
					written++;
				} else {
					told.add(work.prefix + entry.getKey() + ": Not written, since somebody else changed it meanwhile. Do it again.");
				}
			}
		}
		told.add((work.done.size() == 1 ? "1 fix" : work.done.size() + " fixes") + " in " + TextReport.number(written, "file")
				+ (work.left.isEmpty() ? "." : ", " + work.left.size() + " left to you."));
		return new Fixing(told);
	}

	/** The work on one project. */
	private static final class Work {

		private final RuleProject project;
		private final Set<String> only;
		private final Progress progress;
		private final String prefix;
		private final Analysis analysis = new Analysis();
		private final List<String> done = new ArrayList<>();
		private final Map<String, String> left = new TreeMap<>();
		private final Set<String> tried = new HashSet<>();

		Work(RuleProject project, Set<String> only, Progress progress, String prefix) {
			this.project = project;
			this.only = only;
			this.progress = progress;
			this.prefix = prefix;
		}

		private State state() {
			Snapshot snapshot = project.snapshot();
			Report report = analysis.check(snapshot.rules(), progress);
			List<Wrong> wrong = new ArrayList<>();
			for (Problem problem : snapshot.problems()) {
				wrong.add(new Wrong(problem.id(), problem.message(), problem.span(), true));
			}
			for (Flaw flaw : report.flaws()) {
				if (flaw.accepted().isEmpty()) {
					wrong.add(new Wrong(flaw.check(), flaw.id(), flaw.span(), false));
				}
			}
			return new State(snapshot, report, wrong);
		}

		void all() {
			State state = state();
			for (int i = 0; i < MOST; i++) {
				Optional<State> next = one(state);
				if (next.isEmpty()) {
					return;
				}
				state = next.get();
			}
		}

		/** Applies the first fix that does good; returns nothing if there is none any more. */
		private Optional<State> one(State state) {
			for (Wrong wrong : state.wrong()) {
				progress.requireWanted();
				Optional<QuickFix> fix = fix(wrong, state);
				if (fix.isEmpty() || !tried.add(wrong.key() + " " + fix.get().title())) {
					continue;
				}
				String what = prefix + wrong.span() + ": " + fix.get().title() + " [" + wrong.id() + "]";
				Optional<String> harm = apply(fix.get(), state);
				State now = harm.isEmpty() ? state() : state;
				if (harm.isEmpty()) {
					harm = harm(wrong, fix.get(), state, now);
				}
				if (harm.isEmpty()) {
					done.add("Fixed   " + what);
					left.clear(); // of places that have moved
					tried.clear();
					return Optional.of(now);
				}
				state.snapshot().sources().forEach(project::update);
				left.put(wrong.key(), "Not so  " + what + " – " + harm.get());
			}
			return Optional.empty();
		}

		/** Returns the one answer to a slip of writing; of what a person must decide it is kept that it was left. */
		private Optional<QuickFix> fix(Wrong wrong, State state) {
			if (!only.isEmpty() && !only.contains(wrong.text() ? Project.TEXT : wrong.id())) {
				return Optional.empty();
			}
			Span span = wrong.span();
			List<QuickFix> offered = Fixes.at(span.file(), span.offset(), span.length(), state.snapshot(), Optional.of(state.report()), new Signature("", LocalDate.now()))
					.stream().filter(fix -> fix.about().equals(wrong.text() ? wrong.id() : wrong.about())).toList();
			List<QuickFix> answers = offered.stream().filter(fix -> fix.next().isEmpty()).toList();
			if (wrong.text() && answers.size() == 1 && answers.get(0).mend().filter(mend -> isTyping(mend, answers.get(0), state.snapshot())).isPresent()) {
				return Optional.of(answers.get(0));
			}
			if (!offered.isEmpty()) {
				left.put(wrong.key(), "Yours   " + prefix + span + ": "
						+ offered.stream().map(QuickFix::title).collect(Collectors.joining(", or ")) + " [" + wrong.id() + "]");
			}
			return Optional.empty();
		}

		/** Whether it can be done without knowing what a rule means: it sets signs in order, or a name is misspelt. */
		private boolean isTyping(Mend mend, QuickFix fix, Snapshot snapshot) {
			return mend instanceof Mend.Tidy
					|| mend instanceof Mend.Name name && Spelling.isMisspelt(name.old(), name.name()) && isUsed(name.span(), fix, snapshot);
		}

		/** Whether the name that a fix writes is used elsewhere too: one that is alone may as well be the one that is misspelt. */
		private boolean isUsed(Span span, QuickFix fix, Snapshot snapshot) {
			String text = snapshot.sources().get(span.file());
			project.update(span.file(), Edits.apply(text, fix.edits().get(span.file())));
			try {
				return new EditorServices(project).references(span.file(), span.offset(), false).size() > 1;
			} finally {
				project.update(span.file(), text);
			}
		}

		private Optional<String> apply(QuickFix fix, State state) {
			Map<String, String> now = new TreeMap<>();
			for (var entry : fix.edits().entrySet()) {
				String old = state.snapshot().sources().get(entry.getKey());
				if (old == null) {
					return Optional.of("there is no file " + entry.getKey() + ".");
				}
				now.put(entry.getKey(), Edits.apply(old, entry.getValue()));
			}
			now.forEach(project::update);
			return Optional.empty();
		}

		/** Says why a fix must be taken back, if it must. */
		private static Optional<String> harm(Wrong wrong, QuickFix fix, State before, State after) {
			Map<String, Integer> was = before.counts();
			Map<String, Integer> is = after.counts();
			for (Wrong one : after.wrong()) {
				if (is.get(one.key()) > was.getOrDefault(one.key(), 0)) {
					return Optional.of("it would bring " + one.id() + ": " + one.about());
				}
			}
			if (is.getOrDefault(wrong.key(), 0) >= was.get(wrong.key())) {
				return Optional.of("it would not answer what was found.");
			}
			return after.wrong().stream().filter(one -> one.id().equals(ProblemKind.SYNTAX.id()) && isWrittenAt(one.span(), fix)).findFirst()
					.map(one -> "it would leave what is wrong there: " + one.about());
		}

		private static boolean isWrittenAt(Span span, QuickFix fix) {
			int moved = 0;
			for (TextEdit edit : fix.edits().getOrDefault(span.file(), List.of())) {
				int from = edit.offset() + moved;
				if (!edit.text().isEmpty() && span.offset() <= from + edit.text().length() && from <= span.offset() + span.length()) {
					return true;
				}
				moved += edit.text().length() - edit.length();
			}
			return false;
		}
	}
}
