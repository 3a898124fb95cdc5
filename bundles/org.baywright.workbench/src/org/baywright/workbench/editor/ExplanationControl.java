package org.baywright.workbench.editor;

import org.baywright.presenter.help.SetText;
import org.baywright.workbench.help.PageSetter;
import org.eclipse.jface.text.AbstractInformationControl;
import org.eclipse.jface.text.IInformationControlCreator;
import org.eclipse.jface.text.IInformationControlExtension2;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Shell;

/** A small window with a text in Markdown. */
final class ExplanationControl extends AbstractInformationControl implements IInformationControlExtension2 {

	private StyledText text;
	private boolean filled;

	ExplanationControl(Shell parent, boolean still) {
		super(parent, !still);
		create();
	}

	@Override
	protected void createContent(Composite parent) {
		parent.setLayout(new FillLayout());
		text = new StyledText(parent, SWT.READ_ONLY | SWT.WRAP | SWT.MULTI | SWT.V_SCROLL);
		text.setMargins(8, 6, 8, 4);
		text.setCaret(null);
		text.setForeground(parent.getForeground());
		text.setBackground(parent.getBackground());
		text.setAlwaysShowScrollBars(false);
	}

	@Override
	public void setInput(Object input) {
		filled = input instanceof String markdown && !markdown.isBlank();
		if (filled) {
			PageSetter.set(text, SetText.of((String) input));
		}
	}

	@Override
	public void setInformation(String information) {
		setInput(information);
	}

	@Override
	public boolean hasContents() {
		return filled;
	}

	@Override
	public Point computeSizeHint() {
		int width = 460;
		Point wanted = text.computeSize(width, SWT.DEFAULT);
		return getShell().computeSize(width, Math.min(wanted.y + 8, 320));
	}

	@Override
	public IInformationControlCreator getInformationPresenterControlCreator() {
		return shell -> new ExplanationControl(shell, false);
	}
}
