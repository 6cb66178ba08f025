package org.benchwright.ui.internal.sign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.ui.internal.Message;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Asks for what is to be signed, by whom and with which password, and stays until it is signed. */
public final class SignDialog extends TitleAreaDialog {

    private static final int FIELD_WIDTH = 460;

    private final Asked asked;
    private final List<Control> answers = new ArrayList<>();
    private Text by;
    private Text password;

    /** Something that is asked before it is signed. */
    public sealed interface Question {

        /** What stands before the field. */
        String label();
    }

    /** A text; may be filled already. */
    public record Line(String label, String initial) implements Question {
    }

    /** One of several; the first is chosen at first. */
    public record Choice(String label, List<String> options) implements Question {
        public Choice {
            options = List.copyOf(options);
        }
    }

    /** Does what is signed, off the screen's thread. */
    @FunctionalInterface
    public interface Signature {

        /**
         * Signs.
         *
         * @param answers to the questions, in their order; of a choice the option
         */
        void by(List<String> answers, PeopleDesk.Signing who) throws EntryRefusedException, TakenElsewhereException, CannotStoreException;
    }

    /**
     * What the dialog asks.
     *
     * @param title     what is done
     * @param words     what it is done to
     * @param questions asked before it is signed
     * @param who       the id of who will probably sign; may be empty
     * @param signature does it
     */
    public record Asked(String title, String words, List<Question> questions, String who, Signature signature) {
        public Asked {
            questions = List.copyOf(questions);
        }
    }

    /** A dialog that asks that. */
    public SignDialog(Shell parent, Asked asked) {
        super(parent);
        this.asked = asked;
    }

    @Override
    protected void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText(asked.title());
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = (Composite) super.createDialogArea(parent);
        setTitle(asked.title());
        setMessage(asked.words());
        Composite fields = new Composite(area, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(2).margins(12, 12).spacing(10, 10).applyTo(fields);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(fields);
        asked.questions().forEach(question -> answers.add(field(fields, question)));
        by = text(fields, Message.SIGN_BY.text(), SWT.BORDER);
        by.setText(asked.who());
        password = text(fields, Message.SIGN_PASSWORD.text(), SWT.BORDER | SWT.PASSWORD);
        (answers.isEmpty() ? by : answers.get(0)).setFocus();
        return area;
    }

    private static Control field(Composite parent, Question question) {
        if (question instanceof Line line) {
            Text text = text(parent, line.label(), SWT.BORDER);
            text.setText(line.initial());
            return text;
        }
        Choice choice = (Choice) question;
        new Label(parent, SWT.NONE).setText(choice.label());
        Combo combo = new Combo(parent, SWT.READ_ONLY | SWT.DROP_DOWN);
        choice.options().forEach(combo::add);
        combo.select(0);
        GridDataFactory.fillDefaults().grab(true, false).hint(FIELD_WIDTH, SWT.DEFAULT).applyTo(combo);
        return combo;
    }

    private static Text text(Composite parent, String label, int style) {
        new Label(parent, SWT.NONE).setText(label);
        Text text = new Text(parent, style);
        GridDataFactory.fillDefaults().grab(true, false).hint(FIELD_WIDTH, SWT.DEFAULT).applyTo(text);
        return text;
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, Message.SIGN_OK.text(), true);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
    }

    @Override
    protected void okPressed() {
        List<String> given = answers.stream().map(each -> each instanceof Text text ? text.getText() : ((Combo) each).getText()).toList();
        PeopleDesk.Signing who = new PeopleDesk.Signing(by.getText().strip(), password.getTextChars());
        setErrorMessage(null);
        getButton(IDialogConstants.OK_ID).setEnabled(false);
        Job.createSystem(asked.title(), (ICoreRunnable) monitor -> sign(given, who)).schedule();
    }

    private void sign(List<String> given, PeopleDesk.Signing who) {
        try {
            asked.signature().by(given, who);
            told(Optional.empty());
        } catch (EntryRefusedException | TakenElsewhereException | CannotStoreException refused) {
            told(Optional.of(refused.getMessage()));
        }
    }

    private void told(Optional<String> refused) {
        Shell shell = getShell();
        if (shell == null || shell.isDisposed()) {
            return;
        }
        shell.getDisplay().asyncExec(() -> {
            if (shell.isDisposed()) {
                return;
            }
            if (refused.isPresent()) {
                setErrorMessage(refused.get());
                password.setText("");
                password.setFocus();
                getButton(IDialogConstants.OK_ID).setEnabled(true);
            } else {
                setReturnCode(OK);
                close();
            }
        });
    }
}
