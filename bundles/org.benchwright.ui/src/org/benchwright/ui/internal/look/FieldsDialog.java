package org.benchwright.ui.internal.look;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;

import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.OnDisplay;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Shell;

/**
 * A dialog of fields in columns: its title stands on the frame and above, below that what it is for. What its button does is done off the screen's
 * thread, and the dialog stays until that is done or refused.
 */
public abstract class FieldsDialog extends TitleAreaDialog {

    private static final int MARGIN = 12;
    private static final int BETWEEN = 10;
    /** Of a dialog whose fields need less, in units of its letters. */
    private static final int WIDEST = 440;

    private final String title;
    private final String words;
    private final int columns;
    private final String button;
    private Composite fields;

    /**
     * @param words   what it is for
     * @param columns how many columns the fields stand in
     * @param button  the words of the button that does it
     */
    protected FieldsDialog(Shell parent, String title, String words, int columns, String button) {
        super(parent);
        this.title = title;
        this.words = words;
        this.columns = columns;
        this.button = button;
    }

    /** Whoever has large letters wants to see all of the words. */
    @Override
    protected final boolean isResizable() {
        return true;
    }

    @Override
    protected final void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText(title);
    }

    @Override
    protected final Control createDialogArea(Composite parent) {
        Composite area = (Composite) super.createDialogArea(parent);
        setTitle(title);
        setMessage(words);
        fields = new Composite(area, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(columns).margins(MARGIN, MARGIN).spacing(BETWEEN, BETWEEN).applyTo(fields);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(fields);
        addFields(fields, area);
        return area;
    }

    /**
     * Makes the fields, and puts the cursor where the work begins.
     *
     * @param fields has the grid
     * @param area   all of the dialog above its buttons
     */
    protected abstract void addFields(Composite fields, Composite area);

    /** What is told at its head is broken into lines rather than making the dialog wider than its fields. */
    @Override
    protected Point getInitialSize() {
        Point size = super.getInitialSize();
        int needed = fields.computeSize(SWT.DEFAULT, SWT.DEFAULT).x;
        return new Point(Math.min(size.x, Math.max(needed, convertHorizontalDLUsToPixels(WIDEST))), size.y);
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, button, true);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
    }

    // ---- what the button does

    /** What stands at its head as long as nothing else is to be told. */
    protected String words() {
        return words;
    }

    /**
     * Tells what becomes of what the button has begun: done, the dialog closes; refused, it says why not and can be tried again. Whoever closes it
     * meanwhile takes it for done, and is told in a box if it is not.
     *
     * @param doing what is told meanwhile
     * @param work  what was begun; fails with what refuses it
     */
    protected final void begun(String doing, CompletableFuture<?> work) {
        Shell window = getParentShell();
        setErrorMessage(null);
        setMessage(doing);
        setBusy(true);
        work.whenComplete((done, failure) -> OnDisplay.later(window, () -> ended(window, Optional.ofNullable(failure))));
    }

    private void ended(Shell window, Optional<Throwable> failure) {
        boolean open = getShell() != null;
        if (failure.isEmpty()) {
            if (open) {
                setReturnCode(OK);
                close();
            }
            done();
        } else if (open) {
            setBusy(false);
            setMessage(words());
            setErrorMessage(Failures.words(failure.get()));
            refused();
        } else {
            Failures.tell(window, title, failure.get());
        }
    }

    /** Whether nothing can be entered and begun, since what was begun is not over. */
    protected void setBusy(boolean busy) {
        getButton(IDialogConstants.OK_ID).setEnabled(!busy);
    }

    /** It was refused, and that is told: puts the cursor where it is tried again. */
    protected void refused() {
        // Stays where it is.
    }

    /** It is done; the dialog may have been closed before. */
    protected void done() {
        // Nobody is told.
    }
}
