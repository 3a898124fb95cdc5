package org.baywright.workbench.editor;

import java.util.function.Consumer;

import org.baywright.workbench.project.OpenProject;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.widgets.Display;

/** Asks the language for a command: on a worker thread, and then goes on on the screen's. */
final class Ask {

	private Ask() {
	}

	static <T> void then(String title, EditedFile of, OpenProject.Question<T> question, Consumer<T> next) {
		Display display = Display.getCurrent();
		String text = of.document().get();
		ICoreRunnable work = monitor -> {
			T answer = of.project().ask(of.file(), text, question);
			display.asyncExec(() -> next.accept(answer));
		};
		Job job = Job.create(title, work);
		job.setUser(false);
		job.setPriority(Job.INTERACTIVE);
		job.schedule();
	}
}
