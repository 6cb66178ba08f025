package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.ui.internal.Message;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IURIEditorInput;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.part.IPage;
import org.eclipse.ui.part.MessagePage;
import org.eclipse.ui.part.PageBook;
import org.eclipse.ui.part.PageBookView;
import org.eclipse.ui.texteditor.ITextEditor;

/** The contents of the text that is being written: its stages, steps and what they use. */
public final class ContentsView extends PageBookView {

    @Override
    protected IPage createDefaultPage(PageBook book) {
        MessagePage page = new MessagePage();
        initPage(page);
        page.createControl(book);
        page.setMessage(Message.CONTENTS_NONE.text());
        return page;
    }

    @Override
    protected PageRec doCreatePage(IWorkbenchPart part) {
        ContentsPage page = new ContentsPage((ITextEditor) part, file(part).orElseThrow());
        initPage(page);
        page.createControl(getPageBook());
        return new PageRec(part, page);
    }

    @Override
    protected void doDestroyPage(IWorkbenchPart part, PageRec record) {
        record.page.dispose();
        record.dispose();
    }

    @Override
    protected IWorkbenchPart getBootstrapPart() {
        return getSite().getPage().getActiveEditor();
    }

    @Override
    protected boolean isImportant(IWorkbenchPart part) {
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
