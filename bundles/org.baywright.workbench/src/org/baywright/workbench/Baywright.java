package org.baywright.workbench;

import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.ui.plugin.AbstractUIPlugin;
import org.osgi.framework.BundleContext;

/** The bundle as the platform sees it, with its ids and its log. */
public final class Baywright extends AbstractUIPlugin {

	/** The bundle's symbolic name. */
	public static final String ID = "org.baywright.workbench";

	/** Content type of rule files. */
	public static final String CONTENT_TYPE = ID + ".rules";

	/** The editor of rule files. */
	public static final String EDITOR = ID + ".editor";

	/** Ending of rule files, without the dot. */
	public static final String ENDING = "bay";

	private static Baywright instance;

	@Override
	public void start(BundleContext context) throws Exception {
		super.start(context);
		instance = this;
	}

	@Override
	public void stop(BundleContext context) throws Exception {
		instance = null;
		super.stop(context);
	}

	/** Returns the bundle, which is running whenever its code runs. */
	public static Baywright instance() {
		return instance;
	}

	/** Writes an error to the platform's log. */
	public static void log(String message, Throwable cause) {
		ILog.of(Baywright.class).log(error(message, cause));
	}

	/** Returns an error of this bundle. */
	public static IStatus error(String message, Throwable cause) {
		return new Status(IStatus.ERROR, ID, message, cause);
	}
}
