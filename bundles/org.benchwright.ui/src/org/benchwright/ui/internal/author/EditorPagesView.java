package org.benchwright.ui.internal.author;

import java.nio.file.Path;

import org.benchwright.ui.internal.app.Editors;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.part.IPage;
import org.eclipse.ui.part.MessagePage;
import org.eclipse.ui.part.Page;
import org.eclipse.ui.part.PageBook;
import org.eclipse.ui.part.PageBookView;
import org.eclipse.ui.texteditor.ITextEditor;

/** A view with a page of its own for each family or procedure that is open in an editor. */
abstract class EditorPagesView extends PageBookView {

    /** What is shown while no family and no procedure is in front. */
    abstract String nothing();

    /** The page of an editor. */
    abstract Page page(ITextEditor editor, Path file);

    @Override
    protected final IPage createDefaultPage(PageBook book) {
        MessagePage page = new MessagePage();
        initPage(page);
        page.createControl(book);
        page.setMessage(nothing());
        return page;
    }

    @Override
    protected final PageRec doCreatePage(IWorkbenchPart part) {
        Page page = page((ITextEditor) part, Editors.file(part).orElseThrow());
        initPage(page);
        page.createControl(getPageBook());
        return new PageRec(part, page);
    }

    @Override
    protected final void doDestroyPage(IWorkbenchPart part, PageRec record) {
        record.page.dispose();
        record.dispose();
    }

    @Override
    protected final IWorkbenchPart getBootstrapPart() {
        return getSite().getPage().getActiveEditor();
    }

    @Override
    protected final boolean isImportant(IWorkbenchPart part) {
        return Editors.file(part).isPresent();
    }
}
