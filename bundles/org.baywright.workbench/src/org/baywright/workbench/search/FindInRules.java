package org.baywright.workbench.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

import org.baywright.language.workspace.Snapshot;
import org.baywright.presenter.Say;
import org.baywright.presenter.search.Hit;
import org.baywright.presenter.search.RuleSearch;
import org.baywright.workbench.Icon;
import org.baywright.workbench.project.Nature;
import org.baywright.workbench.project.OpenProject;
import org.baywright.workbench.project.RuleProjects;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.SubMonitor;
import org.eclipse.osgi.util.NLS;
import org.eclipse.search.ui.NewSearchUI;
import org.eclipse.ui.handlers.HandlerUtil;

/** Opens the search dialog at the page that finds rules, and searches in all rule projects. */
public final class FindInRules extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		NewSearchUI.openSearchDialog(HandlerUtil.getActiveWorkbenchWindow(event), FindPage.ID);
		return null;
	}

	static PlacesQuery query(RuleSearch search) {
		return new PlacesQuery(SearchMessages.Title, monitor -> answer(search, monitor));
	}

	private static PlacesQuery.Answer answer(RuleSearch search, IProgressMonitor monitor) {
		List<IProject> projects = Arrays.stream(ResourcesPlugin.getWorkspace().getRoot().getProjects()).filter(Nature::isOn)
				.sorted(Comparator.comparing(IProject::getName)).toList();
		if (projects.isEmpty()) {
			return new PlacesQuery.Answer(SearchMessages.NoProject, List.of());
		}
		SubMonitor progress = SubMonitor.convert(monitor, SearchMessages.Title, projects.size());
		List<PlaceFound> places = new ArrayList<>();
		int left = 0;
		for (IProject project : projects) {
			OpenProject open = RuleProjects.of(project);
			Snapshot texts = open.snapshot(progress::isCanceled);
			for (Hit hit : search.in(texts.rules())) {
				if (hit.span().isElsewhere()) {
					continue; // found there, if that is in the workspace
				}
				places.add(new PlaceFound(open.file(hit.span().file()), hit.span().offset(), hit.span().length(), hit.line(), icon(hit)));
			}
			left += texts.dropped().size();
			progress.worked(1);
		}
		String told = search.headline(places.size());
		return new PlacesQuery.Answer(left == 0 ? told : told + ". " + NLS.bind(SearchMessages.Left, Say.count(left, "element")), places);
	}

	private static Icon icon(Hit hit) {
		return switch (hit.element()) {
		case JOB -> Icon.CASE;
		case REMARK, REVIEWER -> Icon.REVIEW;
		case WORKSHOP -> Icon.TOOL;
		default -> Icon.valueOf(hit.element().name());
		};
	}
}
