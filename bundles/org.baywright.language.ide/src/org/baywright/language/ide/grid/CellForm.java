package org.baywright.language.ide.grid;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Words;

/**
 * One cell of the grid being edited: in which rule, and what each result of the test proves of the fault. Making one, and
 * {@link #asked}, reads texts, so neither is for a screen's thread; all else is quick.
 */
public final class CellForm {

	/** What a result can prove of a fault, in the words of the language, as {@link #choose(int, int)} counts them. */
	public static final List<String> VERDICTS = List.of("nothing", VerdictKind.SUSPECTED.verb(), VerdictKind.CONFIRMED.verb(), VerdictKind.CLEARED.verb());
	private static final List<VerdictKind> KINDS = List.of(VerdictKind.SUSPECTED, VerdictKind.CONFIRMED, VerdictKind.CLEARED);
	private static final String NEW_FILE = "rules.bay";

	private final Snapshot snapshot;
	private final CellRules cell;
	private final RuleTable[] tables;
	private int chosen;
	private NewRule draft;

	/**
	 * @param snapshot the project
	 * @param among the rules that are shown
	 * @param family the vehicle family that is shown, if it is one
	 * @param test name of the test; the empty text where none is done
	 * @param fault name of the fault
	 * @param author who writes; the empty text if nobody said so
	 * @param today the date
	 */
	public CellForm(Snapshot snapshot, List<Rule> among, Optional<String> family, String test, String fault, String author, LocalDate today) {
		this.snapshot = snapshot;
		cell = CellRules.of(snapshot, among, test, fault);
		List<RuleTable> all = new ArrayList<>(cell.rules());
		all.add(cell.blank());
		tables = all.toArray(RuleTable[]::new);
		chosen = cell.rules().isEmpty() ? 0 : cell.rules().get(0).speaksOf(fault) || !cell.isLocked() ? 0 : all.size() - 1;
		draft = new NewRule("", family.stream().toList(), "", test, cell.blank(), "", author, today, file(snapshot, among, test, fault));
	}

	/** A new rule goes where those of the test are, else where those about the fault are, else where any is. */
	static String file(Snapshot snapshot, List<Rule> among, String test, String fault) {
		List<Rule> own = snapshot.rules().rules().stream().filter(rule -> !rule.span().isElsewhere() && !rule.span().file().isEmpty()).toList();
		return own.stream().filter(rule -> rule.test().orElse("").equals(test)).findFirst()
				.or(() -> own.stream().filter(rule -> rule.outcomes().stream().flatMap(outcome -> outcome.conclusions().stream())
						.anyMatch(said -> said instanceof org.baywright.model.Conclusion.OnFault on && on.fault().equals(fault))).findFirst())
				.or(() -> own.stream().findFirst()).map(rule -> rule.span().file()).orElse(NEW_FILE);
	}

	/** Returns what is asked: "What “Voltage” proves of “Battery: Flat”". */
	public String title() {
		Words words = new Words(snapshot.rules());
		String what = cell.test().isEmpty() ? "What a rule without a test" : "What “" + words.test(cell.test()) + "”";
		return what + " proves of “" + words.fault(cell.fault()) + "”";
	}

	/** Returns the project's rules as they were read. */
	public RuleBase base() {
		return snapshot.rules();
	}

	/** Returns the texts that the changes are in terms of. */
	public Snapshot snapshot() {
		return snapshot;
	}

	/** Returns why some rules of the test cannot be changed here, each in a sentence. */
	public List<String> locked() {
		return cell.locked();
	}

	// ---- in which rule ---------------------------------------------------------------------------------------------

	/** Returns titles of the rules in which it can be written; the last one stands for a new rule. */
	public List<String> rules() {
		List<String> titles = new ArrayList<>();
		cell.rules().forEach(table -> titles.add(table.rule().orElseThrow().title()));
		titles.add("A new rule");
		return titles;
	}

	/** Returns the number of the rule that is chosen. */
	public int rule() {
		return chosen;
	}

	/** Chooses a rule by its number in {@link #rules}. */
	public void rule(int number) {
		chosen = number;
	}

	/** Returns whether a new rule is to be written. */
	public boolean isNew() {
		return chosen == tables.length - 1;
	}

	/** Returns a new rule as far as it is filled in. */
	public NewRule draft() {
		return draft;
	}

	/** Fills in what only a new rule needs; see {@link NewRule}. */
	public void draft(String title, List<String> families, String sign, String because, String author, String file) {
		draft = new NewRule(title, families, sign, draft.test(), draft.table(), because, author, draft.date(), file);
	}

	// ---- what each result proves -----------------------------------------------------------------------------------

	/** Returns the results of the chosen rule and what each proves. */
	public RuleTable table() {
		return tables[chosen];
	}

	/** Returns what a result proves of the fault, as a number in {@link #VERDICTS}. */
	public int choice(int line) {
		return table().verdict(line, cell.fault()).map(kind -> KINDS.indexOf(kind) + 1).orElse(0);
	}

	/** Chooses what a result proves of the fault. */
	public void choose(int line, int verdict) {
		tables[chosen] = table().with(line, cell.fault(), verdict == 0 ? Optional.empty() : Optional.of(KINDS.get(verdict - 1)));
	}

	/** Adds a limit at which results are told apart; returns why it cannot be, in a sentence, or nothing. */
	public Optional<String> limit(String typed) {
		BigDecimal limit;
		try {
			limit = new BigDecimal(typed.strip().replace(',', '.').replaceAll("\\s*" + java.util.regex.Pattern.quote(table().unit()) + "$", ""));
		} catch (NumberFormatException e) {
			return Optional.of("A limit is a number such as 12.4.");
		}
		Optional<String> problem = table().problem(limit);
		if (problem.isEmpty()) {
			tables[chosen] = table().split(limit);
		}
		return problem;
	}

	/** Gives each named result a line of its own. */
	public void apart() {
		tables[chosen] = table().apart();
	}

	// ---- what is written -------------------------------------------------------------------------------------------

	/** Returns what is still wrong, in one sentence. */
	public Optional<String> problem() {
		return isNew() ? whole().problem() : Optional.empty();
	}

	private NewRule whole() {
		return new NewRule(draft.title(), draft.families(), draft.sign(), draft.test(), table(), draft.because(), draft.author(), draft.date(), draft.file());
	}

	/** Returns what works out all that is to be written, as it is chosen now. */
	public Supplier<GridEdit> asked() {
		RuleTable table = table();
		Optional<NewRule> added = isNew() ? Optional.of(whole()) : Optional.empty();
		boolean wrong = problem().isPresent();
		return () -> {
			GridChange change = new GridChange(snapshot);
			if (!wrong) {
				added.ifPresentOrElse(change::add, () -> change.set(table));
			}
			return change.done();
		};
	}

	/** Returns what works out the change after which no rule that can be changed says anything of the fault by the test. */
	public Supplier<GridEdit> emptied() {
		return () -> {
			GridChange change = new GridChange(snapshot);
			cell.rules().forEach(table -> change.set(table.without(cell.fault())));
			return change.done();
		};
	}
}
