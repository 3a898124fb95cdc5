package drive;

import java.nio.file.Path;

import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.PlatformUI;
import org.osgi.framework.BundleActivator;
import org.osgi.framework.BundleContext;

/** Starts driving as soon as the product's window is there. */
public final class Activator implements BundleActivator {

	@Override
	public void start(BundleContext context) {
		Thread driver = new Thread(Activator::drive, "driver");
		driver.setDaemon(true);
		driver.start();
	}

	private static void drive() {
		Path work = Path.of(System.getProperty("drive.work"));
		Display display = null;
		while (display == null) {
			Hands.rest(200);
			if (PlatformUI.isWorkbenchRunning() && !PlatformUI.getWorkbench().isStarting()) {
				display = PlatformUI.getWorkbench().getDisplay();
			}
		}
		Hands.rest(1500);
		Controls controls = new Controls(display, work, Drive.part(work));
		new Drive(new Hands(display, work.resolve("pictures"), controls), controls, work).go();
	}

	@Override
	public void stop(BundleContext context) {
		// the thread ends with the product
	}
}
