package org.baywright.application;

import java.io.IOException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

import org.baywright.workbench.Baywright;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.Platform;
import org.eclipse.core.runtime.URIUtil;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.handlers.HandlerUtil;

/** Says what the workbench is, its release, its licence and those of its parts, and where it writes what went wrong. */
public final class ShowAbout extends AbstractHandler {

	private static final int WIDTH = 640;
	private static final int HEIGHT = 460;

	@Override
	public Object execute(ExecutionEvent event) {
		new Window(HandlerUtil.getActiveShell(event)).open();
		return null;
	}

	private static final class Window extends TitleAreaDialog {

		Window(Shell parent) {
			super(parent);
			setHelpAvailable(false);
			setShellStyle(getShellStyle() | SWT.RESIZE);
		}

		@Override
		protected void configureShell(Shell shell) {
			super.configureShell(shell);
			shell.setText(AppMessages.AboutTitle);
		}

		@Override
		protected Point getInitialSize() {
			return new Point(WIDTH, HEIGHT);
		}

		@Override
		protected Control createDialogArea(Composite parent) {
			Composite area = (Composite) super.createDialogArea(parent);
			setTitle(NLS.bind(AppMessages.AboutRelease, Baywright.instance().getBundle().getVersion().toString().replaceFirst("\\.[^.]*$", "")));
			setMessage(AppMessages.AboutSafety);
			Text text = new Text(area, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL | SWT.BORDER);
			text.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
			text.setText(NLS.bind(AppMessages.AboutText, Platform.getLogFileLocation().toOSString(), notice()));
			return area;
		}

		/** The text that the build puts beside the product's parts. */
		private static String notice() {
			URL place = Platform.getInstallLocation().getURL();
			try {
				Path install = Path.of(URIUtil.toURI(place));
				for (Path at = install; at != null; at = at.getParent()) {
					if (Files.isRegularFile(at.resolve("NOTICE"))) {
						// the window breaks the lines itself
						return Files.readString(at.resolve("NOTICE"), StandardCharsets.UTF_8).replaceAll("(?<!\\n)\\n(?![\\n-])", " ");
					}
				}
			} catch (IOException | java.net.URISyntaxException e) {
				Baywright.log("NOTICE cannot be read.", e);
			}
			return AppMessages.AboutNoNotice;
		}

		@Override
		protected void createButtonsForButtonBar(Composite parent) {
			createButton(parent, IDialogConstants.OK_ID, IDialogConstants.CLOSE_LABEL, true);
		}
	}
}
