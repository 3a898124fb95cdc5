package org.baywright.workbench.view.grid;

import java.util.List;

import org.baywright.workbench.Baywright;
import org.eclipse.core.runtime.Platform;
import org.osgi.framework.Bundle;
import org.osgi.framework.wiring.BundleWiring;

/**
 * Lets the library of collections that the table builds on find its own parts. It looks for them once, through the
 * thread's class loader, where OSGi does not show them; without them the table stays blank.
 */
final class TableParts {

	private static final String LIBRARY = "org.eclipse.collections.impl";
	private static final String API = "org.eclipse.collections.api.factory.";
	private static final String PRIMITIVE = "org.eclipse.collections.impl.factory.primitive.";
	private static final List<String> FACTORIES = List.of(API + "Lists", API + "Sets", API + "Maps", PRIMITIVE + "IntLists",
			PRIMITIVE + "IntSets", PRIMITIVE + "IntIntMaps", PRIMITIVE + "IntObjectMaps", PRIMITIVE + "IntBooleanMaps",
			PRIMITIVE + "IntDoubleMaps", PRIMITIVE + "ObjectIntMaps");

	private TableParts() {
	}

	/** To be called before the first table is made; does nothing where there is no OSGi. */
	static void load() {
		Bundle library = Platform.isRunning() ? Platform.getBundle(LIBRARY) : null;
		if (library == null) {
			return;
		}
		ClassLoader loader = library.adapt(BundleWiring.class).getClassLoader();
		Thread thread = Thread.currentThread();
		ClassLoader before = thread.getContextClassLoader();
		thread.setContextClassLoader(loader);
		try {
			for (String factory : FACTORIES) {
				Class.forName(factory, true, loader);
			}
		} catch (ClassNotFoundException e) {
			Baywright.log("The grid of tests and faults may stay blank.", e);
		} finally {
			thread.setContextClassLoader(before);
		}
	}
}
