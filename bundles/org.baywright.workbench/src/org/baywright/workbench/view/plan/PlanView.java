package org.baywright.workbench.view.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;

import org.baywright.model.RuleBase;
import org.baywright.presenter.Left;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.plan.PlanShown;
import org.baywright.presenter.plan.Planning;
import org.baywright.presenter.plan.Twig;
import org.baywright.workbench.DropDown;
import org.baywright.workbench.Icon;
import org.baywright.workbench.pack.SheetLauncher;
import org.baywright.workbench.view.Details;
import org.baywright.workbench.view.Latest;
import org.baywright.workbench.view.RulesView;
import org.baywright.workbench.view.picture.Drawing;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.ISharedImages;
import org.eclipse.ui.PlatformUI;

/** Shows the whole plan for a complaint, and what a change of the rules moves in it. */
public final class PlanView extends RulesView {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.plan";

	private final Left<Planning> left = new Left<>(Planning::base, Planning::of, Planning::turn);
	private Planning planning = Planning.of(new RuleBase.Builder("").build());
	private Combo vehicle;
	private Combo complaint;
	private Details figures;
	private Drawing drawing;
	private Latest working;
	private Action hold;
	private Action sheet;
	private String drawn = "";

	@Override
	protected void createBody(Composite parent) {
		GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(parent);
		Composite bar = new Composite(parent, SWT.NONE);
		GridLayoutFactory.fillDefaults().numColumns(4).margins(4, 2).applyTo(bar);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
		vehicle = combo(bar, PlanMessages.Vehicle, at -> planning.choose(planning.families().get(at).name()));
		complaint = combo(bar, PlanMessages.Complaint, at -> planning.complain(planning.complaints().get(at).name()));
		SashForm parts = new SashForm(parent, SWT.VERTICAL);
		GridDataFactory.fillDefaults().grab(true, true).applyTo(parts);
		figures = new Details(parts, PlanMessages.Figures, this::open);
		drawing = new Drawing(parts, PlanMessages.Planning, node -> open(node.span()));
		parts.setWeights(1, 2);
		drawing.say(PlanMessages.Empty);
		working = new Latest(PlanMessages.Planning, drawing.control());
		sheet = action(PlanMessages.Sheet, PlatformUI.getWorkbench().getSharedImages().getImageDescriptor(ISharedImages.IMG_ETOOL_PRINT_EDIT), this::print);
		hold = action(PlanMessages.Hold, Icon.RESET.descriptor(), () -> {
			planning = planning.hold();
			tellFigures();
		});
		hold.setEnabled(false);
		sheet.setEnabled(false);
		List<Action> actions = new ArrayList<>(drawing.actions());
		actions.add(hold);
		actions.add(sheet);
		offer(getViewSite().getActionBars().getToolBarManager(), drawing.control(), actions.toArray(Action[]::new));
	}

	/** Makes a list; of what is chosen in it comes another planning. */
	private Combo combo(Composite bar, String name, IntFunction<Planning> chosen) {
		new Label(bar, SWT.NONE).setText(name);
		Combo combo = DropDown.of(bar, name);
		GridDataFactory.fillDefaults().grab(true, false).hint(60, SWT.DEFAULT).minSize(60, SWT.DEFAULT).applyTo(combo);
		combo.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> set(chosen.apply(combo.getSelectionIndex()))));
		return combo;
	}

	@Override
	protected void show(ProjectState state) {
		if (planning.base() != state.rules()) {
			set(left.turn(planning, state.rules()));
		}
	}

	private void set(Planning next) {
		planning = next;
		fill(vehicle, planning.families(), planning.family());
		fill(complaint, planning.complaints(), planning.complaint());
		if (planning.complaint().isEmpty()) {
			working.cancel();
			figures.begin().end();
			drawing.say(PlanMessages.Empty);
			hold.setEnabled(false);
			sheet.setEnabled(false);
			return;
		}
		Planning wanted = planning;
		working.run(wanted::plan, this::tell);
	}

	/** A list that is unchanged is let alone, as it may be open. */
	private static void fill(Combo combo, List<Planning.Choice> choices, String chosen) {
		String[] titles = choices.stream().map(Planning.Choice::title).toArray(String[]::new);
		if (!Arrays.equals(titles, combo.getItems())) {
			combo.setItems(titles);
		}
		int at = choices.stream().map(Planning.Choice::name).toList().indexOf(chosen);
		if (at != combo.getSelectionIndex()) {
			combo.select(at);
		}
	}

	private void tell(PlanShown plan) {
		planning = planning.show(plan);
		tellFigures();
		// a tree that has grown or shrunk begins somewhere else
		String shape = plan.title() + plan.tree().map(Twig::size).orElse(0);
		boolean other = !drawn.equals(shape);
		drawn = shape;
		drawing.draw(plan::picture, plan.trouble(), other, "", picture -> tellShown(plan.title()));
		sheet.setEnabled(plan.tree().isPresent());
	}

	private void tellFigures() {
		figures.begin();
		planning.told().forEach(figures::line);
		figures.end();
		hold.setEnabled(!planning.moved().isEmpty());
	}

	private void print() {
		planning.shown().ifPresent(plan -> SheetLauncher.show(getSite().getShell(), "plan", plan.sheet(), PlanMessages.Sheet, PlanMessages.SheetNotWritten));
	}

	@Override
	public void setFocus() {
		complaint.setFocus();
	}
}
