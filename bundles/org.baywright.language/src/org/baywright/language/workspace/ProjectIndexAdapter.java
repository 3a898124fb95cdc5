package org.baywright.language.workspace;

import org.baywright.language.index.ProjectIndex;
import org.eclipse.emf.common.notify.impl.AdapterImpl;
import org.eclipse.emf.ecore.resource.ResourceSet;

final class ProjectIndexAdapter extends AdapterImpl {

	static void attach(ResourceSet resources, ProjectIndex index) {
	}
}
