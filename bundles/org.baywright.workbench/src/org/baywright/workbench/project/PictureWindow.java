package org.baywright.workbench.project;

import java.nio.file.Path;

import org.baywright.workbench.Accessible;
import org.baywright.workbench.Baywright;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.SWTException;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Shell;

/** A window that shows one picture as large as it is, or as fits; Escape closes it. */
final class PictureWindow {

	private static final double MOST_OF_SCREEN = 0.8;
	private static final int LEAST = 160;

	private PictureWindow() {
	}

	static void open(Shell parent, Path file) {
		Image image;
		try {
			image = new Image(parent.getDisplay(), file.toString());
		} catch (SWTException e) {
			ErrorDialog.openError(parent, ProjectMessages.PictureTitle, NLS.bind(ProjectMessages.PictureFailed, file.getFileName()),
					Baywright.error(e.getMessage(), e));
			return;
		}
		Shell window = new Shell(parent, SWT.SHELL_TRIM);
		window.setText(file.getFileName().toString());
		window.setLayout(new FillLayout());
		Canvas canvas = new Canvas(window, SWT.DOUBLE_BUFFERED);
		Accessible.name(canvas, file.getFileName().toString());
		canvas.addPaintListener(event -> {
			Rectangle whole = image.getBounds();
			Point room = canvas.getSize();
			Rectangle place = place(whole, room);
			event.gc.setInterpolation(SWT.HIGH);
			event.gc.drawImage(image, 0, 0, whole.width, whole.height, place.x, place.y, place.width, place.height);
		});
		canvas.addListener(SWT.Resize, event -> canvas.redraw());
		window.addListener(SWT.Traverse, event -> {
			if (event.detail == SWT.TRAVERSE_ESCAPE) {
				window.close();
			}
		});
		window.addDisposeListener(event -> image.dispose());
		Rectangle screen = parent.getMonitor().getClientArea();
		Rectangle fits = place(image.getBounds(), new Point((int) (screen.width * MOST_OF_SCREEN), (int) (screen.height * MOST_OF_SCREEN)));
		Rectangle trim = window.computeTrim(0, 0, Math.max(LEAST, fits.width), Math.max(LEAST, fits.height));
		window.setSize(trim.width, trim.height);
		window.open();
	}

	/** Never larger than it is, in the middle. */
	private static Rectangle place(Rectangle whole, Point room) {
		double scale = Math.min(1, Math.min((double) room.x / whole.width, (double) room.y / whole.height));
		int width = Math.max(1, (int) (whole.width * scale));
		int height = Math.max(1, (int) (whole.height * scale));
		return new Rectangle((room.x - width) / 2, (room.y - height) / 2, width, height);
	}
}
