package org.benchwright.ui.internal;

import java.util.concurrent.CompletionException;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.Shell;

/** Failures of work that was done elsewhere, in words. */
public final class Failures {

    private Failures() {
    }

    /** What to tell about a failure; one that nobody foresaw is logged too. */
    public static String words(Throwable failure) {
        Throwable cause = cause(failure);
        if (cause instanceof EntryRefusedException || cause instanceof TakenElsewhereException || cause instanceof CannotStoreException) {
            return String.valueOf(cause.getMessage());
        }
        ILog.of(Failures.class).error(String.valueOf(cause.getMessage()), cause);
        return Message.UNEXPECTED.text(cause.getClass().getSimpleName());
    }

    /** What made work fail that was done elsewhere. */
    public static Throwable cause(Throwable failure) {
        return failure instanceof CompletionException && failure.getCause() != null ? failure.getCause() : failure;
    }

    /** Tells a failure in a box. */
    public static void tell(Shell shell, Throwable failure) {
        tell(shell, Message.APP_TITLE.text(), failure);
    }

    /**
     * Tells a failure in a box.
     *
     * @param title what failed
     */
    public static void tell(Shell shell, String title, Throwable failure) {
        MessageDialog.openWarning(shell, title, Labels.letters(words(failure)));
    }
}
