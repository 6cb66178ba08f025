package org.benchwright.ui.internal.author;

import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.IContentAssistProcessor;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.text.contentassist.IContextInformationValidator;

/** What could be written at the caret. The editor asks on a thread of its own. */
public final class AuthorAssist implements IContentAssistProcessor {

    private static final ICompletionProposal[] NOTHING = new ICompletionProposal[0];

    @Override
    public ICompletionProposal[] computeCompletionProposals(ITextViewer viewer, int offset) {
        return Documents.path(viewer.getDocument()).flatMap(file -> Authoring.current().map(authoring -> authoring.folderOf(file)
                .knowing(file, Documents.text(viewer.getDocument())).proposals(file, offset).stream().map(AuthorProposal::new)
                .toArray(ICompletionProposal[]::new))).orElse(NOTHING);
    }

    @Override
    public IContextInformation[] computeContextInformation(ITextViewer viewer, int offset) {
        return new IContextInformation[0];
    }

    @Override
    public char[] getCompletionProposalAutoActivationCharacters() {
        return new char[0];
    }

    @Override
    public char[] getContextInformationAutoActivationCharacters() {
        return new char[0];
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
