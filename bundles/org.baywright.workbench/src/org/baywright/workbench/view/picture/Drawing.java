package org.baywright.workbench.view.picture;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;

import org.baywright.presenter.picture.LaidOut;
import org.baywright.presenter.picture.Layout;
import org.baywright.presenter.picture.Node;
import org.baywright.presenter.picture.Picture;
import org.baywright.presenter.picture.Svg;
import org.baywright.presenter.picture.TextMetrics;
import org.baywright.presenter.picture.Theme;
import org.baywright.workbench.Icon;
import org.baywright.workbench.view.Exporting;
import org.baywright.workbench.view.Latest;
import org.baywright.workbench.view.RulesView;
import org.baywright.workbench.view.ViewMessages;
import org.eclipse.jface.action.Action;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;

/** A picture in a view, laid out aside, with what can be done with it: make it larger and smaller, show all of it, save it. */
public final class Drawing {

	private final PictureCanvas canvas;
	private final Latest layout;
	private final Latest export;
	private final List<Action> actions;
	private final Action save;

	/**
	 * @param working what the work is called where running work is listed
	 * @param open gets the box that the reader follows
	 */
	public Drawing(Composite parent, String working, Consumer<Node> open) {
		canvas = new PictureCanvas(parent, open);
		layout = new Latest(working, canvas.control());
		export = new Latest(working, canvas.control());
		save = RulesView.action(ViewMessages.SaveSvg, Icon.EXPORT.descriptor(), this::save);
		save.setEnabled(false);
		actions = List.of(RulesView.action(ViewMessages.Larger, Icon.ZOOMIN.descriptor(), canvas::larger),
				RulesView.action(ViewMessages.Smaller, Icon.ZOOMOUT.descriptor(), canvas::smaller), RulesView.action(ViewMessages.Fit, Icon.FIT.descriptor(), canvas::fit), save);
	}

	public Control control() {
		return canvas.control();
	}

	/** Returns what can be done with it, in the order of the tool bar. */
	public List<Action> actions() {
		return actions;
	}

	/** Says something in place of a picture. */
	public void say(String words) {
		layout.cancel();
		canvas.say(words);
		save.setEnabled(false);
	}

	/**
	 * Lays a picture out and shows it.
	 *
	 * @param picture called on a worker thread
	 * @param ifEmpty what to say if it has no boxes
	 * @param fit whether to show all of it, or so much that it can be read, and not the part that is seen now
	 * @param begin id of the box that is seen first then; an unknown one means the first
	 * @param shown gets the picture when it is there
	 */
	public void draw(Supplier<Picture> picture, String ifEmpty, boolean fit, String begin, Consumer<Picture> shown) {
		ScreenMetrics metrics = canvas.metrics();
		layout.run(cancelled -> Layout.of(picture.get(), metrics, cancelled), drawn -> {
			canvas.show(drawn, ifEmpty, fit);
			if (fit) {
				canvas.beginAt(begin);
			}
			save.setEnabled(!drawn.boxes().isEmpty());
			shown.accept(drawn.picture());
		});
	}

	/** The file gets a layout of its own, with widths that do not depend on this screen's fonts. */
	private void save() {
		LaidOut drawn = canvas.picture();
		if (drawn != null) {
			export.run(cancelled -> Svg.write(Layout.of(drawn.picture(), TextMetrics.FIXED, cancelled), Theme.LIGHT),
					svg -> Exporting.toFile(canvas.control().getShell(), drawn.picture().title(), "svg", svg));
		}
	}
}
