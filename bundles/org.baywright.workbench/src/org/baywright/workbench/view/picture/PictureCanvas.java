package org.baywright.workbench.view.picture;

import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;

import org.baywright.presenter.picture.LaidOut;
import org.baywright.presenter.picture.LaidOut.Box;
import org.baywright.presenter.picture.LaidOut.Direction;
import org.baywright.presenter.picture.LaidOut.Rect;
import org.baywright.presenter.picture.Node;
import org.baywright.workbench.view.Grounds;
import org.baywright.workbench.view.ViewMessages;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleControlAdapter;
import org.eclipse.swt.accessibility.AccessibleControlEvent;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.events.ControlListener;
import org.eclipse.swt.events.FocusListener;
import org.eclipse.swt.events.MouseEvent;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.graphics.Transform;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.ScrollBar;

/**
 * A picture that can be moved, made larger and walked through: the wheel scrolls, with Ctrl it makes larger, dragging
 * moves, arrow keys walk from box to box, Enter or a double click opens the text.
 */
final class PictureCanvas {

	private static final double MIN = 0.05;
	private static final double MAX = 4;
	private static final double STEP = 1.2;
	/** What is smaller than this cannot be read any more. */
	private static final double READABLE = 0.85;
	private static final int DRAG = 4;

	private final Canvas canvas;
	private final ScreenMetrics metrics;
	private final Consumer<Node> open;
	private Paper paper;
	private LaidOut picture;
	private String empty = "";
	private double zoom = 1;
	private double left;
	private double top;
	private Optional<String> chosen = Optional.empty();
	private Point pressed;
	private Point dragged;

	PictureCanvas(Composite parent, Consumer<Node> open) {
		this.open = open;
		canvas = new Canvas(parent, SWT.DOUBLE_BUFFERED | SWT.H_SCROLL | SWT.V_SCROLL | SWT.NO_BACKGROUND);
		metrics = new ScreenMetrics(canvas);
		paper = new Paper(metrics, Grounds.theme(canvas));
		canvas.addPaintListener(event -> paint(event.gc));
		canvas.addControlListener(ControlListener.controlResizedAdapter(event -> settle()));
		canvas.addFocusListener(FocusListener.focusGainedAdapter(event -> canvas.redraw()));
		canvas.addFocusListener(FocusListener.focusLostAdapter(event -> canvas.redraw()));
		canvas.addListener(SWT.MouseWheel, this::wheel);
		canvas.addListener(SWT.MouseHorizontalWheel, event -> move(-event.count * 20, 0));
		canvas.addListener(SWT.KeyDown, this::key);
		canvas.addListener(SWT.Traverse, event -> event.doit = event.detail != SWT.TRAVERSE_RETURN);
		addMouse();
		for (ScrollBar bar : new ScrollBar[] { canvas.getHorizontalBar(), canvas.getVerticalBar() }) {
			bar.addListener(SWT.Selection, event -> {
				left = canvas.getHorizontalBar().getSelection() / zoom;
				top = canvas.getVerticalBar().getSelection() / zoom;
				canvas.redraw();
			});
		}
		addAccessible();
	}

	Canvas control() {
		return canvas;
	}

	ScreenMetrics metrics() {
		return metrics;
	}

	LaidOut picture() {
		return picture;
	}

	/**
	 * Shows a picture in place of the present one; the chosen box stays chosen if it is there.
	 *
	 * @param shown the picture
	 * @param ifEmpty what to say if it has no boxes
	 * @param fit whether to show all of it, or so much that it can still be read
	 */
	void show(LaidOut shown, String ifEmpty, boolean fit) {
		picture = shown;
		empty = ifEmpty;
		// the box it spoke of may be gone
		canvas.setToolTipText(null);
		chosen = chosen.filter(id -> shown.box(id).isPresent());
		if (fit) {
			fit();
			zoom(Math.max(1, READABLE / zoom), new Point(0, 0));
		} else {
			settle();
		}
	}

	/** Brings a box, or else the first one, to the left edge, in the middle of the height; does nothing if all is seen. */
	void beginAt(String id) {
		if (picture != null) {
			picture.box(id).or(() -> picture.neighbour(id, Direction.RIGHT)).ifPresent(box -> {
				left = box.bounds().x() - 20;
				top = box.bounds().y() + box.bounds().height() / 2 - canvas.getClientArea().height / zoom / 2;
				settle();
			});
		}
	}

	/** Says something in place of a picture. */
	void say(String words) {
		picture = null;
		empty = words;
		settle();
	}

	// ---- drawing -----------------------------------------------------------------------------------------------

	private void paint(GC gc) {
		if (!paper.theme().equals(Grounds.theme(canvas))) {
			paper = new Paper(metrics, Grounds.theme(canvas));
		}
		Rectangle area = canvas.getClientArea();
		gc.setBackground(paper.colour(paper.theme().background()));
		gc.fillRectangle(area);
		if (picture == null || picture.boxes().isEmpty()) {
			gc.setForeground(paper.colour(paper.theme().label()));
			gc.drawText(empty, 12, 10, SWT.DRAW_TRANSPARENT | SWT.DRAW_DELIMITER);
			return;
		}
		Transform transform = new Transform(gc.getDevice());
		transform.scale((float) zoom, (float) zoom);
		transform.translate((float) -left, (float) -top);
		gc.setTransform(transform);
		paper.draw(gc, picture, new Rect(left, top, area.width / zoom, area.height / zoom), chosen);
		gc.setTransform(null);
		transform.dispose();
		if (canvas.isFocusControl()) {
			gc.drawFocus(area.x + 1, area.y + 1, area.width - 2, area.height - 2);
		}
	}

	/** Keeps the picture in sight and the scroll bars right. */
	private void settle() {
		Rectangle area = canvas.getClientArea();
		double width = picture == null ? 0 : picture.width();
		double height = picture == null ? 0 : picture.height();
		left = Math.max(0, Math.min(left, width - area.width / zoom));
		top = Math.max(0, Math.min(top, height - area.height / zoom));
		set(canvas.getHorizontalBar(), left, width, area.width);
		set(canvas.getVerticalBar(), top, height, area.height);
		canvas.redraw();
	}

	private void set(ScrollBar bar, double at, double size, int page) {
		int whole = (int) Math.ceil(size * zoom);
		bar.setVisible(whole > page);
		bar.setValues((int) Math.round(at * zoom), 0, Math.max(1, whole), Math.max(1, Math.min(page, whole)), 30,
				Math.max(1, page - 30));
	}

	private void move(double dx, double dy) {
		left += dx / zoom;
		top += dy / zoom;
		settle();
	}

	// ---- larger and smaller ------------------------------------------------------------------------------------

	void larger() {
		zoom(STEP, middle());
	}

	void smaller() {
		zoom(1 / STEP, middle());
	}

	private Point middle() {
		Rectangle area = canvas.getClientArea();
		return new Point(area.width / 2, area.height / 2);
	}

	/** Shows all of the picture, no larger than it is. */
	void fit() {
		if (picture != null && picture.width() > 0) {
			Rectangle area = canvas.getClientArea();
			zoom = clamp(Math.min(1, Math.min(area.width / picture.width(), area.height / picture.height())));
			left = 0;
			top = 0;
		}
		settle();
	}

	/** Shows letters in their own size. */
	void natural() {
		zoom(1 / zoom, middle());
	}

	private void zoom(double by, Point at) {
		double before = zoom;
		zoom = clamp(zoom * by);
		left += at.x / before - at.x / zoom;
		top += at.y / before - at.y / zoom;
		settle();
	}

	private static double clamp(double zoom) {
		return Math.max(MIN, Math.min(MAX, zoom));
	}

	// ---- mouse and keys ----------------------------------------------------------------------------------------

	private void wheel(Event event) {
		if ((event.stateMask & SWT.MOD1) != 0) {
			zoom(event.count > 0 ? STEP : 1 / STEP, new Point(event.x, event.y));
		} else if ((event.stateMask & SWT.SHIFT) != 0) {
			move(-event.count * 20, 0);
		} else {
			move(0, -event.count * 20);
		}
		event.doit = false;
	}

	private void addMouse() {
		canvas.addListener(SWT.MouseDown, event -> {
			canvas.setFocus();
			pressed = new Point(event.x, event.y);
			dragged = pressed;
		});
		canvas.addListener(SWT.MouseUp, event -> {
			boolean stayed = pressed != null && Math.hypot(event.x - pressed.x, event.y - pressed.y) < DRAG;
			pressed = null;
			canvas.setCursor(null);
			if (stayed && event.button == 1) {
				choose(at(event.x, event.y), false);
				at(event.x, event.y).map(Box::node).ifPresent(open);
			}
		});
		canvas.addMouseMoveListener(this::mouse);
	}

	private void mouse(MouseEvent event) {
		if (pressed != null) {
			if (Math.hypot(event.x - pressed.x, event.y - pressed.y) >= DRAG) {
				canvas.setCursor(canvas.getDisplay().getSystemCursor(SWT.CURSOR_SIZEALL));
				move(dragged.x - event.x, dragged.y - event.y);
				dragged = new Point(event.x, event.y);
			}
			return;
		}
		Optional<Box> box = at(event.x, event.y);
		canvas.setCursor(box.isPresent() ? canvas.getDisplay().getSystemCursor(SWT.CURSOR_HAND) : null);
		String tip = box.map(found -> found.node().description()).orElse(null);
		if (!Objects.equals(tip, canvas.getToolTipText())) {
			canvas.setToolTipText(tip);
		}
	}

	private Optional<Box> at(int x, int y) {
		return picture == null ? Optional.empty() : picture.at(left + x / zoom, top + y / zoom);
	}

	private void key(Event event) {
		if (picture == null) {
			return;
		}
		switch (event.keyCode) {
		case SWT.ARROW_LEFT -> walk(Direction.LEFT);
		case SWT.ARROW_RIGHT -> walk(Direction.RIGHT);
		case SWT.ARROW_UP -> walk(Direction.UP);
		case SWT.ARROW_DOWN -> walk(Direction.DOWN);
		case SWT.HOME -> choose(picture.neighbour("", Direction.RIGHT), true);
		case SWT.CR, SWT.KEYPAD_CR -> chosen.flatMap(picture::box).map(Box::node).ifPresent(open);
		case SWT.KEYPAD_ADD -> larger();
		case SWT.KEYPAD_SUBTRACT -> smaller();
		default -> {
			switch (event.character) {
			case '+', '=' -> larger();
			case '-' -> smaller();
			case '0' -> fit();
			case '1' -> natural();
			default -> {
				return;
			}
			}
		}
		}
	}

	private void walk(Direction direction) {
		picture.neighbour(chosen.orElse(""), direction).ifPresent(box -> choose(Optional.of(box), true));
	}

	private void choose(Optional<Box> box, boolean reveal) {
		chosen = box.map(found -> found.node().id());
		if (reveal) {
			box.ifPresent(this::reveal);
		}
		canvas.redraw();
		canvas.getAccessible().setFocus(ACC.CHILDID_SELF);
	}

	private void reveal(Box box) {
		Rectangle area = canvas.getClientArea();
		Rect at = box.bounds();
		double width = area.width / zoom;
		double height = area.height / zoom;
		if (at.x() < left || at.x() + at.width() > left + width) {
			left = at.centreX() - width / 2;
		}
		if (at.y() < top || at.y() + at.height() > top + height) {
			top = at.centreY() - height / 2;
		}
		settle();
	}

	// ---- for those who hear the screen -------------------------------------------------------------------------

	private void addAccessible() {
		canvas.getAccessible().addAccessibleListener(new AccessibleAdapter() {
			@Override
			public void getName(AccessibleEvent event) {
				event.result = picture == null ? empty
						: chosen.flatMap(picture::box).map(box -> box.node().description()).orElse(picture.picture().title());
			}

			@Override
			public void getHelp(AccessibleEvent event) {
				event.result = ViewMessages.PictureHelp;
			}
		});
		canvas.getAccessible().addAccessibleControlListener(new AccessibleControlAdapter() {
			@Override
			public void getRole(AccessibleControlEvent event) {
				event.detail = ACC.ROLE_GRAPHIC;
			}
		});
	}
}
