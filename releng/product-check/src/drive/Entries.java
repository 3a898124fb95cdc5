package drive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.Predicate;

import org.eclipse.core.runtime.jobs.IJobChangeEvent;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.core.runtime.jobs.JobChangeAdapter;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.ToolItem;

/** Chooses every entry of the menus and clicks every button of a tool bar, and looks whether anything comes of it. */
final class Entries {

	/** A blinking cursor and the look of the button under the mouse are no more than this. */
	private static final int FEW_PIXELS = 1500;
	/** What an entry is called in the list that cannot be chosen as things stand. */
	static final String GREY = " (grey)";
	/** How the work is named that an entry begins and that may show nothing. */
	private static final Map<String, String> WORK = Map.of("Refresh", "refresh", "Check all rules again", "read");
	private static final String SENTINEL = "nothing was copied";

	private final Hands hands;
	private final Runnable ready;
	private final Consumer<String> note;

	/**
	 * @param ready brings the window into a state in which every entry can do something
	 * @param note hears of each entry
	 */
	Entries(Hands hands, Runnable ready, Consumer<String> note) {
		this.hands = hands;
		this.ready = ready;
		this.note = note;
	}

	/** Chooses some entries of a list. */
	void menus(Predicate<String> which, Path list) throws IOException {
		for (String entry : agreed(list, which.and(Entries::isOfMenuBar))) {
			attempt("menu " + entry, 60, () -> hands.menu(entry.split(" > ")));
		}
	}

	/** Returns the agreed entries of some kind. */
	static List<String> agreed(Path list, Predicate<String> which) throws IOException {
		return Files.readAllLines(list).stream().filter(which).toList();
	}

	/** Returns whether an entry of the list is one of the menus above the window. */
	static boolean isOfMenuBar(String entry) {
		return !entry.startsWith("Preferences > ") && !entry.startsWith("Right button > ");
	}

	/** Fails on what is there and was not agreed on, and on what was agreed on and is not there. */
	static void requireAgreed(Collection<String> found, Collection<String> agreed) {
		List<String> odd = new ArrayList<>();
		found.stream().filter(entry -> !agreed.contains(entry)).forEach(entry -> odd.add("new: " + entry));
		agreed.stream().filter(entry -> !found.contains(entry)).forEach(entry -> odd.add("gone: " + entry));
		if (!odd.isEmpty()) {
			throw new AssertionError("not as agreed: " + odd);
		}
	}

	/** Collects the entries of a menu and of those below it, with what leads there; to be called on the screen's thread. */
	static void gather(Menu menu, String path, Collection<String> found) {
		for (MenuItem item : menu.getItems()) {
			if ((item.getStyle() & SWT.SEPARATOR) != 0) {
				continue;
			}
			// what is undone is named in the entry
			String here = path + " > " + Hands.plain(item.getText()).replaceFirst("^(Undo|Redo) .*", "$1");
			if (item.getMenu() == null) {
				found.add(item.isEnabled() ? here : here + GREY);
			} else {
				item.getMenu().notifyListeners(SWT.Show, new Event());
				gather(item.getMenu(), here, found);
			}
		}
	}

	/** Clicks all buttons that the tool bar in front of a view has. */
	void toolBar(String view) {
		List<ToolItem> items = hands.seen().stream().filter(ToolItem.class::isInstance).map(ToolItem.class::cast)
				.filter(item -> hands.see(() -> !item.isDisposed() && item.isEnabled() && (item.getStyle() & SWT.SEPARATOR) == 0 && hands.belongsTo(item, view)))
				.toList();
		if (items.isEmpty()) {
			throw new AssertionError("no button can be clicked");
		}
		for (ToolItem item : items) {
			String label = hands.see(() -> Hands.label(item));
			if (label.isEmpty() || label.equals("null")) {
				throw new AssertionError("a button says nothing");
			}
			boolean check = hands.see(() -> (item.getStyle() & SWT.CHECK) != 0);
			boolean before = hands.see(() -> check && item.getSelection());
			attempt("button " + view + " > " + label, FEW_PIXELS, () -> {
				if (hands.see(item::isDisposed)) {
					throw new AssertionError("the button is gone");
				}
				hands.click(item);
			});
			if (check && hands.see(() -> !item.isDisposed() && item.getSelection() != before)) {
				// what is hidden now is looked at later
				ready.run();
				hands.click(item);
			}
		}
	}

	/** Does something and looks whether anything comes of it; on a busy machine a stroke is lost now and then, so a second time too. */
	void attempt(String name, int few, Runnable act) {
		int most = 2;
		// what these show is over within the blink of an eye, mostly before anybody looks; the work that they begin is known
		String work = WORK.entrySet().stream().filter(each -> name.endsWith("> " + each.getKey())).map(Map.Entry::getValue).findFirst().orElse(null);
		for (int attempt = 1; attempt <= most; attempt++) {
			try {
				act(few, work, act);
				note.accept("passed " + name);
				return;
			} catch (RuntimeException | AssertionError e) {
				if (attempt == most) {
					hands.picture("failed-" + name.replaceAll("[^A-Za-z0-9]+", "-"));
					note.accept("FAILED " + name + ": " + e.getMessage());
				}
			} finally {
				hands.alone();
			}
		}
	}

	private void act(int few, String work, Runnable act) {
		ready.run();
		copy();
		hands.rest(300);
		int[] before = hands.screen();
		AtomicBoolean begun = new AtomicBoolean();
		JobChangeAdapter listener = new JobChangeAdapter() {
			@Override
			public void scheduled(IJobChangeEvent event) {
				if (work != null && event.getJob().getName().toLowerCase(Locale.ROOT).startsWith(work)) {
					begun.set(true);
				}
			}
		};
		Job.getJobManager().addJobChangeListener(listener);
		try {
			act.run();
			for (int i = 0; i < 6; i++) {
				if (begun.get() || hands.gone() || differ(before, hands.screen()) > few || !SENTINEL.equals(hands.see(Entries::copied))) {
					return;
				}
				hands.rest(150);
			}
		} finally {
			Job.getJobManager().removeJobChangeListener(listener);
		}
		throw new AssertionError("nothing came of it");
	}

	static int differ(int[] one, int[] other) {
		int count = 0;
		for (int i = 0; i < one.length; i++) {
			count += one[i] == other[i] ? 0 : 1;
		}
		return count;
	}

	private void copy() {
		hands.see(() -> {
			Clipboard clipboard = new Clipboard(Display.getCurrent());
			clipboard.setContents(new Object[] { SENTINEL }, new Transfer[] { TextTransfer.getInstance() });
			clipboard.dispose();
			return null;
		});
	}

	/** Returns the text on the clipboard; to be called on the screen's thread. */
	static String copied() {
		Clipboard clipboard = new Clipboard(Display.getCurrent());
		Object text = clipboard.getContents(TextTransfer.getInstance());
		clipboard.dispose();
		return String.valueOf(text);
	}
}
