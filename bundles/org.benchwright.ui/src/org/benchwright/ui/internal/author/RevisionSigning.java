package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.Supplier;

import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Reading;
import org.benchwright.language.Revisions;
import org.benchwright.present.Approving;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.PersonRow;
import org.benchwright.present.RevisionChange;
import org.benchwright.present.RevisionRow;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Editors;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.Labels;
import org.benchwright.ui.internal.sign.SignDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPartSite;

/** Signing revisions: reads what is to be signed from the disk, shows what approval would change, and only then asks for a password. */
final class RevisionSigning {

    private final IWorkbenchPage page;
    private final Shell shell;
    private final Desk desk;
    private final Optional<Path> file;
    private final Approving approving;
    private final Consumer<RevisionRow> signed;
    /** How the revision stands after the signature. */
    private final AtomicReference<Optional<RevisionRow>> done = new AtomicReference<>(Optional.empty());

    /**
     * @param file   the procedure that is open
     * @param signed is told on the display's thread what was signed
     */
    RevisionSigning(IWorkbenchPartSite site, Desk desk, Optional<Path> file, Consumer<RevisionRow> signed) {
        this.page = site.getPage();
        this.shell = site.getShell();
        this.desk = desk;
        this.file = file;
        this.approving = Approving.here(desk.ledger());
        this.signed = signed;
    }

    /** What can be made out of what is to be signed, apart from the display's thread. */
    @FunctionalInterface
    private interface MakingOut {
        SignDialog.Asked asked(List<PersonRow> people) throws EntryRefusedException, CannotStoreException;
    }

    /** Signs the text of the file, as prepared or as approved. */
    void text(Supplier<FamilyChoice> family, boolean approve) {
        if (file.isEmpty()) {
            tell(Message.SIGN_NOTHING_OPEN.text());
        } else if (saved(file.get().getParent())) {
            FamilyChoice choice = family.get();
            makeOut(people -> {
                Reading.Ready ready = desk.procedures().read(file.get(), choice);
                return approve ? approval(ready, people) : preparation(ready, people);
            });
        }
    }

    /** Signs that a revision is taken back. */
    void withdraw(Optional<RevisionRow> row) {
        if (row.isEmpty()) {
            tell(Message.SIGN_NONE_SELECTED.text());
        } else {
            RevisionRow wanted = row.get();
            makeOut(people -> asked(Message.WITHDRAW_TITLE, Message.WITHDRAW_WHAT.text(wanted.procedure(), String.valueOf(wanted.number()),
                    wanted.family()),
                    Message.WITHDRAW_BUTTON, Optional.empty(), List.of(new SignDialog.Line(Message.SIGN_REASON.text(), "")), people,
                    (answers, by) -> done.set(Optional.of(approving.withdraw(wanted, answers.get(0), by)))));
        }
    }

    private SignDialog.Asked preparation(Reading.Ready ready, List<PersonRow> people) {
        return asked(Message.PREPARE_TITLE, what(Message.PREPARE_WHAT, ready), Message.PREPARE_BUTTON, Optional.empty(), List.of(), people,
                (answers, by) -> done.set(Optional.of(approving.prepare(ready.plan(), ready.text(), by))));
    }

    private SignDialog.Asked approval(Reading.Ready ready, List<PersonRow> people) throws CannotStoreException {
        RevisionChange change = approving.change(ready.plan(), Revisions::differences);
        return asked(Message.APPROVE_TITLE, what(Message.APPROVE_WHAT, ready), Message.APPROVE_BUTTON, Optional.of(change), List.of(), people,
                (answers, by) -> done.set(Optional.of(approving.approve(ready.plan(), ready.text(), by))));
    }

    private static SignDialog.Asked asked(Message title, String words, Message button, Optional<RevisionChange> change,
            List<SignDialog.Question> questions, List<PersonRow> people, SignDialog.Signature signature) {
        return new SignDialog.Asked(title.text(), words, change, questions, people, "", button.text(), signature);
    }

    private static String what(Message words, Reading.Ready ready) {
        return words.text(ready.plan().title(), String.valueOf(ready.plan().revision()), ready.plan().family().name());
    }

    /** What is signed is what is on the disk, with the families that it refers to. */
    private boolean saved(Path folder) {
        for (IEditorPart editor : page.getDirtyEditors()) {
            boolean ours = Editors.file(editor).map(Path::getParent).filter(folder::equals).isPresent();
            if (ours && (!page.saveEditor(editor, true) || editor.isDirty())) {
                return false;
            }
        }
        return true;
    }

    private void makeOut(MakingOut making) {
        Background.soon(Message.REVISIONS_READ.text(), monitor -> {
            try {
                List<PersonRow> people = PeopleDesk.people(desk.ledger());
                SignDialog.Asked asked = making.asked(people);
                OnDisplay.later(shell, () -> ask(asked));
            } catch (EntryRefusedException | CannotStoreException | RuntimeException refused) {
                String why = Failures.words(refused);
                OnDisplay.later(shell, () -> tell(why));
            }
        });
    }

    private void ask(SignDialog.Asked asked) {
        if (asked.people().isEmpty()) {
            tell(Message.PEOPLE_HOW_BEGIN.text(desk.ledger().toString()));
        } else {
            SignDialog.ask(shell, asked, () -> done.get().ifPresent(signed));
        }
    }

    private void tell(String words) {
        MessageDialog.openInformation(shell, Message.REVISIONS_TITLE.text(), Labels.letters(words));
    }
}
