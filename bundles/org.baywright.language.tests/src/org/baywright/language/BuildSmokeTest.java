package org.baywright.language;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.junit.jupiter.api.Test;

class BuildSmokeTest {

	@Test
	void rulesFileGetsAnXtextResource() {
		new BayStandaloneSetup().createInjectorAndDoEMFRegistration();
		assertInstanceOf(XtextResource.class, new XtextResourceSet().createResource(URI.createURI("smoke.bay")));
	}
}
