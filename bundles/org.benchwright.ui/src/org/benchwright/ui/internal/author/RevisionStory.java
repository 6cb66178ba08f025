package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Revisions;
import org.benchwright.present.Approving;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.RevisionChange;
import org.benchwright.present.RevisionRow;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.author.RevisionsShown.Line;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.Story;
import org.eclipse.swt.widgets.Composite;

/** One revision: who did what with it, and, as soon as that is made out, what it changes by meaning. */
final class RevisionStory {

    private static final int SHOWN_DIGITS = 16;

    private final Story story;
    private final Desk desk;
    private Optional<Line> shown = Optional.empty();

    RevisionStory(Composite parent, Desk desk) {
        story = new Story(parent, 1);
        this.desk = desk;
    }

    void clear() {
        shown = Optional.empty();
        story.clear();
    }

    /**
     * Shows a revision.
     *
     * @param file the procedure that is open, whose text is compared while it is a draft
     */
    void show(Line line, Optional<Path> file) {
        shown = Optional.of(line);
        tell(line, Optional.empty());
        Background.soon(Message.REVISIONS_READ.text(), monitor -> {
            RevisionChange change = change(line, file);
            OnDisplay.later(story.control(), () -> {
                if (shown.equals(Optional.of(line))) {
                    tell(line, Optional.of(change));
                }
            });
        });
    }

    private RevisionChange change(Line line, Optional<Path> file) {
        Approving approving = Approving.here(desk.ledger());
        try {
            if (line.row().state() == RevisionRow.State.DRAFT && file.isPresent()) {
                return approving.change(desk.procedures().read(file.get(), new FamilyChoice.Called(line.row().family())).plan(),
                        Revisions::differences);
            }
            return approving.change(line.row(), Revisions::differences);
        } catch (EntryRefusedException | CannotStoreException unreadable) {
            return new RevisionChange(String.valueOf(unreadable.getMessage()), List.of());
        }
    }

    private void tell(Line line, Optional<RevisionChange> change) {
        RevisionRow row = line.row();
        story.clear();
        story.heading(Message.REVISIONS_ONE.text(row.procedure(), String.valueOf(row.number())));
        story.strong(line.words());
        row.history().forEach(story::paragraph);
        story.paragraph("");
        change.ifPresent(known -> {
            story.strong(known.words());
            known.differences().forEach(story::point);
            story.paragraph("");
        });
        story.paragraph(Message.REVISIONS_DIGESTS.text(row.text().substring(0, SHOWN_DIGITS), row.plan().substring(0, SHOWN_DIGITS)));
        story.showBeginning();
    }
}
