package org.benchwright.ui.internal.author;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Reading;
import org.benchwright.present.Approving;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.FilesSeen;
import org.benchwright.present.RevisionRow;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.app.ProcedureFiles;
import org.benchwright.ui.internal.author.RevisionsShown.Line;
import org.benchwright.ui.internal.desk.Desk;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.jobs.Job;

/** Reads how revisions stand: all of a ledger, or those of the procedure that is open, with its text as it is saved. */
final class RevisionsJob {

    private final Desk desk;
    private final Optional<Path> file;
    private final boolean all;
    private final RevisionsShown before;
    private final Consumer<RevisionsShown> shown;
    private final Job job = Job.createSystem(Message.REVISIONS_READ.text(), (ICoreRunnable) monitor -> read());

    /**
     * @param file   the procedure that is open
     * @param all    true to list the revisions of all procedures
     * @param before what was shown last; nothing is told if all that is read is still as it was then
     * @param shown  is told on the job's thread
     */
    RevisionsJob(Desk desk, Optional<Path> file, boolean all, RevisionsShown before, Consumer<RevisionsShown> shown) {
        this.desk = desk;
        this.file = file;
        this.all = all;
        this.before = before;
        this.shown = shown;
    }

    /** @param patience how long to wait for more to change, in milliseconds */
    void schedule(long patience) {
        job.schedule(patience);
    }

    void cancel() {
        job.cancel();
    }

    private void read() {
        FilesSeen now = before.seen().look(files());
        if (now.mayHoldMoreThan(before.seen())) {
            shown.accept(read(now));
        }
    }

    private RevisionsShown read(FilesSeen seen) {
        Approving approving = Approving.here(desk.ledger());
        List<RevisionRow> texts = new ArrayList<>();
        Optional<String> trouble = Optional.empty();
        try {
            List<RevisionRow> signed = approving.revisions();
            try {
                for (Reading.Ready ready : file.isPresent() ? ready(file.get()) : List.<Reading.Ready>of()) {
                    texts.add(approving.standing(ready.plan(), ready.text()));
                    signed = all ? signed : approving.ofAllFamilies(ready.plan());
                }
            } catch (EntryRefusedException refused) {
                trouble = Optional.of(refused.getMessage());
            }
            return new RevisionsShown(file, lines(signed, texts), texts, trouble, seen);
        } catch (CannotStoreException unreadable) {
            return new RevisionsShown(file, List.of(), List.of(), Optional.of(unreadable.getMessage()), seen);
        }
    }

    /** For each of its families; where there are errors, reading it for the one that it names says which. */
    private List<Reading.Ready> ready(Path procedure) throws EntryRefusedException {
        List<Reading.Ready> ready = new ArrayList<>();
        List<String> families = desk.procedures().families(procedure);
        if (families.isEmpty()) {
            ready.add(desk.procedures().read(procedure, new FamilyChoice.AsWritten()));
        }
        for (String family : families) {
            ready.add(desk.procedures().read(procedure, new FamilyChoice.Called(family)));
        }
        return ready;
    }

    private static List<Line> lines(List<RevisionRow> signed, List<RevisionRow> texts) {
        List<Line> lines = new ArrayList<>();
        texts.stream().filter(text -> text.state() == RevisionRow.State.DRAFT).forEach(text -> lines.add(new Line(text, true)));
        for (int i = signed.size() - 1; i >= 0; i--) {
            RevisionRow row = signed.get(i);
            lines.add(new Line(row, texts.contains(row)));
        }
        return lines;
    }

    /** All files of the folder, for a procedure is signed with all that it refers to; and the ledger's. */
    private List<Path> files() {
        List<Path> files = new ArrayList<>(FilesSeen.ofLedger(desk.ledger()));
        if (file.isPresent()) {
            try (Stream<Path> folder = Files.list(file.get().getParent())) {
                folder.filter(ProcedureFiles::isOne).forEach(files::add);
            } catch (IOException | UncheckedIOException unreadable) {
                // The folder may just have gone; what is wrong with it shows as the procedure is read.
                files.add(file.get());
            }
        }
        return files;
    }
}
