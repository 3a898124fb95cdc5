package org.baywright.workbench.help;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

import org.baywright.presenter.help.HelpPage;
import org.baywright.presenter.help.SetText;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.DropDown;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.ComboViewer;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.events.MouseListener;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.ISharedImages;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.part.ViewPart;

/** Shows one page of help, with a list of all pages and a search. */
public final class HelpView extends ViewPart {

	/** The view's id. */
	public static final String ID = "org.baywright.workbench.view.help";

	private final Deque<HelpPage> past = new ArrayDeque<>();
	private ComboViewer pages;
	private StyledText text;
	private SetText shown;
	private HelpPage page;
	private boolean choosing;
	private Action back;

	@Override
	public void createPartControl(Composite parent) {
		GridLayoutFactory.fillDefaults().margins(4, 4).spacing(4, 4).applyTo(parent);
		Text search = new Text(parent, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
		search.setMessage(HelpMessages.Search);
		Accessible.name(search, HelpMessages.Search);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(search);

		pages = new ComboViewer(DropDown.of(parent, HelpMessages.Contents));
		pages.setContentProvider(ArrayContentProvider.getInstance());
		pages.setLabelProvider(LabelProvider.createTextProvider(entry -> ((HelpPage) entry).title()));
		GridDataFactory.fillDefaults().grab(true, false).hint(60, SWT.DEFAULT).applyTo(pages.getControl());

		text = new StyledText(parent, SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL | SWT.MULTI);
		text.setMargins(8, 4, 8, 8);
		text.setCaret(null);
		Accessible.name(text, HelpMessages.Page);
		GridDataFactory.fillDefaults().grab(true, true).applyTo(text);
		text.addMouseListener(MouseListener.mouseUpAdapter(event -> {
			int offset = text.getOffsetAtPoint(new org.eclipse.swt.graphics.Point(event.x, event.y));
			follow(offset < 0 ? "" : shown.linkAt(offset));
		}));

		list(Help.book().pages());
		pages.addSelectionChangedListener(event -> {
			if (!choosing && event.getStructuredSelection().getFirstElement() instanceof HelpPage chosen) {
				turnTo(chosen, true);
			}
		});
		search.addModifyListener(event -> {
			List<HelpPage> found = Help.book().search(search.getText());
			list(found.isEmpty() ? Help.book().pages() : found);
			search.setToolTipText(found.isEmpty() ? HelpMessages.NothingFound : null);
			if (!found.isEmpty() && !found.contains(page)) {
				turnTo(found.get(0), true);
			}
		});
		back = new Action(HelpMessages.Back) {
			@Override
			public void run() {
				if (!past.isEmpty()) {
					turnTo(past.pop(), false);
				}
			}
		};
		back.setImageDescriptor(PlatformUI.getWorkbench().getSharedImages().getImageDescriptor(ISharedImages.IMG_TOOL_BACK));
		getViewSite().getActionBars().getToolBarManager().add(back);
		show(Help.START);
	}

	private void list(List<HelpPage> found) {
		choosing = true;
		pages.setInput(found);
		if (page != null) {
			pages.setSelection(new StructuredSelection(page));
		}
		choosing = false;
	}

	/** Turns to a page; an unknown one shows the first page. */
	public void show(String id) {
		turnTo(Help.book().page(id).orElse(Help.book().pages().get(0)), true);
	}

	/** Turns to a page and there to what stands under a heading; without such a heading to its beginning. */
	void show(String id, String heading) {
		show(id);
		shown.runs().stream().filter(run -> run.look() == SetText.Look.HEADING || run.look() == SetText.Look.TITLE)
				.filter(run -> shown.text().substring(run.start(), run.start() + run.length()).strip().equals(heading)).findFirst()
				.ifPresent(run -> {
					text.setTopIndex(text.getLineAtOffset(run.start()));
					text.setSelection(run.start(), run.start() + heading.length());
				});
	}

	/** Returns the id of the page that is shown. */
	public String shownPage() {
		return page.id();
	}

	private void turnTo(HelpPage to, boolean remember) {
		if (remember && page != null && page != to) {
			past.push(page);
		}
		page = to;
		shown = SetText.of(to.markdown());
		PageSetter.set(text, shown);
		back.setEnabled(!past.isEmpty());
		choosing = true;
		pages.setSelection(new StructuredSelection(to), true);
		choosing = false;
	}

	private void follow(String target) {
		if (target.isEmpty()) {
			return;
		}
		if (target.contains("://")) {
			Program.launch(target);
		} else {
			show(target.replaceFirst("\\.md$", ""));
		}
	}

	@Override
	public void setFocus() {
		text.setFocus();
	}
}
