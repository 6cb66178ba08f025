package org.benchwright.language.internal.server;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

import org.benchwright.core.Cancellation;
import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.internal.InternalText;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.services.LanguageClient;

/** The folders of the texts that the editor has open, and the remarks that it is told. Any thread may ask. */
final class Desk {

    /** Nobody tells an editor that a revision was approved elsewhere. */
    private static final int LOOK_AT_APPROVALS_SECONDS = 2;
    private static final System.Logger PLATFORM = System.getLogger("org.benchwright.language");

    private final Map<Path, FolderSession> folders = new HashMap<>();
    /** Folders that have changed since they were last looked at, each with the file whose remarks are awaited most. */
    private final Map<Path, Optional<Path>> due = new ConcurrentHashMap<>();
    private final Map<Path, List<Remark>> told = new ConcurrentHashMap<>();
    private final Set<Path> tellAnyway = ConcurrentHashMap.newKeySet();
    private final ScheduledExecutorService work = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "remarks");
        thread.setDaemon(true);
        return thread;
    });
    private final Supplier<ApprovedRevisions> approvals;
    private ApprovedRevisions approved;
    private volatile LanguageClient editor;

    /** @param approvals gives what is approved now, the same object as long as nothing has changed */
    Desk(Supplier<ApprovedRevisions> approvals) {
        this.approvals = approvals;
        approved = approvals.get();
    }

    void connect(LanguageClient client) {
        editor = client;
        work.scheduleWithFixedDelay(this::lookAtApprovals, LOOK_AT_APPROVALS_SECONDS, LOOK_AT_APPROVALS_SECONDS, TimeUnit.SECONDS);
    }

    void close() {
        work.shutdownNow();
    }

    /** The folder of a file, opened if need be. */
    synchronized FolderSession session(Path file) {
        return folders.computeIfAbsent(file.getParent(), this::open);
    }

    private FolderSession open(Path folder) {
        FolderSession session = FolderSession.open(folder);
        session.compare(approved);
        return session;
    }

    void change(Path file, String text) {
        session(file).change(file, text);
        tell(file.getParent(), Optional.of(file));
    }

    /** A document that was opened is told its remarks even if they are what they were. */
    void open(Path file, String text) {
        tellAnyway.add(file);
        change(file, text);
    }

    void close(Path file) {
        session(file).close(file);
        tellAnyway.add(file);
        tell(file.getParent(), Optional.empty());
    }

    void lookAtDisk() {
        List<Path> open;
        synchronized (this) {
            open = List.copyOf(folders.keySet());
            folders.values().forEach(FolderSession::refresh);
        }
        open.forEach(folder -> tell(folder, Optional.empty()));
    }

    private void lookAtApprovals() {
        ApprovedRevisions now = approvals.get();
        List<Path> open;
        synchronized (this) {
            if (now == approved) {
                return;
            }
            approved = now;
            folders.values().forEach(session -> session.compare(now));
            open = List.copyOf(folders.keySet());
        }
        open.forEach(folder -> tell(folder, Optional.empty()));
    }

    /** At once, or once what is being done is done: whatever has changed until then is looked at together. */
    private void tell(Path folder, Optional<Path> first) {
        if (due.put(folder, first) == null) {
            work.execute(() -> tellDue(folder));
        }
    }

    private void tellDue(Path folder) {
        Optional<Path> first = due.remove(folder);
        FolderSession session;
        synchronized (this) {
            session = folders.get(folder);
        }
        Cancellation changed = () -> due.containsKey(folder);
        try {
            first.flatMap(file -> session.analyse(file, changed)).ifPresent(known -> tell(known.file(), session, known.remarks()));
            Map<Path, List<Remark>> all = session.remarks(changed);
            all.forEach((file, remarks) -> tell(file, session, remarks));
            told.keySet().stream().filter(file -> folder.equals(file.getParent()) && !all.containsKey(file)).forEach(this::takeBack);
        } catch (CancellationException outdated) {
            // What has changed meanwhile has made this be done again already.
        } catch (RuntimeException failed) {
            // The next change makes this be done again; until then nobody may take the remarks that are shown for those on the text.
            PLATFORM.log(System.Logger.Level.ERROR, "remarks could not be made", failed);
            editor.logMessage(new MessageParams(MessageType.Error, InternalText.NO_REMARKS.text(folder.toString())));
        }
    }

    private void tell(Path file, FolderSession session, List<Remark> remarks) {
        List<Remark> before = told.getOrDefault(file, List.of());
        if (!tellAnyway.contains(file) && remarks.equals(before)) {
            return;
        }
        session.text(file).ifPresent(text -> {
            tellAnyway.remove(file);
            told.put(file, remarks);
            editor.publishDiagnostics(new PublishDiagnosticsParams(Addresses.of(file), Answers.diagnostics(remarks, new Lines(text))));
        });
    }

    /** A file that is gone has no remarks. */
    private void takeBack(Path file) {
        tellAnyway.remove(file);
        told.remove(file);
        editor.publishDiagnostics(new PublishDiagnosticsParams(Addresses.of(file), List.of()));
    }
}
