package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

import org.benchwright.core.Cancellation;
import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.FolderSession;

/** One folder that texts are open from, and what is known about it. Everything but {@link #latest} and {@link #state} may take a while. */
final class AuthorFolder {

    private final Path folder;
    private final AuthorListener told;
    private final ApprovedInLedger approved;
    private final Map<Path, Analysis> latest = new ConcurrentHashMap<>();
    private final Map<Path, Integer> open = new ConcurrentHashMap<>();
    private final CheckFolderJob job = new CheckFolderJob(this);
    private volatile FolderState state;
    private FolderSession session;

    /**
     * @param approved what is approved in the bench's ledger
     * @param told     is told on the thread that found something out
     */
    AuthorFolder(Path folder, ApprovedInLedger approved, AuthorListener told) {
        this.folder = folder;
        this.approved = approved;
        this.told = told;
        state = FolderState.notYet(folder);
    }

    /** The language's session; opened by whoever asks first. Not for the display's thread. */
    synchronized FolderSession session() {
        if (session == null) {
            session = FolderSession.open(folder);
        }
        return session;
    }

    /** What is known to be approved. */
    ApprovedRevisions approved() {
        return approved.now();
    }

    /** An editor has opened a file. */
    void opened(Path file) {
        open.merge(file, 1, Integer::sum);
    }

    /** An editor has closed a file, saved or not: what holds is what is on the disk. */
    void closed(Path file) {
        if (open.merge(file, -1, Integer::sum) <= 0) {
            open.remove(file);
            latest.remove(file);
            job.close(file);
        }
    }

    /** True while an editor shows a file. */
    boolean isOpen(Path file) {
        return open.containsKey(file);
    }

    /** Looks at a text as it stands in its editor, and tells. */
    void analyse(Path file, String text, Cancellation cancellation) {
        FolderSession language = knowing(file, text);
        language.analyse(file, cancellation).ifPresent(this::tell);
        check();
    }

    /** The session, knowing a text as it stands in its editor. */
    FolderSession knowing(Path file, String text) {
        FolderSession language = session();
        language.change(file, text);
        if (!isOpen(file)) {
            // Its editor was closed meanwhile: the text would stand in for the file for ever.
            job.close(file);
        }
        return language;
    }

    /** What was last found out about a file that is open; it may be about an older text. */
    Optional<Analysis> latest(Path file) {
        return Optional.ofNullable(latest.get(file));
    }

    /** What is known about the whole folder. */
    FolderState state() {
        return state;
    }

    /** Looks at the whole folder soon. */
    void check() {
        job.schedule();
    }

    /** Takes note of what a look at the folder found, and looks at open texts again on which it found something else. */
    void checked(Map<Path, List<Remark>> remarks, Cancellation cancellation) {
        show(state.done(remarks));
        for (Path file : open.keySet()) {
            boolean same = latest(file).map(known -> known.remarks().equals(remarks.getOrDefault(file, List.of()))).orElse(true);
            if (!same) {
                session().analyse(file, cancellation).ifPresent(this::tell);
            }
        }
    }

    void show(FolderState now) {
        state = now;
        told.checked(now);
    }

    private void tell(Analysis analysis) {
        if (isOpen(analysis.file())) {
            latest.put(analysis.file(), analysis);
            told.analysed(analysis);
        }
    }

    void close() {
        job.cancel();
    }
}
