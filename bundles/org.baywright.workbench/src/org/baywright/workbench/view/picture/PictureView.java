package org.baywright.workbench.view.picture;

import java.util.Optional;

import org.baywright.model.RuleBase;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.picture.LaidOut;
import org.baywright.presenter.picture.Layout;
import org.baywright.presenter.picture.Picture;
import org.baywright.presenter.picture.Svg;
import org.baywright.presenter.picture.TextMetrics;
import org.baywright.presenter.picture.Theme;
import org.baywright.workbench.Icon;
import org.baywright.workbench.view.Exporting;
import org.baywright.workbench.view.Latest;
import org.baywright.workbench.view.RulesView;
import org.baywright.workbench.view.ScopeBar;
import org.baywright.workbench.view.ViewMessages;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IToolBarManager;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.widgets.Composite;

/** Shows rules as a picture: what is given, the rules with their tests, what follows. */
public final class PictureView extends RulesView {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.picture";

	private ScopeBar scope;
	private PictureCanvas canvas;
	private Latest layout;
	private Latest export;
	private Action save;
	private RuleBase base;
	private RuleScope shownScope;

	@Override
	protected void createBody(Composite parent) {
		GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(parent);
		scope = new ScopeBar(parent, true, chosen -> draw());
		GridDataFactory.fillDefaults().grab(true, false).applyTo(scope.control());
		canvas = new PictureCanvas(parent, node -> open(node.span()));
		GridDataFactory.fillDefaults().grab(true, true).applyTo(canvas.control());
		canvas.say(ViewMessages.PictureEmpty);
		layout = new Latest(ViewMessages.DrawingPicture, canvas.control());
		export = new Latest(ViewMessages.DrawingPicture, canvas.control());
		fillToolBar(getViewSite().getActionBars().getToolBarManager());
	}

	private void fillToolBar(IToolBarManager bar) {
		save = action(ViewMessages.SaveSvg, Icon.EXPORT.descriptor(), this::save);
		save.setEnabled(false);
		offer(bar, canvas.control(), action(ViewMessages.Larger, Icon.ZOOMIN.descriptor(), canvas::larger),
				action(ViewMessages.Smaller, Icon.ZOOMOUT.descriptor(), canvas::smaller),
				action(ViewMessages.Fit, Icon.FIT.descriptor(), canvas::fit), save);
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
		ScreenMetrics metrics = canvas.metrics();
		layout.run(cancelled -> Layout.of(Picture.of(rules, wanted), metrics, cancelled), drawn -> {
			boolean fit = !Optional.of(wanted).equals(Optional.ofNullable(shownScope));
			shownScope = wanted;
			canvas.show(drawn, rules.rules().isEmpty() ? ViewMessages.PictureEmpty : ViewMessages.PictureNoRules, fit);
			if (fit) {
				canvas.beginAt(wanted.around() instanceof RuleScope.Around.OneSign one ? "sign:" + one.sign() : "");
			}
			tellShown(drawn.picture().title());
			save.setEnabled(!drawn.boxes().isEmpty());
		});
	}

	/** The file gets a layout of its own, with widths that do not depend on this screen's fonts. */
	private void save() {
		LaidOut drawn = canvas.picture();
		if (drawn != null) {
			export.run(cancelled -> Svg.write(Layout.of(drawn.picture(), TextMetrics.FIXED, cancelled), Theme.LIGHT),
					svg -> Exporting.toFile(getSite().getShell(), drawn.picture().title(), "svg", svg));
		}
	}

	@Override
	public void setFocus() {
		canvas.control().setFocus();
	}
}
