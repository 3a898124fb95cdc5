package org.baywright.workbench.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.baywright.model.Family;
import org.baywright.model.Named;
import org.baywright.model.RuleBase;
import org.baywright.model.words.Words;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.RuleScope.Around;
import org.baywright.workbench.DropDown;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;

/** Lets the reader choose some rules: of a family, and about a sign, a fault or a rule. */
public final class ScopeBar {

	/** One entry of a list. */
	private record Choice(String name, String title) {
	}

	private static final int ALL = 0;
	private static final int SIGN = 1;
	private static final int FAULT = 2;
	private static final int RULE = 3;

	private final Composite bar;
	private final Combo family;
	private final Combo about;
	private final Combo which;
	private final Consumer<RuleScope> changed;
	private RuleBase base = new RuleBase.Builder("").build();
	private List<Choice> families = List.of();
	private List<Choice> things = List.of();

	/**
	 * @param withRules whether single rules can be chosen too
	 * @param changed hears of each choice of the reader
	 */
	public ScopeBar(Composite parent, boolean withRules, Consumer<RuleScope> changed) {
		this.changed = changed;
		bar = new Composite(parent, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(5).margins(4, 2).applyTo(bar);
		new Label(bar, SWT.NONE).setText(ViewMessages.Vehicles);
		family = combo(ViewMessages.Vehicles);
		new Label(bar, SWT.NONE).setText(ViewMessages.RulesAbout);
		about = combo(ViewMessages.RulesAbout);
		about.setItems(withRules
				? new String[] { ViewMessages.Everything, ViewMessages.ASign, ViewMessages.AFault, ViewMessages.ARule }
				: new String[] { ViewMessages.Everything, ViewMessages.ASign, ViewMessages.AFault });
		about.select(ALL);
		which = combo(ViewMessages.Which);
		showWhich(false);
		family.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> tell()));
		about.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			fillThings("");
			tell();
		}));
		which.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> tell()));
	}

	private Combo combo(String name) {
		Combo combo = DropDown.of(bar, name);
		GridDataFactory.fillDefaults().grab(true, false).hint(60, SWT.DEFAULT).minSize(60, SWT.DEFAULT).applyTo(combo);
		return combo;
	}

	public Composite control() {
		return bar;
	}

	/** Takes over the names of a project's rules; what was chosen stays chosen if it is still there. */
	public void fill(RuleBase rules) {
		String oldFamily = chosen(families, family);
		String oldThing = chosen(things, which);
		base = rules;
		families = new ArrayList<>(rules.vehicleFamilies().stream().map((Family each) -> new Choice(each.name(), each.title()))
				.toList());
		if (families.size() != 1) {
			families.add(0, new Choice("", ViewMessages.AllFamilies));
		}
		set(family, families, oldFamily);
		fillThings(oldThing);
	}

	private void fillThings(String old) {
		Words words = new Words(base);
		Stream<Choice> all = switch (about.getSelectionIndex()) {
		case SIGN -> base.signs().stream().map(ScopeBar::choice);
		case FAULT -> base.faults().stream().map(fault -> new Choice(fault.name(), words.fault(fault.name())));
		case RULE -> base.rules().stream().map(ScopeBar::choice);
		default -> Stream.of();
		};
		things = all.sorted(Comparator.comparing(Choice::title, String.CASE_INSENSITIVE_ORDER).thenComparing(Choice::name))
				.toList();
		set(which, things, old);
		showWhich(!things.isEmpty());
	}

	/** A list without entries is not seen. */
	private void showWhich(boolean shown) {
		if (which.getVisible() != shown || ((GridData) which.getLayoutData()).exclude == shown) {
			((GridData) which.getLayoutData()).exclude = !shown;
			which.setVisible(shown);
			bar.layout(true);
		}
	}

	private static Choice choice(Named named) {
		return new Choice(named.name(), named.title());
	}

	private static void set(Combo combo, List<Choice> choices, String old) {
		combo.setItems(choices.stream().map(Choice::title).toArray(String[]::new));
		int at = 0;
		for (int i = 0; i < choices.size(); i++) {
			at = choices.get(i).name().equals(old) ? i : at;
		}
		if (!choices.isEmpty()) {
			combo.select(at);
		}
	}

	private static String chosen(List<Choice> choices, Combo combo) {
		int at = combo.getSelectionIndex();
		return at >= 0 && at < choices.size() ? choices.get(at).name() : "";
	}

	private void tell() {
		changed.accept(scope());
	}

	/** Returns what is chosen. */
	public RuleScope scope() {
		String thing = chosen(things, which);
		Around around = thing.isEmpty() ? new Around.All() : switch (about.getSelectionIndex()) {
		case SIGN -> new Around.OneSign(thing);
		case FAULT -> new Around.OneFault(thing);
		case RULE -> new Around.OneRule(thing);
		default -> new Around.All();
		};
		return new RuleScope(Optional.of(chosen(families, family)).filter(name -> !name.isEmpty()), around);
	}

	/** Chooses a sign, a fault or a rule as if the reader had. */
	public void choose(Around around) {
		int kind = around instanceof Around.OneSign ? SIGN : around instanceof Around.OneFault ? FAULT
				: around instanceof Around.OneRule ? RULE : ALL;
		if (kind < about.getItemCount()) {
			about.select(kind);
			fillThings(around instanceof Around.OneSign one ? one.sign() : around instanceof Around.OneFault fault ? fault.fault()
					: around instanceof Around.OneRule rule ? rule.rule() : "");
			tell();
		}
	}
}
