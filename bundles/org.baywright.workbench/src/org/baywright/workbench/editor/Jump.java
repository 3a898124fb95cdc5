package org.baywright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.outline.FoundSymbol;
import org.baywright.language.ide.outline.OutlineItem;
import org.baywright.workbench.Choosing;
import org.baywright.workbench.Icon;
import org.baywright.workbench.project.Places;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Jumps to an element that is chosen by its name: of this file, or with the parameter {@code project} of any. */
public final class Jump extends AbstractHandler {

	/** Something to jump to. */
	private record Goal(String label, Icon icon, String file, int offset, int length) {
	}

	@Override
	public Object execute(ExecutionEvent event) {
		boolean everywhere = event.getCommand().getId().endsWith("Project");
		AtCursor.of(event).ifPresent(at -> Ask.then(EditorMessages.JumpTitle, at.edited(),
				(EditorServices services, String path) -> everywhere ? ofProject(services) : ofFile(services, path),
				goals -> choose(at, everywhere ? EditorMessages.JumpProjectText : EditorMessages.JumpText, goals)));
		return null;
	}

	private static List<Goal> ofProject(EditorServices services) {
		List<Goal> goals = new ArrayList<>();
		for (FoundSymbol symbol : services.symbols("")) {
			String title = symbol.title().isEmpty() ? "" : "  " + symbol.title();
			goals.add(new Goal(symbol.name() + title, Icon.valueOf(symbol.kind().name()), symbol.file(), symbol.offset(), symbol.length()));
		}
		return goals;
	}

	private static List<Goal> ofFile(EditorServices services, String path) {
		List<Goal> goals = new ArrayList<>();
		Consumer<OutlineItem> add = item -> goals.add(new Goal(item.label() + (item.detail().isEmpty() ? "" : "  " + item.detail()),
				OutlineLabels.icon(item.kind()), path, item.nameOffset(), item.nameLength()));
		services.outline(path).forEach(item -> {
			add.accept(item);
			item.children().forEach(add);
		});
		return goals;
	}

	private static void choose(AtCursor at, String message, List<Goal> goals) {
		Choosing.one(at.editor().getSite().getShell(), EditorMessages.JumpTitle, message, goals, Goal::label, goal -> goal.icon().image())
				.ifPresent(goal -> Places.open(at.edited().project(), goal.file(), goal.offset(), goal.length()));
	}
}
