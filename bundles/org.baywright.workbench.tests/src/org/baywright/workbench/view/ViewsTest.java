package org.baywright.workbench.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Stream;

import org.baywright.model.PictureFile;
import org.baywright.presenter.picture.Node;
import org.baywright.presenter.picture.Theme;
import org.baywright.workbench.Ui;
import org.baywright.workbench.project.ActiveProject;
import org.baywright.workbench.project.Places;
import org.baywright.workbench.view.bench.BenchView;
import org.baywright.workbench.view.cases.CasesView;
import org.baywright.workbench.view.flaws.FlawsView;
import org.baywright.workbench.view.grid.GridView;
import org.baywright.workbench.view.picture.PictureView;
import org.baywright.workbench.view.plan.PlanView;
import org.baywright.workbench.wizard.ProjectMaker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.jface.action.ActionContributionItem;
import org.eclipse.nebula.widgets.nattable.NatTable;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPartReference;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/** The five views on an example project with two mistakes put into it. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class ViewsTest {

	private static final String MISTAKES = """
			rule at_odds "Asks for what the law forbids" {
			  given rest_voltage below 12 V, rest_voltage at_least 12.4 V
			  then suspects battery.worn
			  because "It is a mistake."
			  source memory
			  by "R. Falk" on 2026-03-02
			}
			job "Job 9999: wrong" {
			  on bord_s with engine diesel_2_1, built 2017
			  found no_crank, rest_voltage 12.6 V
			  was battery.discharged
			}
			""";

	private static IProject project;

	@BeforeAll
	static void openProject() throws Exception {
		Ui.closeWelcome();
		Ui.run(() -> {
			Ui.page().getWorkbenchWindow().getShell().setBounds(0, 0, 1440, 900);
		});
		project = ResourcesPlugin.getWorkspace().getRoot().getProject("light-van");
		if (!project.exists()) {
			Map<String, String> texts = new TreeMap<>(Map.of("mistakes.bay", MISTAKES));
			try (Stream<Path> files = Files.list(examples())) {
				for (Path file : files.filter(each -> each.toString().endsWith(".bay")).toList()) {
					texts.put(file.getFileName().toString(), Files.readString(file));
				}
			}
			Map<String, byte[]> pictures = new TreeMap<>();
			for (String picture : PictureFile.in(examples())) {
				pictures.put(picture, Files.readAllBytes(examples().resolve(picture)));
			}
			ProjectMaker.make("light-van", texts, pictures, new NullProgressMonitor());
		}
		Ui.run(() -> {
			Ui.page().closeAllEditors(false);
			Ui.page().resetPerspective();
			Places.open(project.getFile("rules-starting.bay"), 0, 0, true);
			ActiveProject.of(Ui.page().getWorkbenchWindow()).activate(project);
		});
		Ui.await(() -> "not checked", () -> ActiveProject.of(Ui.page().getWorkbenchWindow()).state()
				.filter(state -> state.isFresh() && state.project().equals(project)).isPresent());
	}

	@AfterAll
	static void leaveNothing() throws Exception {
		closeEditors();
		project.delete(true, true, new NullProgressMonitor());
	}

	private static Path examples() {
		for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
			if (Files.isDirectory(at.resolve("rules-examples/light-van"))) {
				return at.resolve("rules-examples/light-van");
			}
		}
		throw new IllegalStateException("no folder rules-examples above the working directory");
	}

	/** Takes a picture of a view in the whole window. */
	private static void large(String id, String name) {
		IWorkbenchPartReference part = Ui.get(() -> Ui.page().findViewReference(id));
		Ui.run(() -> Ui.page().setPartState(part, IWorkbenchPage.STATE_MAXIMIZED));
		Ui.pause(500);
		Ui.picture(name);
		Ui.run(() -> Ui.page().setPartState(part, IWorkbenchPage.STATE_RESTORED));
	}

	// ---- finding one's way -------------------------------------------------------------------------------------

	private static RulesView show(String id) {
		return Ui.get(() -> (RulesView) Ui.page().showView(id));
	}

	private static <T extends Control> List<T> all(RulesView view, Class<T> type) {
		List<T> found = new ArrayList<>();
		collect(view.body(), type, found::add);
		return found;
	}

	private static <T extends Control> void collect(Composite in, Class<T> type, Consumer<T> use) {
		for (Control child : in.getChildren()) {
			if (type == child.getClass()) {
				use.accept(type.cast(child));
			}
			if (child instanceof Composite inner) {
				collect(inner, type, use);
			}
		}
	}

	private static <T extends Control> T one(RulesView view, Class<T> type) {
		return Ui.get(() -> all(view, type).get(0));
	}

	private static void await(String otherwise, RulesView view, Predicate<RulesView> so) {
		Ui.await(() -> otherwise + ": " + texts(view), () -> so.test(view));
	}

	private static String texts(RulesView view) {
		List<String> texts = new ArrayList<>();
		all(view, CLabel.class).forEach(label -> texts.add(label.getText()));
		all(view, Label.class).forEach(label -> texts.add(label.getText()));
		all(view, StyledText.class).forEach(text -> texts.add(text.getText()));
		return texts.toString();
	}

	private static void select(Combo combo, String item) {
		int at = List.of(combo.getItems()).indexOf(item);
		assertTrue(at >= 0, () -> item + " is not among " + List.of(combo.getItems()));
		combo.select(at);
		combo.notifyListeners(SWT.Selection, new Event());
	}

	private static Event at(Point point) {
		Event event = new Event();
		event.button = 1;
		event.x = point.x;
		event.y = point.y;
		return event;
	}

	private static void closeEditors() {
		Ui.run(() -> Ui.page().closeAllEditors(false));
	}

	private static String editor() {
		IEditorPart editor = Ui.page().getActiveEditor();
		return editor == null ? "" : editor.getTitle();
	}

	// ---- the views ---------------------------------------------------------------------------------------------

	@Test
	void flawsTellTheMistakesAndLeadToThem() {
		closeEditors();
		RulesView view = show(FlawsView.ID);
		await("no flaws", view, shown -> texts(shown).contains("1 error and 1 warning"));
		Tree tree = one(view, Tree.class);
		Ui.run(() -> {
			var dead = Stream.of(tree.getItems()).flatMap(kind -> Stream.of(kind.getItems()))
					.filter(item -> item.getText().contains("at_odds")).findFirst().orElseThrow();
			tree.setSelection(dead);
			Event event = new Event();
			event.item = dead;
			tree.notifyListeners(SWT.Selection, event);
		});
		await("no reason", view, shown -> texts(shown).contains("These lines together make it so")
				|| texts(shown).contains("This line alone makes it so"));
		Ui.picture("views-flaws");
		StyledText details = one(view, StyledText.class);
		Ui.run(() -> {
			int link = details.getText().indexOf("of mistakes.bay");
			details.notifyListeners(SWT.MouseUp, at(details.getLocationAtOffset(link)));
		});
		Ui.await(() -> "no editor", () -> editor().equals("mistakes.bay"));
		Text search = one(view, Text.class);
		Ui.run(() -> search.setText("zeppelin"));
		await("not filtered", view, shown -> tree.getItemCount() == 0);
		Ui.run(() -> search.setText(""));
		await("not back", view, shown -> tree.getItemCount() > 0);
	}

	@Test
	void thePictureIsDrawnWalkedAndLeadsToTheText() {
		closeEditors();
		RulesView view = show(PictureView.ID);
		await("no picture", view, shown -> shown.getContentDescription().contains("rules"));
		List<Combo> combos = Ui.get(() -> all(view, Combo.class));
		Ui.run(() -> {
			select(combos.get(0), "Quillane Bord S panel van");
			select(combos.get(1), "a fault");
			select(combos.get(2), "12 V battery: Capacity lost");
		});
		await("not the fault", view, shown -> shown.getContentDescription().contains("Capacity lost"));
		Canvas canvas = one(view, Canvas.class);
		Ui.run(() -> {
			canvas.setFocus();
			Stream.of(SWT.HOME, SWT.ARROW_RIGHT, SWT.ARROW_RIGHT, SWT.ARROW_DOWN).forEach(key -> press(canvas, key));
			press(canvas, SWT.CR);
		});
		Ui.await(() -> "no editor", () -> editor().endsWith(".bay"));
		Ui.run(() -> Ui.page().activate(view));
		large(PictureView.ID, "picture");
		Ui.run(() -> select(combos.get(1), "everything"));
		await("not all", view, shown -> !shown.getContentDescription().contains("Capacity lost"));
		Ui.picture("views-picture-all");
	}

	@Test
	void thePlanIsDrawnWithItsFigures() {
		RulesView view = show(PlanView.ID);
		await("no plan", view, shown -> shown.getContentDescription().contains("Plan for"));
		List<Combo> combos = Ui.get(() -> all(view, Combo.class));
		Ui.run(() -> {
			select(combos.get(0), "Quillane Bord S panel van");
			select(combos.get(1), "Engine cranks slowly");
		});
		await("not the complaint", view, shown -> shown.getContentDescription().contains("Plan for “Engine cranks slowly” on Quillane Bord S panel van"));
		StyledText figures = one(view, StyledText.class);
		String told = Ui.get(figures::getText);
		assertTrue(told.startsWith("Caution, "), told);
		assertTrue(told.contains("\nWork: about ") && told.contains("Of 100 vehicles "), told);
		Canvas canvas = one(view, Canvas.class);
		Ui.run(() -> {
			canvas.setFocus();
			press(canvas, SWT.HOME);
			press(canvas, SWT.CR);
		});
		Ui.await(() -> "no editor", () -> editor().endsWith(".bay"));
		Ui.run(() -> Ui.page().activate(view));
		large(PlanView.ID, "plan");
	}

	private static void press(Control control, int key) {
		Event event = new Event();
		event.keyCode = key;
		control.notifyListeners(SWT.KeyDown, event);
	}

	@Test
	void theGridSetsTestsAgainstFaults() {
		RulesView view = show(GridView.ID);
		await("no grid", view, shown -> texts(shown).contains(" tests and "));
		NatTable table = one(view, NatTable.class);
		Ui.await(() -> "no cells", () -> table.getColumnCount() > 4 && table.getRowCount() > 3);
		Ui.run(() -> select(all(view, Combo.class).get(0), "Quillane Plover small van"));
		await("not the van", view, shown -> texts(shown).contains("Whether") || texts(shown).contains("faults."));
		String first = String.valueOf(Ui.get(() -> table.getDataValueByPosition(0, 1)));
		assertEquals("Signs and codes alone", first);
		Ui.run(() -> select(all(view, Combo.class).get(3), "By title"));
		large(GridView.ID, "grid");
		String confirmed = Theme.LIGHT.boxes().get(Node.Kind.CONFIRMED).fill();
		assertTrue(Ui.get(() -> pixels(table, Grounds.colour(confirmed).getRGB())) > 500, "no cell in its colour");
	}

	@Test
	@Order(Integer.MAX_VALUE) // the platform's theme does not wholly go back without a new start
	void pictureAndGridFollowADarkTheme() {
		RulesView picture = show(PictureView.ID);
		await("no picture", picture, shown -> shown.getContentDescription().contains("rules"));
		IThemeEngine themes = Ui.get(() -> PlatformUI.getWorkbench().getService(IThemeEngine.class));
		String before = Ui.get(() -> themes.getActiveTheme().getId());
		try {
			Ui.run(() -> themes.setTheme("org.eclipse.e4.ui.css.theme.e4_dark", false));
			Canvas canvas = one(picture, Canvas.class);
			RGB ground = Grounds.colour(Theme.DARK.background()).getRGB();
			Ui.await(() -> "the picture stays light", () -> {
				canvas.redraw();
				canvas.update();
				return pixels(canvas, ground) > 500;
			});
			Ui.picture("views-picture-dark");
			RulesView grid = show(GridView.ID);
			NatTable table = one(grid, NatTable.class);
			RGB confirmed = Grounds.colour(Theme.DARK.boxes().get(Node.Kind.CONFIRMED).fill()).getRGB();
			RGB head = Grounds.colour(Theme.DARK.boxes().get(Node.Kind.CODE).fill()).getRGB();
			Ui.await(() -> "the grid stays light", () -> pixels(table, confirmed) > 500 && pixels(table, head) > 5000);
			Ui.picture("views-grid-dark");
		} finally {
			Ui.run(() -> themes.setTheme(before, false));
		}
	}

	private static int pixels(Control control, RGB colour) {
		Image image = new Image(control.getDisplay(), control.getSize().x, control.getSize().y);
		GC gc = new GC(control);
		gc.copyArea(image, 0, 0);
		gc.dispose();
		ImageData data = image.getImageData();
		image.dispose();
		int count = 0;
		for (int y = 0; y < data.height; y++) {
			for (int x = 0; x < data.width; x++) {
				count += data.palette.getRGB(data.getPixel(x, y)).equals(colour) ? 1 : 0;
			}
		}
		return count;
	}

	@Test
	void theBenchSaysWhatTheRulesMakeOfAVehicle() {
		RulesView view = show(BenchView.ID);
		await("no bench", view, shown -> all(shown, Combo.class).get(0).getItemCount() > 1);
		Ui.run(() -> select(all(view, Combo.class).get(0), "Quillane Bord S panel van"));
		await("no question", view, shown -> texts(shown).contains("What is wrong with the vehicle?"));
		enter(view, "Engine does not crank (sign)", "present");
		await("no next step", view, shown -> texts(shown).contains("Until the cause is found: about"));
		Ui.picture("bench");
		enter(view, "Battery voltage at rest (test)", "much");
		await("no message", view, shown -> texts(shown).contains("Write a number in V"));
		enter(view, "Battery voltage at rest (test)", "11400 mV");
		await("not confirmed", view, shown -> texts(shown).contains("Do the repair"));
		assertTrue(Ui.get(() -> texts(view)).contains("Battery voltage at rest: 11.4 V"), Ui.get(() -> texts(view)));
		Ui.run(() -> {
			var bar = view.getViewSite().getActionBars().getToolBarManager().getItems();
			((ActionContributionItem) bar[bar.length - 1]).getAction().run();
		});
		String copied = Ui.get(() -> {
			Clipboard clipboard = new Clipboard(Display.getCurrent());
			Object content = clipboard.getContents(TextTransfer.getInstance());
			clipboard.dispose();
			return String.valueOf(content);
		});
		assertTrue(copied.contains("found no_crank, rest_voltage 11.4 V") && copied.contains("was battery.discharged"), copied);
		choose(view, "Battery voltage at rest (test)");
		Ui.press(view.body(), "Take away");
		await("not taken away", view, shown -> !texts(shown).contains("Battery voltage at rest: 11.4 V"));
	}

	/** Enters a value where the bar shows a list or a field for it. */
	private static void enter(RulesView view, String subject, String value) {
		choose(view, subject);
		Ui.run(() -> {
			Text number = all(view, Text.class).get(0);
			if (number.isVisible()) {
				number.setText(value);
			} else {
				select(all(view, Combo.class).get(1), value);
			}
		});
		Ui.press(view.body(), "Enter");
	}

	/** Chooses among all that can be entered, by some of its words. */
	private static void choose(RulesView view, String subject) {
		Ui.press(view.body(), "Enter something else\u2026");
		Shell dialog = Ui.dialog("Enter something else");
		Ui.run(() -> Ui.all(dialog, Text.class).get(0).setText(subject.replaceFirst("^(\\w+) (.*)", "$2 $1")));
		Table found = Ui.get(() -> Ui.all(dialog, Table.class).get(0));
		Ui.await(() -> subject + " is not found", () -> found.getItemCount() == 1 && found.getSelectionCount() == 1 && found.getSelection()[0].getText().equals(subject));
		Ui.press(dialog, "OK");
		Ui.await(() -> "not chosen", dialog::isDisposed);
	}

	@Test
	void failingJobsComeFirstAndSayWhy() {
		RulesView view = show(CasesView.ID);
		await("no jobs", view, shown -> texts(shown).contains("1 of "));
		Table table = one(view, Table.class);
		Ui.run(() -> {
			assertTrue(table.getItem(0).getText(0).startsWith("Job 9999"), table.getItem(0).getText(0));
			table.setSelection(0);
			Event event = new Event();
			event.item = table.getItem(0);
			table.notifyListeners(SWT.Selection, event);
		});
		await("no reason", view, shown -> texts(shown).contains("The cause was battery.discharged"));
		Ui.picture("views-cases");
		int all = Ui.get(table::getItemCount);
		assertTrue(all > 5, all + " jobs");
		Ui.run(() -> {
			var bar = view.getViewSite().getActionBars().getToolBarManager().getItems();
			var failing = ((ActionContributionItem) bar[1]).getAction();
			failing.setChecked(true);
			failing.run();
		});
		await("not filtered", view, shown -> table.getItemCount() == 1);
		assertFalse(Ui.get(() -> texts(view)).isEmpty());
	}
}
