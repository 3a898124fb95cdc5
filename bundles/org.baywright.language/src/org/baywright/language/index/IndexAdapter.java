package org.baywright.language.index;

import org.baywright.language.bay.RuleFile;
import org.eclipse.emf.common.notify.Adapter;
import org.eclipse.emf.common.notify.impl.AdapterImpl;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.emf.ecore.resource.ResourceSet;

/** Keeps a project's index with its resources, where the platform's services find it. */
public final class IndexAdapter extends AdapterImpl {

	private final ProjectIndex index;

	private IndexAdapter(ProjectIndex index) {
		this.index = index;
	}

	/** Makes the index that of the resources. Whoever attaches it keeps it up to date. */
	public static void attach(ResourceSet resources, ProjectIndex index) {
		resources.eAdapters().removeIf(IndexAdapter.class::isInstance);
		resources.eAdapters().add(new IndexAdapter(index));
	}

	/**
	 * Returns the index of the project that an element belongs to. Resources that were loaded without the workspace have
	 * none; for them one is made at each call.
	 */
	public static ProjectIndex of(EObject element) {
		Resource own = element.eResource();
		ResourceSet resources = own == null ? null : own.getResourceSet();
		if (resources != null) {
			for (Adapter adapter : resources.eAdapters()) {
				if (adapter instanceof IndexAdapter found) {
					return found.index;
				}
			}
		}
		ProjectIndex made = new ProjectIndex();
		if (resources == null) {
			add(made, own);
		} else {
			resources.getResources().forEach(resource -> add(made, resource));
		}
		return made;
	}

	private static void add(ProjectIndex index, Resource resource) {
		if (resource != null && !resource.getContents().isEmpty()
				&& resource.getContents().get(0) instanceof RuleFile content) {
			String file = resource.getURI().toString();
			index.replace(file, FileSymbols.of(file, content));
		}
	}

	@Override
	public boolean isAdapterForType(Object type) {
		return type == IndexAdapter.class;
	}
}
