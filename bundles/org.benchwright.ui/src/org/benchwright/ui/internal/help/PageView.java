package org.benchwright.ui.internal.help;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.RemarkPages;
import org.benchwright.present.HelpPage;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.look.Story;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.part.ViewPart;

/** A page to read: what a remark means, with an example that earns it and the same mended, or a page of the manual. */
public final class PageView extends ViewPart {

    private Story story;

    @Override
    public void createPartControl(Composite parent) {
        story = new Story(parent, 1);
        story.paragraph(Message.EXPLAIN_NONE.text());
    }

    /** Shows the page of a remark's code. */
    public static void show(IWorkbenchPage page, RemarkCode code) {
        show(page, code.word(), RemarkPages.text(code));
    }

    /** Shows a page of the manual. */
    public static void show(IWorkbenchPage page, HelpPage manual) {
        show(page, manual.title(), manual.text());
    }

    private static void show(IWorkbenchPage page, String title, String markdown) {
        try {
            ((PageView) page.showView(Ids.PAGE_VIEW, null, IWorkbenchPage.VIEW_VISIBLE)).show(title, markdown);
        } catch (PartInitException failed) {
            MessageDialog.openInformation(page.getWorkbenchWindow().getShell(), Message.AUTHOR_EXPLAIN.text(), String.valueOf(failed.getMessage()));
        }
    }

    private void show(String title, String markdown) {
        story.clear();
        story.heading(title);
        for (PageLines.Line line : new PageLines(markdown).lines()) {
            if (line.heads()) {
                story.strong(line.words());
            } else {
                story.paragraph(line.words());
            }
        }
        story.control().setTopIndex(0);
    }

    @Override
    public void setFocus() {
        story.control().setFocus();
    }
}
