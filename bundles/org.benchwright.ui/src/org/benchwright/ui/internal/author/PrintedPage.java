package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.PrintedText;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.Passage;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.eclipse.e4.core.services.events.IEventBroker;
import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CaretListener;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.part.Page;
import org.eclipse.ui.texteditor.ITextEditor;
import org.osgi.service.event.EventHandler;

/**
 * One file's procedures as the technician will read them. Follows the text as it is written and the caret in it; what is pointed at is gone to
 * in the text.
 */
final class PrintedPage extends Page implements AuthorListener {

    private final ITextEditor editor;
    private final Path file;
    private final IEventBroker broker = PlatformUI.getWorkbench().getService(IEventBroker.class);
    private final EventHandler lookChanged = event -> this.redraw();
    private final CaretListener caretMoved = event -> followCaret();
    private Composite page;
    private PrintedSheet sheet;
    private PrintedErrors errors;
    private PrintedNow now = PrintedNow.NOTHING;
    private Optional<PrintedJob> job = Optional.empty();
    /** True if the text may have changed since it was last made out, because nobody could have seen what it came to. */
    private boolean hidden = true;
    /** True from when the page comes into sight until what is shown is up to date. */
    private boolean comesUp;

    PrintedPage(ITextEditor editor, Path file) {
        this.editor = editor;
        this.file = file;
    }

    @Override
    public void createControl(Composite parent) {
        page = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(page);
        sheet = new PrintedSheet(page);
        sheet.control().setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        sheet.control().addListener(SWT.MouseUp, event -> pointed(new Point(event.x, event.y)));
        sheet.control().addListener(SWT.Paint, event -> {
            if (hidden) {
                hidden = false;
                comesUp = true;
                job.ifPresent(PrintedJob::schedule);
            }
        });
        errors = new PrintedErrors(page, place -> Passages.show(getSite().getPage(), place));
        broker.subscribe(IThemeEngine.Events.THEME_CHANGED, lookChanged);
        written().ifPresent(text -> text.addCaretListener(caretMoved));
        Authoring.current().ifPresent(authoring -> {
            job = Optional.of(new PrintedJob(authoring.folderOf(file), file, next -> OnDisplay.later(page, () -> show(next))));
            authoring.add(this);
        });
    }

    /** A family in another file of the folder may matter as much as the text itself. */
    @Override
    public void analysed(Analysis analysis) {
        if (file.getParent().equals(analysis.file().getParent())) {
            OnDisplay.later(page, this::makeOut);
        }
    }

    /** Not for a page that nobody sees; it makes up for it as it comes into sight. */
    private void makeOut() {
        if (page.isVisible()) {
            job.ifPresent(PrintedJob::schedule);
        } else {
            hidden = true;
        }
    }

    private void show(PrintedNow next) {
        boolean first = comesUp || now.procedures().isEmpty();
        now = next;
        comesUp = false;
        sheet.show(now.procedures().isEmpty() && now.errors().isEmpty() ? nothing() : now.parts());
        errors.show(now.errors(), !now.procedures().isEmpty());
        if (first) {
            followCaret();
        }
    }

    private static List<Part> nothing() {
        return List.of(new PrintedText.Sentence(Message.PRINTED_NO_PROCEDURE.text(), ""));
    }

    private void redraw() {
        sheet.draw();
        errors.show(now.errors(), !now.procedures().isEmpty());
    }

    /** What is folded away is in the text, but not in its widget: the selection tells the place in the text. */
    private void followCaret() {
        if (!page.isDisposed() && editor.getSelectionProvider().getSelection() instanceof ITextSelection caret) {
            now.at(file, caret.getOffset()).ifPresent(sheet::reveal);
        }
    }

    private Optional<StyledText> written() {
        return Optional.ofNullable(editor.getAdapter(Control.class)).filter(StyledText.class::isInstance).map(StyledText.class::cast)
                .filter(text -> !text.isDisposed());
    }

    /** A passage is gone to; text that was selected by dragging is not. */
    private void pointed(Point point) {
        if (sheet.control().getSelectionCount() == 0) {
            sheet.at(point).flatMap(key -> Optional.ofNullable(now.passages().get(key))).map(Passage::name)
                    .ifPresent(place -> Passages.show(getSite().getPage(), place));
        }
    }

    @Override
    public Control getControl() {
        return page;
    }

    @Override
    public void setFocus() {
        sheet.control().setFocus();
    }

    @Override
    public void dispose() {
        broker.unsubscribe(lookChanged);
        Authoring.current().ifPresent(authoring -> authoring.remove(this));
        job.ifPresent(PrintedJob::cancel);
        written().ifPresent(text -> text.removeCaretListener(caretMoved));
        super.dispose();
    }
}
