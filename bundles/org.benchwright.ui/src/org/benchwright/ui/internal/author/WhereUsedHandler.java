package org.benchwright.ui.internal.author;

import java.util.List;
import java.util.stream.Stream;

import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.editing.Place;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.window.Window;
import org.eclipse.ui.dialogs.ElementListSelectionDialog;

/** Lists where the thing at the caret is declared and referred to, in all files of the folder; one is gone to. */
public final class WhereUsedHandler extends AbstractHandler {

    /**
     * A place with the line that it lies in.
     *
     * @param place where
     * @param words file, line number and line
     */
    private record Use(Place place, String words) {
    }

    @Override
    public Object execute(ExecutionEvent event) {
        NamedPlace.of(event).ifPresent(place -> Background.soon(Message.AUTHOR_WHERE_USED.text(), monitor -> {
            List<Use> uses = uses(place);
            OnDisplay.later(place.shell(), () -> show(place, uses));
        }));
        return null;
    }

    private static List<Use> uses(NamedPlace place) {
        FolderSession session = place.session();
        Stream<Place> all = Stream.concat(session.declaration(place.file(), place.offset()).stream(),
                session.references(place.file(), place.offset()).stream());
        return all.map(each -> new Use(each, words(session, each))).toList();
    }

    private static String words(FolderSession session, Place place) {
        String text = session.text(place.file()).orElse("");
        String before = text.substring(0, Math.min(place.offset(), text.length()));
        long line = before.chars().filter(c -> c == '\n').count() + 1;
        String written = text.substring(before.lastIndexOf('\n') + 1).lines().findFirst().orElse("").strip();
        return Message.AUTHOR_USE.text(place.file().getFileName().toString(), Long.toString(line), written);
    }

    private static void show(NamedPlace place, List<Use> uses) {
        if (uses.isEmpty()) {
            MessageDialog.openInformation(place.shell(), Message.AUTHOR_WHERE_USED.text(), Message.AUTHOR_NO_NAME.text());
            return;
        }
        ElementListSelectionDialog dialog = new ElementListSelectionDialog(place.shell(),
                LabelProvider.createTextProvider(use -> ((Use) use).words()));
        dialog.setTitle(Message.AUTHOR_WHERE_USED.text());
        dialog.setMessage(Message.AUTHOR_USES.text(Integer.toString(uses.size() - 1)));
        dialog.setElements(uses.toArray());
        dialog.setMultipleSelection(false);
        if (dialog.open() == Window.OK && dialog.getFirstResult() instanceof Use use) {
            Passages.show(use.place());
        }
    }
}
