package drive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;

import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Menu;

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
		// what can be done about a flaw is another thing for each; that has a case of its own
		found.removeIf(entry -> entry.startsWith("Right button > Flaws > Withdraw: "));
		String prefix = "Right button > " + name + " > ";
		List<String> agreed = Entries.agreed(list, entry -> entry.startsWith(prefix));
		// what is pasted changes the words that are clicked
		List<String> order = new ArrayList<>(agreed);
		order.sort(Comparator.comparing(entry -> entry.endsWith("> Paste")));
		for (String entry : order) {
			// the wizards that two menus share are driven once
			String key = entry.contains(" > New > ") ? entry.substring(prefix.length()) : entry;
			if (found.contains(entry) && !entry.endsWith(Entries.GREY) && driven.add(key)) {
				entries.attempt(entry, 60, () -> {
					ready.run();
					click(at.get());
					hands.rest(400);
					String[] path = entry.substring(prefix.length()).split(" > ");
					hands.chooseOpen(path);
				});
			}
		}
		Entries.requireAgreed(found, agreed);
	}

	private void click(Point where) {
		hands.click(where, 1, 1);
		hands.click(where, 3, 1);
	}

	private List<String> open(String name, Supplier<Control> holder, Supplier<Point> at) {
		click(at.get());
		TreeSet<String> found = new TreeSet<>();
		Control control = holder.get();
		// a busy machine may lose a click
		for (int tries = 0; tries < 2 && found.isEmpty(); tries++) {
			if (tries > 0) {
				hands.key("Escape");
				click(at.get());
			}
			for (int i = 0; i < 30 && found.isEmpty(); i++) {
				hands.rest(200);
				hands.see(() -> {
					Menu menu = null;
					for (Control each = control; each != null && menu == null; each = each.getParent()) {
						menu = each.getMenu();
					}
					if (menu != null && menu.isVisible()) {
						Entries.gather(menu, "Right button > " + name, found);
					}
					return null;
				});
			}
			if (found.isEmpty() && hands.see(() -> control.getMenu() == null)) {
				break;
			}
		}
		if (found.isEmpty() && hands.see(() -> control.getMenu() != null)) {
			throw new AssertionError("there is a menu, and it does not open");
		}
		return new ArrayList<>(found);
	}
}
