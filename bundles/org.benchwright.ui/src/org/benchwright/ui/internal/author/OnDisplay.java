package org.benchwright.ui.internal.author;

import org.benchwright.language.editing.Analysis;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Widget;
import org.eclipse.ui.PlatformUI;

/** What was found out on another thread is shown on the display's, if it is still about what is there. */
final class OnDisplay {

    private OnDisplay() {
    }

    /** Runs on the display's thread, unless the widget is gone by then. */
    static void later(Widget widget, Runnable work) {
        if (!PlatformUI.isWorkbenchRunning()) {
            return;
        }
        Display display = PlatformUI.getWorkbench().getDisplay();
        if (!display.isDisposed()) {
            display.asyncExec(() -> {
                if (widget != null && !widget.isDisposed()) {
                    work.run();
                }
            });
        }
    }

    /** Whether an analysis is about exactly the text that a document has now. */
    static boolean isAbout(Analysis analysis, IDocument document) {
        return document != null && document.getLength() == analysis.text().length()
                && Documents.path(document).filter(analysis.file()::equals).isPresent() && document.get().equals(analysis.text());
    }
}
