package org.baywright.workbench;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

import org.baywright.workbench.project.RuleMarkers;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;

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

	/** Closes the welcome page, which would fill the window. */
	public static void closeWelcome() {
		run(() -> {
			var intro = PlatformUI.getWorkbench().getIntroManager();
			if (intro.getIntro() != null) {
				intro.closeIntro(intro.getIntro());
			}
		});
	}

	/** Returns all controls of a kind within another one, in the order in which they were made. */
	public static <T extends Control> List<T> all(Composite in, Class<T> type) {
		List<T> found = new ArrayList<>();
		for (Control child : in.getChildren()) {
			if (child.getClass() == type) {
				found.add(type.cast(child));
			}
			if (child instanceof Composite inner) {
				found.addAll(all(inner, type));
			}
		}
		return found;
	}

	/** Waits for a dialog with a title. */
	public static Shell dialog(String title) {
		await(() -> "no dialog " + title + " among " + Arrays.toString(Arrays.stream(Display.getCurrent().getShells()).map(Shell::getText).toArray()),
				() -> dialogNow(title) != null);
		return get(() -> dialogNow(title));
	}

	private static Shell dialogNow(String title) {
		return Arrays.stream(Display.getCurrent().getShells()).filter(shell -> shell.isVisible() && shell.getText().equals(title)).findFirst()
				.orElse(null);
	}

	/** Presses a button with a text, as the mouse would, when the screen has time: what comes of it may open a dialog. */
	public static void press(Composite in, String text) {
		Button button = get(() -> all(in, Button.class).stream().filter(each -> each.getText().replace("&", "").equals(text)).findFirst()
				.orElseThrow(() -> new AssertionError("no button " + text + " among " + all(in, Button.class))));
		Display.getDefault().asyncExec(() -> {
			if ((button.getStyle() & (SWT.CHECK | SWT.RADIO)) != 0) {
				button.setSelection(!button.getSelection());
			}
			button.notifyListeners(SWT.Selection, new Event());
		});
		pause(100);
	}

	/** Runs a command as its key would; it may open a dialog. */
	public static void command(String id) {
		Display.getDefault().asyncExec(() -> {
			try {
				PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand(id, null);
			} catch (CommandException e) {
				throw new IllegalStateException(e);
			}
		});
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
