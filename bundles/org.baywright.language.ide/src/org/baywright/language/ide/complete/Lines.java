package org.baywright.language.ide.complete;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.baywright.language.ide.complete.Completion.Ranked;
import org.baywright.language.ide.names.Values;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;
import org.baywright.language.index.Facts;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Symbol;
import org.baywright.language.vocabulary.Clause;
import org.baywright.language.vocabulary.Element;
import org.baywright.language.vocabulary.Vocabulary;
import org.baywright.model.Domain;

/** Proposes words of the language: the lines that an element still lacks first, predicates that fit. */
final class Lines {

	private static final Map<String, Set<String>> PREDICATES = Map.of(
			"SIGN", Set.of("present", "absent", "unexplained", "not"), "CODE", Set.of("present", "absent", "active", "stored", "pending",
					"untested", "missing", "unread", "status", "not"),
			"MODULE", Set.of("answers", "silent", "not"), "FAULT", Set.of("confirmed", "suspected", "cleared", "not"),
			"NAMES", Set.of("is"), "QUANTITY", Set.of("is", "below", "at_most", "above", "at_least"));

	private static final int FIRST = 10;
	private static final int BEHIND_NAMES = 190;
	private static final int LATER = 200;
	private static final int LAST = 300;
	/** Words that lead on to a name: who knows the name wants it first. */
	private static final Set<String> NEGATIONS = Set.of("not", "any");

	private final Site site;
	private final LocalDate today;
	private final Set<String> present = new HashSet<>();

	Lines(Site site, Follow follow, LocalDate today) {
		this.site = site;
		this.today = today;
		present(site.before());
		present(site.after());
	}

	private void present(List<Word> words) {
		for (Word word : words) {
			if (word.kind() == Word.Kind.KEYWORD && Words.isFirstInLine(site.text(), word.offset())) {
				present.add(word.text());
			}
		}
	}

	void word(Wanted wanted, Frame frame, Trail trail, List<Ranked> found) {
		String word = wanted.word();
		String rule = frame.rule().getName();
		if (!site.matches(word, "") || !fits(word, rule, frame, trail)) {
			return;
		}
		Optional<Element> element = element(rule.equals("OutcomeLabel") ? "Outcome" : rule, frame);
		int at = element.map(own -> own.indexOf(word)).orElse(-1);
		if (at < 0) {
			boolean continues = !Words.isFirstInLine(site.text(), site.start());
			int rank = NEGATIONS.contains(word) ? BEHIND_NAMES : continues ? FIRST : LATER;
			found.add(new Ranked(rank, proposal(word, word, List.of())));
			return;
		}
		Clause clause = element.get().clauses().get(at);
		if (clause.isEnoughOnce() && present.contains(word)) {
			return;
		}
		boolean missing = !present.contains(word) && site.isFirstInLine();
		Skeleton skeleton = skeleton(word, rule, clause);
		found.add(new Ranked((missing ? FIRST : site.isFirstInLine() ? LATER : LAST) + at,
				proposal(word, skeleton.text(), skeleton.slots())));
		if (word.equals("on") && rule.equals("Outcome") && site.isFirstInLine()) {
			table(trail, found);
		}
	}

	/** A clause that has a rule of its own stands among those of its element. */
	private static Optional<Element> element(String rule, Frame frame) {
		return Vocabulary.of(rule).filter(own -> !rule.equals("VerifyBlock")).or(() -> Vocabulary.elements().stream()
				.filter(own -> !own.rule().equals("VerifyBlock") && frame.isIn(own.rule()) && !frame.isIn("VerifyStep"))
				.filter(own -> own.clauses().stream().anyMatch(clause -> clause.part().equals(rule))).findFirst());
	}

	private boolean fits(String word, String rule, Frame frame, Trail trail) {
		boolean predicate = frame.isIn("Predicate");
		if (predicate || rule.equals("ReadingPresence") || rule.equals("Reading")) {
			return predicates(frame, trail).contains(word);
		}
		boolean run = !Trail.all(trail, "Rule", "tests").isEmpty();
		boolean expect = !Trail.all(trail, "Rule", "expected").isEmpty() || present.contains("expect");
		return switch (rule) {
		case "OutcomeLabel" -> run && (expect || word.equals("otherwise")) && !present.contains(word);
		case "Outcome" -> word.equals("then") ? !run && !present.contains("run") : run && !expect;
		case "Rule" -> !word.equals("expect") || run;
		case "CompareOp" -> frame.isIn("Preparation") || Owners.at(site.index(), frame, trail).stream().anyMatch(owner -> results(owner).isEmpty());
		default -> true;
		};
	}

	/** The named results of what gives no number; what an instrument shows beyond its range is one value among many. */
	private static List<String> results(Symbol owner) {
		return owner.facts() instanceof Facts.OfTest test && test.domain().filter(Domain.Quantity.class::isInstance).isPresent() ? List.of()
				: Values.names(owner.element());
	}

	private Set<String> predicates(Frame frame, Trail trail) {
		String owner = frame.isIn("Atom") ? Trail.last(trail, "Atom", "subject") : Trail.last(trail, "Reading", "subject");
		List<Symbol> symbols = site.index().get(Key.subject(owner));
		Set<String> fitting = new HashSet<>();
		for (Symbol symbol : symbols) {
			var domain = symbol.facts() instanceof Facts.OfTest test ? test.domain()
					: symbol.facts() instanceof Facts.OfTrait trait ? trait.domain() : null;
			if (domain == null) {
				fitting.addAll(PREDICATES.getOrDefault(symbol.kind().name(), Set.of()));
			} else {
				boolean names = domain.isPresent() && domain.get() instanceof Domain.Names;
				fitting.addAll(PREDICATES.get(names ? "NAMES" : "QUANTITY"));
				fitting.addAll(frame.isIn("IsValue") ? Set.of("any", "of", "not") : Set.of());
			}
		}
		return symbols.isEmpty() ? Set.of("present", "absent", "is", "not", "below", "above", "confirmed", "any", "of") : fitting;
	}

	private Skeleton skeleton(String word, String rule, Clause clause) {
		if (rule.equals("Rule") && word.equals("by")) {
			String author = site.textsAfter("by").stream().findFirst().map(text -> text.substring(1, text.length() - 1))
					.orElse("<author>");
			return Skeleton.of(word, "", "by \"" + author + "\" on " + today);
		}
		boolean labelled = rule.equals("OutcomeLabel");
		return Skeleton.of(word, "", labelled ? word + " : " : clause.words().size() > 1 ? word + " " : clause.draft());
	}

	/** All results of the rule's test at once. */
	private void table(Trail trail, List<Ranked> found) {
		List<Symbol> tests = site.index().get(Key.of(Kind.TEST,
				Trail.last(trail, "Rule", "tests")));
		List<String> results = tests.isEmpty() ? List.of() : results(tests.get(0));
		if (results.size() < 2 || present.contains("on")) {
			return;
		}
		int width = results.stream().mapToInt(String::length).max().orElse(0);
		StringBuilder marked = new StringBuilder();
		for (String result : results) {
			marked.append(marked.isEmpty() ? "" : "\n").append("on ").append(result)
					.append(" ".repeat(width - result.length())).append(" : <proves nothing>");
		}
		// each outcome is filled in by itself
		Skeleton skeleton = Skeleton.of("", "", marked.toString()).indented(Words.indent(site.text(), site.start()));
		int group = 0;
		List<Slot> slots = new ArrayList<>();
		for (Slot slot : skeleton.slots()) {
			slots.add(new Slot(slot.offset(), slot.length(), ++group));
		}
		found.add(new Ranked(FIRST, new Proposal("on each result", "all results of " + tests.get(0).name(), "",
				Proposal.Kind.SKELETON, site.start(), site.offset() - site.start(), skeleton.text(), slots)));
	}

	void text(Wanted wanted, Supplier<List<String>> pictures, List<Ranked> found) {
		if (wanted.spot().feature().equals("authors") || wanted.spot().feature().equals("reviewer")
				|| wanted.spot().feature().equals("author")) {
			for (String author : site.textsAfter("by")) {
				String text = author + " on " + today;
				found.add(new Ranked(FIRST, new Proposal(text, "", "", Proposal.Kind.TEXT, site.start(),
						site.offset() - site.start(), text, List.of())));
			}
		} else if (wanted.spot().rule().equals("Picture") && wanted.spot().feature().equals("file")) {
			for (String picture : pictures.get()) {
				Skeleton skeleton = Skeleton.of("", "", "\"" + picture + "\" \"<what it shows>\"");
				found.add(new Ranked(FIRST, new Proposal("\"" + picture + "\"", "picture of the project", "", Proposal.Kind.TEXT, site.start(),
						site.offset() - site.start(), skeleton.text(), skeleton.slots())));
			}
		} else if (wanted.spot().feature().equals("meaning")) {
			found.add(new Ranked(FIRST, new Proposal("\"00000000\"", "the check tells the right one", "", Proposal.Kind.TEXT,
					site.start(), site.offset() - site.start(), "\"00000000\"", List.of())));
		}
	}

	void date(List<Ranked> found) {
		found.add(new Ranked(FIRST, new Proposal(today.toString(), "today", "", Proposal.Kind.TEXT, site.start(),
				site.offset() - site.start(), today.toString(), List.of())));
	}

	private Proposal proposal(String label, String text, List<Slot> slots) {
		return new Proposal(label, "", Vocabulary.help(label).orElse(""), Proposal.Kind.WORD, site.start(),
				site.offset() - site.start(), text, slots);
	}
}
