package org.benchwright.ui.internal.author;

import java.util.Locale;

import org.benchwright.language.editing.Proposal;
import org.benchwright.language.editing.Proposal.Slot;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension2;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension6;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.text.link.LinkedModeModel;
import org.eclipse.jface.text.link.LinkedModeUI;
import org.eclipse.jface.text.link.LinkedPosition;
import org.eclipse.jface.text.link.LinkedPositionGroup;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;

/** A proposal in the editor's list. After a template the Tab key goes from one passage to fill in to the next. */
public final class AuthorProposal implements ICompletionProposal, ICompletionProposalExtension2, ICompletionProposalExtension6 {

    private final Proposal proposal;
    private Point selected;

    AuthorProposal(Proposal proposal) {
        this.proposal = proposal;
    }

    @Override
    public void apply(IDocument document) {
        write(document, proposal.offset() + proposal.length());
    }

    @Override
    public void apply(ITextViewer viewer, char trigger, int stateMask, int offset) {
        IDocument document = viewer.getDocument();
        if (write(document, offset) && !proposal.slots().isEmpty()) {
            fillIn(viewer);
        }
    }

    private boolean write(IDocument document, int end) {
        try {
            document.replace(proposal.offset(), end - proposal.offset(), proposal.text());
            selected = new Point(proposal.offset() + proposal.text().length(), 0);
            return true;
        } catch (BadLocationException changed) {
            // The list closes where the text before the caret changes; this is a race lost.
            ILog.of(AuthorProposal.class).warn(String.valueOf(changed.getMessage()), changed);
            return false;
        }
    }

    private void fillIn(ITextViewer viewer) {
        try {
            LinkedModeModel model = new LinkedModeModel();
            int turn = 0;
            for (Slot slot : proposal.slots()) {
                LinkedPositionGroup group = new LinkedPositionGroup();
                group.addPosition(new LinkedPosition(viewer.getDocument(), proposal.offset() + slot.offset(), slot.length(), turn++));
                model.addGroup(group);
            }
            model.forceInstall();
            LinkedModeUI ui = new LinkedModeUI(model, viewer);
            ui.setExitPosition(viewer, proposal.offset() + proposal.text().length(), 0, Integer.MAX_VALUE);
            ui.enter();
            selected = new Point(ui.getSelectedRegion().getOffset(), ui.getSelectedRegion().getLength());
        } catch (BadLocationException impossible) {
            throw new IllegalStateException("a slot lies outside of its own text", impossible);
        }
    }

    @Override
    public boolean validate(IDocument document, int offset, DocumentEvent event) {
        try {
            String typed = offset < proposal.offset() ? null : document.get(proposal.offset(), offset - proposal.offset());
            return typed != null && proposal.label().toLowerCase(Locale.ROOT).startsWith(typed.toLowerCase(Locale.ROOT));
        } catch (BadLocationException gone) {
            // The text has become shorter than that: the proposal does not fit any more.
            return false;
        }
    }

    @Override
    public StyledString getStyledDisplayString() {
        StyledString shown = new StyledString(proposal.label());
        return proposal.detail().isEmpty() ? shown : shown.append("   " + proposal.detail(), StyledString.QUALIFIER_STYLER);
    }

    @Override
    public String getDisplayString() {
        return getStyledDisplayString().getString();
    }

    @Override
    public String getAdditionalProposalInfo() {
        return proposal.kind() == Proposal.Kind.TEMPLATE ? proposal.text() : proposal.detail();
    }

    @Override
    public Point getSelection(IDocument document) {
        return selected;
    }

    @Override
    public Image getImage() {
        return Pictures.of(proposal.kind());
    }

    @Override
    public IContextInformation getContextInformation() {
        return null;
    }

    @Override
    public void selected(ITextViewer viewer, boolean smartToggle) {
        // Nothing is shown in the text before it is taken.
    }

    @Override
    public void unselected(ITextViewer viewer) {
        // Nothing was shown.
    }
}
