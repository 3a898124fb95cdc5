package org.baywright.workbench;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

import org.baywright.workbench.project.RuleMarkers;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;

/** What tests need of a running workbench. Tests run beside the screen's thread and wait for what they expect. */
public final class Ui {

	private static final long PATIENCE_MILLIS = 60_000;

	private Ui() {
	}

	/** Does something on the screen's thread. */
	public static void run(Runnable what) {
		get(() -> {
			what.run();
			return null;
		});
	}

	/** Returns something from the screen's thread. */
	public static <T> T get(Callable<T> what) {
		Object[] result = new Object[1];
		Throwable[] failure = new Throwable[1];
		Display.getDefault().syncExec(() -> {
			try {
				result[0] = what.call();
			} catch (Throwable e) {
				failure[0] = e;
			}
		});
		if (failure[0] instanceof Error error) {
			throw error;
		}
		if (failure[0] != null) {
			throw new IllegalStateException(failure[0]);
		}
		@SuppressWarnings("unchecked")
		T answer = (T) result[0];
		return answer;
	}

	/** Waits until something is so on the screen's thread; fails with the text if it does not come about. */
	public static void await(Supplier<String> otherwise, BooleanSupplier so) {
		long end = System.currentTimeMillis() + PATIENCE_MILLIS;
		while (!get(so::getAsBoolean)) {
			if (System.currentTimeMillis() > end) {
				fail(get(otherwise::get));
			}
			pause(50);
		}
	}

	/** Lets the screen and the workers go on for a while. */
	public static void pause(long millis) {
		try {
			Thread.sleep(millis);
		} catch (InterruptedException e) {
			Thread.currentThread().interrupt();
		}
		run(() -> {
			while (Display.getCurrent().readAndDispatch()) {
				// what is waiting
			}
		});
	}

	/** Returns the page of the window. */
	public static IWorkbenchPage page() {
		return PlatformUI.getWorkbench().getWorkbenchWindows()[0].getActivePage();
	}

	/** Returns the messages of the marks on a resource and beneath, sorted. */
	public static String[] marks(IResource on) {
		try {
			return Arrays.stream(on.findMarkers(RuleMarkers.BOTH, true, IResource.DEPTH_INFINITE))
					.map(marker -> marker.getAttribute(RuleMarkers.KIND, "") + ": " + marker.getAttribute(IMarker.MESSAGE, "")).sorted()
					.toArray(String[]::new);
		} catch (CoreException e) {
			throw new IllegalStateException(e);
		}
	}

	/** Returns the mark of a kind on a resource and beneath, or null. */
	public static IMarker mark(IResource on, String kind) {
		try {
			return Arrays.stream(on.findMarkers(RuleMarkers.BOTH, true, IResource.DEPTH_INFINITE))
					.filter(marker -> marker.getAttribute(RuleMarkers.KIND, "").equals(kind)).findFirst().orElse(null);
		} catch (CoreException e) {
			throw new IllegalStateException(e);
		}
	}

	/** Takes a picture of the whole screen as far as the window reaches. */
	public static void picture(String name) {
		// what is explained under the mouse would cover what is shown
		run(() -> Display.getCurrent().setCursorLocation(0, 0));
		pause(300);
		Path folder = Path.of(System.getProperty("baywright.screenshots", "target/screenshots"));
		try {
			Files.createDirectories(folder);
		} catch (IOException e) {
			throw new IllegalStateException(e);
		}
		run(() -> {
			Display display = Display.getCurrent();
			Shell shell = PlatformUI.getWorkbench().getWorkbenchWindows()[0].getShell();
			Rectangle bounds = shell.getBounds().intersection(display.getBounds());
			Image image = new Image(display, bounds.width, bounds.height);
			GC gc = new GC(display);
			gc.copyArea(image, bounds.x, bounds.y);
			gc.dispose();
			ImageLoader loader = new ImageLoader();
			loader.data = new org.eclipse.swt.graphics.ImageData[] { image.getImageData() };
			loader.save(folder.resolve(name + ".png").toString(), SWT.IMAGE_PNG);
			image.dispose();
		});
	}
}
