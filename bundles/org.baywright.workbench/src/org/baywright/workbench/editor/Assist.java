package org.baywright.workbench.editor;

import java.util.List;
import java.util.Optional;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.complete.Proposal;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.IContentAssistProcessor;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.text.contentassist.IContextInformationValidator;

/** Offers what can stand at the cursor. The platform asks on a worker thread. */
public final class Assist implements IContentAssistProcessor {

	@Override
	public ICompletionProposal[] computeCompletionProposals(ITextViewer viewer, int offset) {
		IDocument document = viewer.getDocument();
		if (AssistSession.opensByItself(viewer) && !isInWord(document, offset)) {
			// where no word has begun, Down and Enter belong to the text
			return new ICompletionProposal[0];
		}
		Optional<EditedFile> edited = EditedFile.of(document);
		if (edited.isEmpty()) {
			return new ICompletionProposal[0];
		}
		List<Proposal> proposals = edited.get().ask((EditorServices services, String path) -> services.complete(path, offset));
		return proposals.stream().map(proposal -> new Completion(proposal, viewer)).toArray(ICompletionProposal[]::new);
	}

	private static boolean isInWord(IDocument document, int offset) {
		try {
			char before = offset == 0 ? ' ' : document.getChar(offset - 1);
			return Character.isLetterOrDigit(before) || before == '_' || before == '.';
		} catch (BadLocationException e) {
			return false;
		}
	}

	@Override
	public IContextInformation[] computeContextInformation(ITextViewer viewer, int offset) {
		return null;
	}

	@Override
	public char[] getCompletionProposalAutoActivationCharacters() {
		return new char[] { '.' };
	}

	@Override
	public char[] getContextInformationAutoActivationCharacters() {
		return null;
	}

	@Override
	public String getErrorMessage() {
		return null;
	}

	@Override
	public IContextInformationValidator getContextInformationValidator() {
		return null;
	}
}
