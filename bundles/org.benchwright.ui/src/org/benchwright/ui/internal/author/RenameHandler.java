package org.benchwright.ui.internal.author;

import java.util.List;
import java.util.Optional;

import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.editing.Place;
import org.benchwright.language.editing.Renaming;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.window.Window;

/** Gives the thing at the caret another name, in all files of the folder. */
public final class RenameHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        NamedPlace.of(event).ifPresent(place -> Background.soon(Message.AUTHOR_RENAME.text(), monitor -> {
            Optional<String> name = name(place);
            OnDisplay.later(place.shell(), () -> name.ifPresentOrElse(old -> ask(place, old),
                    () -> tell(place, Message.AUTHOR_NO_NAME.text())));
        }));
        return null;
    }

    private static Optional<String> name(NamedPlace place) {
        FolderSession session = place.session();
        Optional<Place> declaration = session.declaration(place.file(), place.offset());
        return declaration.flatMap(at -> session.text(at.file()).map(text -> text.substring(at.offset(), at.offset() + at.length())));
    }

    private static void ask(NamedPlace place, String old) {
        InputDialog dialog = new InputDialog(place.shell(), Message.AUTHOR_RENAME.text(), Message.AUTHOR_RENAME_ASK.text(old), old, null);
        if (dialog.open() == Window.OK && !dialog.getValue().strip().equals(old)) {
            String newName = dialog.getValue().strip();
            Background.soon(Message.AUTHOR_RENAME.text(), monitor -> {
                FolderSession session = place.folder().session();
                Renaming renaming = session.text(place.file()).filter(place.text()::equals).isPresent()
                        ? session.rename(place.file(), place.offset(), newName)
                        : new Renaming.Refused(Message.AUTHOR_TEXT_CHANGED.text());
                List<Edit> edits = renaming instanceof Renaming.Possible possible ? possible.edits() : List.of();
                FolderEdits all = FolderEdits.of(session, edits);
                OnDisplay.later(place.shell(), () -> take(place, renaming, all));
            });
        }
    }

    private static void take(NamedPlace place, Renaming renaming, FolderEdits edits) {
        if (renaming instanceof Renaming.Refused refused) {
            tell(place, refused.why());
            return;
        }
        try {
            if (!edits.make()) {
                tell(place, Message.AUTHOR_TEXT_CHANGED.text());
            }
            place.folder().check();
        } catch (CoreException | BadLocationException failed) {
            tell(place, Message.AUTHOR_RENAME_FAILED.text(String.valueOf(failed.getMessage())));
        }
    }

    private static void tell(NamedPlace place, String words) {
        MessageDialog.openInformation(place.shell(), Message.AUTHOR_RENAME.text(), Labels.letters(words));
    }
}
