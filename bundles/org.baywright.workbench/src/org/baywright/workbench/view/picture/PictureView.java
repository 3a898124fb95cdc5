package org.baywright.workbench.view.picture;

import org.baywright.model.RuleBase;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.picture.Picture;
import org.baywright.workbench.view.RulesView;
import org.baywright.workbench.view.ScopeBar;
import org.baywright.workbench.view.ViewMessages;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.widgets.Composite;

/** Shows rules as a picture: what is given, the rules with their tests, what follows. */
public final class PictureView extends RulesView {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.picture";

	private ScopeBar scope;
	private Drawing drawing;
	private RuleBase base;
	private RuleScope shownScope;

	@Override
	protected void createBody(Composite parent) {
		GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(parent);
		scope = new ScopeBar(parent, true, chosen -> draw());
		GridDataFactory.fillDefaults().grab(true, false).applyTo(scope.control());
		drawing = new Drawing(parent, ViewMessages.DrawingPicture, node -> open(node.span()));
		GridDataFactory.fillDefaults().grab(true, true).applyTo(drawing.control());
		drawing.say(ViewMessages.PictureEmpty);
		offer(getViewSite().getActionBars().getToolBarManager(), drawing.control(), drawing.actions().toArray(Action[]::new));
	}

	@Override
	protected void show(ProjectState state) {
		boolean changed = base != state.rules();
		base = state.rules();
		if (changed) {
			scope.fill(base);
			draw();
		}
	}

	private void draw() {
		RuleBase rules = base;
		RuleScope wanted = scope.scope();
		drawing.draw(() -> Picture.of(rules, wanted), rules.rules().isEmpty() ? ViewMessages.PictureEmpty : ViewMessages.PictureNoRules, !wanted.equals(shownScope),
				wanted.around() instanceof RuleScope.Around.OneSign one ? "sign:" + one.sign() : "", drawn -> {
					shownScope = wanted;
					tellShown(drawn.title());
				});
	}

	@Override
	public void setFocus() {
		drawing.control().setFocus();
	}
}
