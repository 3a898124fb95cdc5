package org.baywright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;

import org.baywright.language.ide.complete.Proposal;
import org.baywright.language.ide.complete.Slot;
import org.baywright.presenter.help.SetText;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.Icon;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.BoldStylerProvider;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension2;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension6;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension7;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.text.link.LinkedModeModel;
import org.eclipse.jface.text.link.LinkedModeUI;
import org.eclipse.jface.text.link.LinkedPosition;
import org.eclipse.jface.text.link.LinkedPositionGroup;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.ui.texteditor.link.EditorLinkedModeUI;

/** A proposal in the platform's list; its slots are filled in one after the other with the tabulator key. */
final class Completion implements ICompletionProposal, ICompletionProposalExtension2, ICompletionProposalExtension6,
		ICompletionProposalExtension7 {

	private final Proposal proposal;
	private final ITextViewer viewer;
	private Point selection;

	Completion(Proposal proposal, ITextViewer viewer) {
		this.proposal = proposal;
		this.viewer = viewer;
	}

	@Override
	public void apply(IDocument document) {
		apply(viewer, (char) 0, 0, proposal.replaceOffset() + proposal.replaceLength());
	}

	@Override
	public void apply(ITextViewer in, char trigger, int stateMask, int offset) {
		IDocument document = in.getDocument();
		if (trigger == 0 && AssistSession.of(in).meansNewLine(isNothingToAdd(document, offset))) {
			// through the widget, so that the line is indented as any other
			in.getTextWidget().insert(in.getTextWidget().getLineDelimiter());
			selection = new Point(in.getSelectedRange().x, 0);
			return;
		}
		try {
			int end = Math.max(offset, proposal.replaceOffset() + proposal.replaceLength());
			document.replace(proposal.replaceOffset(), end - proposal.replaceOffset(), proposal.text());
			selection = new Point(proposal.replaceOffset() + proposal.text().length(), 0);
			if (!proposal.slots().isEmpty()) {
				fillIn(in, document);
			}
		} catch (BadLocationException e) {
			Baywright.log("The proposal does not fit the text any more.", e);
		}
	}

	/** Returns whether nothing of the proposal is written yet, or a whole word of it. */
	private boolean isNothingToAdd(IDocument document, int offset) {
		int written = offset - proposal.replaceOffset();
		String text = proposal.text();
		try {
			return written <= 0 || document.get(proposal.replaceOffset(), written).equalsIgnoreCase(text.substring(0, Math.min(written, text.length())))
					&& (written >= text.length() || !Character.isLetterOrDigit(text.charAt(written)) && text.charAt(written) != '_');
		} catch (BadLocationException e) {
			return true;
		}
	}

	private void fillIn(ITextViewer in, IDocument document) throws BadLocationException {
		TreeMap<Integer, List<Slot>> groups = new TreeMap<>();
		proposal.slots().forEach(slot -> groups.computeIfAbsent(slot.group(), none -> new ArrayList<>()).add(slot));
		LinkedModeModel model = new LinkedModeModel();
		int sequence = 0;
		for (List<Slot> slots : groups.values()) {
			LinkedPositionGroup group = new LinkedPositionGroup();
			for (Slot slot : slots) {
				group.addPosition(new LinkedPosition(document, proposal.replaceOffset() + slot.offset(), slot.length(), sequence));
			}
			sequence++;
			model.addGroup(group);
		}
		model.forceInstall();
		LinkedModeUI ui = new EditorLinkedModeUI(model, in);
		ui.setExitPosition(in, proposal.replaceOffset() + proposal.text().length(), 0, Integer.MAX_VALUE);
		ui.enter();
		selection = new Point(ui.getSelectedRegion().getOffset(), ui.getSelectedRegion().getLength());
	}

	@Override
	public boolean validate(IDocument document, int offset, DocumentEvent event) {
		try {
			if (offset < proposal.replaceOffset()) {
				return false;
			}
			String typed = document.get(proposal.replaceOffset(), offset - proposal.replaceOffset());
			// whoever goes on behind a blank writes it out; the list shall not stand in the way
			return proposal.label().toLowerCase(Locale.ROOT).startsWith(typed.toLowerCase(Locale.ROOT))
					|| typed.indexOf(' ') < 0 && proposal.text().toLowerCase(Locale.ROOT).startsWith(typed.toLowerCase(Locale.ROOT));
		} catch (BadLocationException e) {
			return false;
		}
	}

	@Override
	public Point getSelection(IDocument document) {
		return selection;
	}

	@Override
	public String getDisplayString() {
		return getStyledDisplayString().getString();
	}

	@Override
	public StyledString getStyledDisplayString() {
		StyledString styled = new StyledString(proposal.label());
		if (!proposal.detail().isEmpty()) {
			styled.append("  " + proposal.detail(), StyledString.QUALIFIER_STYLER);
		}
		return styled;
	}

	@Override
	public StyledString getStyledDisplayString(IDocument document, int offset, BoldStylerProvider bold) {
		// the list asks for it when it draws the line
		AssistSession.of(viewer).shown();
		StyledString styled = getStyledDisplayString();
		int typed = Math.min(offset - proposal.replaceOffset(), proposal.label().length());
		if (typed > 0) {
			styled.setStyle(0, typed, bold.getBoldStyler());
		}
		return styled;
	}

	@Override
	public String getAdditionalProposalInfo() {
		return proposal.documentation().isEmpty() ? null : SetText.of(proposal.documentation()).text().strip();
	}

	@Override
	public Image getImage() {
		Icon icon = switch (proposal.kind()) {
		case WORD -> Icon.KEYWORD;
		case UNIT, NUMBER, TEXT -> Icon.VALUE;
		default -> Icon.valueOf(proposal.kind().name());
		};
		return icon.image();
	}

	@Override
	public IContextInformation getContextInformation() {
		return null;
	}

	@Override
	public void selected(ITextViewer in, boolean smartToggle) {
		AssistSession.of(in).shown();
	}

	@Override
	public void unselected(ITextViewer in) {
		// nothing was shown
	}
}
