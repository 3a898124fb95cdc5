package org.baywright.application;

import org.baywright.workbench.Accessible;
import org.baywright.workbench.Icon;
import org.baywright.workbench.help.Help;
import org.baywright.workbench.walk.WalkView;
import org.baywright.workbench.wizard.Wizards;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.forms.events.IHyperlinkListener;
import org.eclipse.ui.forms.events.HyperlinkAdapter;
import org.eclipse.ui.forms.events.HyperlinkEvent;
import org.eclipse.ui.forms.widgets.FormToolkit;
import org.eclipse.ui.forms.widgets.ImageHyperlink;
import org.eclipse.ui.forms.widgets.ScrolledForm;
import org.eclipse.ui.part.IntroPart;

/** The first page that a new user sees: what this is for, and four ways to begin. */
public final class Welcome extends IntroPart {

	private FormToolkit toolkit;
	private ScrolledForm form;

	@Override
	public void createPartControl(Composite parent) {
		toolkit = new FormToolkit(parent.getDisplay());
		form = toolkit.createScrolledForm(parent);
		Composite body = form.getBody();
		GridLayoutFactory.fillDefaults().margins(60, 40).spacing(0, 10).applyTo(body);
		Label title = toolkit.createLabel(body, AppMessages.WelcomeTitle);
		title.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.HEADER_FONT));
		paragraph(body, AppMessages.WelcomeText);
		way(body, Icon.LINK, AppMessages.WelcomeWalk, AppMessages.WelcomeWalkText, this::walk);
		way(body, Icon.PROJECT, AppMessages.WelcomeProject, AppMessages.WelcomeProjectText, () -> close(Wizards::newProject));
		way(body, Icon.SKELETON, AppMessages.WelcomeExample, AppMessages.WelcomeExampleText, () -> close(Wizards::example));
		way(body, Icon.HELP, AppMessages.WelcomeHelp, AppMessages.WelcomeHelpText, () -> close(() -> Help.show(Help.START)));
		way(body, Icon.RULE, AppMessages.WelcomeClose, AppMessages.WelcomeCloseText, () -> close(() -> {
		}));
		paragraph(body, AppMessages.WelcomeSafety);
	}

	private void paragraph(Composite body, String text) {
		Label label = toolkit.createLabel(body, text, SWT.WRAP);
		GridDataFactory.fillDefaults().hint(640, SWT.DEFAULT).indent(0, 4).applyTo(label);
	}

	private void way(Composite body, Icon icon, String title, String text, Runnable go) {
		Composite row = toolkit.createComposite(body);
		GridLayoutFactory.fillDefaults().numColumns(2).spacing(12, 2).applyTo(row);
		GridDataFactory.fillDefaults().indent(0, 10).applyTo(row);
		Image image = icon.image();
		ImageHyperlink link = toolkit.createImageHyperlink(row, SWT.NONE);
		link.setImage(image);
		link.setText(title);
		link.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DIALOG_FONT));
		Accessible.name(link, title + ". " + text);
		GridDataFactory.fillDefaults().span(2, 1).applyTo(link);
		IHyperlinkListener listener = new HyperlinkAdapter() {
			@Override
			public void linkActivated(HyperlinkEvent event) {
				go.run();
			}
		};
		link.addHyperlinkListener(listener);
		Label label = toolkit.createLabel(row, text, SWT.WRAP);
		GridDataFactory.fillDefaults().span(2, 1).hint(620, SWT.DEFAULT).indent(24, 0).applyTo(label);
	}

	private void walk() {
		close(WalkView::open);
	}

	private void close(Runnable then) {
		PlatformUI.getWorkbench().getIntroManager().closeIntro(this);
		then.run();
	}

	@Override
	public void standbyStateChanged(boolean standby) {
		// there is nothing to shrink
	}

	@Override
	public void setFocus() {
		form.setFocus();
	}

	@Override
	public void dispose() {
		if (toolkit != null) {
			toolkit.dispose();
		}
		super.dispose();
	}
}
