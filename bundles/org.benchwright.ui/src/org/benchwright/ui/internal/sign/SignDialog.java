package org.benchwright.ui.internal.sign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.PersonRow;
import org.benchwright.present.RevisionChange;
import org.benchwright.present.StationSignIn;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.PeopleWords;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.FieldsDialog;
import org.benchwright.ui.internal.look.Story;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;

/**
 * Asks for what is to be signed, by whom and with which password, and stays until it is signed. Whether it may be is not decided here. The
 * password leaves its field as it is used, and is blanked out behind.
 */
public final class SignDialog extends FieldsDialog {

    private static final int FIELD_WIDTH = 520;
    private static final int CHANGE_HEIGHT = 190;

    private final Asked asked;
    private final Runnable signed;
    private final List<Control> answers = new ArrayList<>();
    private Control by;
    private Label secret;
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

    /** A text that is mostly one of several; the first stands there at first. */
    public record Suggested(String label, List<String> options) implements Question {
        public Suggested {
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
     * @param words     what it is done to, and what follows from it
     * @param change    what a revision changes, to be read before anything is asked; empty where nothing does
     * @param questions asked before it is signed
     * @param people    who is in the register, to choose from; empty where the id is typed
     * @param who       the id of who will probably sign, where it is typed; may be empty
     * @param button    what is pressed to sign
     * @param signature does it
     * @param nobody    whether it may be handed over without anybody's name, for those who know whether the bench signs then
     */
    public record Asked(String title, String words, Optional<RevisionChange> change, List<Question> questions, List<PersonRow> people, String who,
            String button, Signature signature, boolean nobody) {
        public Asked {
            questions = List.copyOf(questions);
            people = List.copyOf(people);
        }

        /** Something that a person signs. */
        public Asked(String title, String words, Optional<RevisionChange> change, List<Question> questions, List<PersonRow> people, String who,
                String button,
                Signature signature) {
            this(title, words, change, questions, people, who, button, signature, false);
        }

        /** The same, which is also handed over without anybody's name. */
        public Asked orNobody() {
            return new Asked(title, words, change, questions, people, who, button, signature, true);
        }

        /** Something that nothing has to be read before, signed by whoever types an id. */
        public Asked(String title, String words, List<Question> questions, String who, Signature signature) {
            this(title, words, Optional.empty(), questions, List.of(), who, Message.SIGN_OK.text(), signature);
        }
    }

    private SignDialog(Shell parent, Asked asked, Runnable signed) {
        super(parent, asked.title(), asked.words(), 2, asked.button());
        this.asked = asked;
        this.signed = signed;
    }

    /**
     * Asks that, until it is signed or given up.
     *
     * @param signed is run once it is signed
     */
    public static void ask(Shell parent, Asked asked, Runnable signed) {
        new SignDialog(parent, asked, signed).open();
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        asked.change().ifPresent(change -> change(fields, change));
        asked.questions().forEach(question -> answers.add(field(fields, question)));
        if (asked.people().isEmpty()) {
            by = text(fields, Message.SIGN_BY.text(), SWT.BORDER);
            ((Text) by).setText(asked.who());
        } else {
            by = combo(fields, Message.SIGN_WHO.text(), asked.people().stream().map(PeopleWords::of).toList(), SWT.READ_ONLY);
        }
        secret = new Label(fields, SWT.NONE);
        password = new Text(fields, SWT.BORDER | SWT.PASSWORD);
        GridDataFactory.fillDefaults().grab(true, false).hint(FIELD_WIDTH, SWT.DEFAULT).applyTo(password);
        by.addListener(SWT.Modify, event -> askSecret());
        askSecret();
    }

    /** Whoever has signed in at this station signs with PIN or badge as long as it stays unlocked; everybody else with the full password. */
    private void askSecret() {
        boolean pin = who().filter(station()::takesPin).isPresent();
        secret.setText((pin ? Message.SIGN_PIN : Message.SIGN_PASSWORD).text());
        secret.getParent().layout(true, true);
    }

    private static StationSignIn station() {
        return PlatformUI.getWorkbench().getService(Desk.class).station();
    }

    @Override
    public void create() {
        super.create();
        (answers.isEmpty() ? by : answers.get(0)).setFocus();
    }

    /** Above everything that is asked. */
    private static void change(Composite fields, RevisionChange change) {
        Story story = new Story(fields, 1);
        GridDataFactory.fillDefaults().grab(true, true).span(2, 1).hint(FIELD_WIDTH, CHANGE_HEIGHT).applyTo(story.control());
        story.strong(change.words());
        change.differences().forEach(story::point);
        story.showBeginning();
    }

    private static Control field(Composite parent, Question question) {
        if (question instanceof Line line) {
            Text text = text(parent, line.label(), SWT.BORDER);
            text.setText(line.initial());
            return text;
        }
        Combo combo = question instanceof Suggested suggested ? combo(parent, suggested.label(), suggested.options(), SWT.NONE)
                : combo(parent, question.label(), ((Choice) question).options(), SWT.READ_ONLY);
        combo.select(0);
        return combo;
    }

    private static Combo combo(Composite parent, String label, List<String> options, int style) {
        new Label(parent, SWT.NONE).setText(label);
        Combo combo = new Combo(parent, style | SWT.DROP_DOWN);
        options.forEach(combo::add);
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
    protected void okPressed() {
        Optional<String> who = who();
        if (who.isEmpty() && password.getCharCount() == 0 && asked.nobody()) {
            sign(answers.stream().map(SignDialog::words).toList(), new PeopleDesk.Signing("", new char[0]));
        } else if (who.isEmpty()) {
            setErrorMessage(Message.SIGN_NO_PERSON.text());
            by.setFocus();
        } else if (password.getCharCount() == 0) {
            setErrorMessage(Message.SIGN_NO_PASSWORD.text());
            password.setFocus();
        } else {
            char[] typed = password.getTextChars();
            password.setTextChars(new char[0]);
            sign(answers.stream().map(SignDialog::words).toList(), station().signing(who.get(), typed));
        }
    }

    private static String words(Control answer) {
        return answer instanceof Text text ? text.getText() : ((Combo) answer).getText();
    }

    private Optional<String> who() {
        if (by instanceof Combo people) {
            return people.getSelectionIndex() < 0 ? Optional.empty() : Optional.of(asked.people().get(people.getSelectionIndex()).id());
        }
        return Optional.of(words(by).strip()).filter(id -> !id.isEmpty());
    }

    private void sign(List<String> given, PeopleDesk.Signing who) {
        begun(Message.SIGN_SIGNING.text(), Background.begun(Message.SIGN_SIGNING.text(), () -> asked.signature().by(given, who)));
    }

    @Override
    protected void setBusy(boolean busy) {
        super.setBusy(busy);
        by.setEnabled(!busy);
        password.setEnabled(!busy);
    }

    @Override
    protected void refused() {
        // Too many wrong PINs have locked the station.
        askSecret();
        password.setFocus();
    }

    @Override
    protected void done() {
        signed.run();
    }
}
