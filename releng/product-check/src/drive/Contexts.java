package drive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;

/** Opens menus by the right button: their entries are those that were agreed on, and something comes of each. */
final class Contexts {

	private final Hands hands;
	private final Runnable ready;
	private final Entries entries;
	private final Path list;
	private final Set<String> driven = new HashSet<>();

	Contexts(Hands hands, Runnable ready, Entries entries, Path list) {
		this.hands = hands;
		this.ready = ready;
		this.entries = entries;
		this.list = list;
	}

	/**
	 * Looks at one menu.
	 *
	 * @param name what is clicked, as the list calls it
	 * @param holder what has the menu
	 * @param at where to click on the screen
	 */
	void look(String name, Supplier<Control> holder, Supplier<Point> at) throws IOException {
		ready.run();
		List<String> found = open(name, holder, at);
		hands.picture("menu-of-" + name.replace(' ', '-'));
		hands.key("Escape", "Escape");
		String prefix = "Right button > " + name + " > ";
		List<String> agreed = Files.readAllLines(list).stream().filter(entry -> entry.startsWith(prefix)).toList();
		List<String> odd = new ArrayList<>();
		found.stream().filter(entry -> !agreed.contains(entry)).forEach(entry -> odd.add("new: " + entry));
		agreed.stream().filter(entry -> !found.contains(entry)).forEach(entry -> odd.add("gone: " + entry));
		// what is pasted changes the words that are clicked
		List<String> order = new ArrayList<>(agreed);
		order.sort(Comparator.comparing(entry -> entry.endsWith("> Paste")));
		for (String entry : order) {
			// what two menus share is driven once
			if (found.contains(entry) && !entry.endsWith(" (grey)") && driven.add(entry.substring(prefix.length()))) {
				entries.attempt(entry, 60, () -> {
					ready.run();
					hands.click(at.get(), 1, 1);
					hands.click(at.get(), 3, 1);
					hands.rest(400);
					String[] path = entry.substring(prefix.length()).split(" > ");
					hands.chooseOpen(path);
				});
			}
		}
		if (!odd.isEmpty()) {
			throw new AssertionError("not as agreed: " + odd);
		}
	}

	private List<String> open(String name, Supplier<Control> holder, Supplier<Point> at) {
		hands.click(at.get(), 1, 1);
		hands.click(at.get(), 3, 1);
		TreeSet<String> found = new TreeSet<>();
		Control control = holder.get();
		for (int i = 0; i < 30 && found.isEmpty(); i++) {
			hands.rest(200);
			hands.see(() -> {
				Menu menu = null;
				for (Control each = control; each != null && menu == null; each = each.getParent()) {
					menu = each.getMenu();
				}
				if (menu != null && menu.isVisible()) {
					gather(menu, "Right button > " + name, found);
				}
				return null;
			});
		}
		if (found.isEmpty() && hands.see(() -> control.getMenu() != null)) {
			throw new AssertionError("there is a menu, and it does not open");
		}
		return new ArrayList<>(found);
	}

	private static void gather(Menu menu, String path, TreeSet<String> found) {
		for (MenuItem item : menu.getItems()) {
			if ((item.getStyle() & SWT.SEPARATOR) != 0) {
				continue;
			}
			String here = path + " > " + Hands.plain(item.getText()).replaceFirst("^(Undo|Redo) .*", "$1");
			if (item.getMenu() == null) {
				if (item.isEnabled()) {
					found.add(here);
				} else {
					found.add(here + " (grey)");
				}
			} else {
				item.getMenu().notifyListeners(SWT.Show, new Event());
				gather(item.getMenu(), here, found);
			}
		}
	}
}
