package org.benchwright.ui.internal.author;

import java.util.List;

import org.benchwright.language.Remark;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.window.Window;
import org.eclipse.ui.dialogs.ElementListSelectionDialog;

/** Offers the ways to mend what is remarked on at the caret, and makes the edits of the one that is chosen. */
public final class MendHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        NamedPlace.of(event).ifPresent(place -> Background.soon(Message.AUTHOR_MEND.text(), monitor -> {
            FolderSession session = place.session();
            List<Remark> remarks = RemarksAt.caret(session, place);
            List<Way> fixes = remarks.stream().flatMap(remark -> session.fixes(remark).stream())
                    .map(fix -> new Way(fix.label(), FolderEdits.of(session, fix.edits()))).toList();
            OnDisplay.later(place.shell(), () -> offer(place, remarks, fixes));
        }));
        return null;
    }

    /**
     * A way to mend something.
     *
     * @param label what it does
     * @param edits how
     */
    private record Way(String label, FolderEdits edits) {
    }

    private static void offer(NamedPlace place, List<Remark> remarks, List<Way> fixes) {
        if (fixes.isEmpty()) {
            tell(place, (remarks.isEmpty() ? Message.AUTHOR_NO_REMARK : Message.AUTHOR_NO_MEND).text());
            return;
        }
        ElementListSelectionDialog dialog = new ElementListSelectionDialog(place.shell(),
                LabelProvider.createTextProvider(way -> ((Way) way).label()));
        dialog.setTitle(Message.AUTHOR_MEND.text());
        dialog.setMessage(remarks.get(0).words());
        dialog.setElements(fixes.toArray());
        dialog.setMultipleSelection(false);
        if (dialog.open() == Window.OK && dialog.getFirstResult() instanceof Way way) {
            take(place, way);
        }
    }

    private static void take(NamedPlace place, Way way) {
        try {
            if (!way.edits().make()) {
                tell(place, Message.AUTHOR_TEXT_CHANGED.text());
            }
            place.folder().check();
        } catch (CoreException | BadLocationException failed) {
            tell(place, Message.AUTHOR_MEND_FAILED.text(String.valueOf(failed.getMessage())));
        }
    }

    private static void tell(NamedPlace place, String words) {
        MessageDialog.openInformation(place.shell(), Message.AUTHOR_MEND.text(), Labels.letters(words));
    }
}
