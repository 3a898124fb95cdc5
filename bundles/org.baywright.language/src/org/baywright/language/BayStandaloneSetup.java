package org.baywright.language;

import com.google.inject.Injector;

/** Sets the language up where there is no Eclipse platform. */
public class BayStandaloneSetup extends BayStandaloneSetupGenerated {

	/** Holds the one injector of a plain program; made when it is first needed. */
	private static final class Plain {
		static final Injector INJECTOR = new BayStandaloneSetup().createInjectorAndDoEMFRegistration();
	}

	/** Returns the language's services, set up at the first call and shared from then on. */
	public static Injector injector() {
		return Plain.INJECTOR;
	}
}
