package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.Optional;

import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IURIEditorInput;
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
        Page page = page((ITextEditor) part, file(part).orElseThrow());
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
        return file(part).isPresent();
    }

    /** The family or procedure that a part is the editor of. */
    static Optional<Path> file(IWorkbenchPart part) {
        return Optional.ofNullable(part).filter(ITextEditor.class::isInstance).map(each -> ((IEditorPart) each).getEditorInput())
                .filter(IURIEditorInput.class::isInstance).map(input -> ((IURIEditorInput) input).getURI())
                .filter(uri -> "file".equals(uri.getScheme())).map(uri -> Path.of(uri).toAbsolutePath().normalize())
                .filter(Documents::isOurs);
    }
}
