package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;

import org.benchwright.language.editing.Analysis;
import org.eclipse.ui.PlatformUI;

/** The folders that texts are open from. Any thread may call it. */
public final class Authoring implements AutoCloseable {

    private final ApprovedInLedger approved;
    private final Map<Path, AuthorFolder> folders = new ConcurrentHashMap<>();
    private final List<AuthorListener> listeners = new CopyOnWriteArrayList<>();
    private final AuthorListener toAll = new AuthorListener() {
        @Override
        public void analysed(Analysis analysis) {
            listeners.forEach(listener -> listener.analysed(analysis));
        }

        @Override
        public void checked(FolderState state) {
            listeners.forEach(listener -> listener.checked(state));
        }
    };

    /** @param ledger the ledger's file, in which revisions are approved; need not exist yet */
    public Authoring(Path ledger) {
        approved = new ApprovedInLedger(ledger, this::revised);
    }

    private void revised() {
        folders.values().forEach(AuthorFolder::check);
        listeners.forEach(AuthorListener::revised);
    }

    /** Looks whether something was signed about a revision; whoever listens is told if so. */
    void look() {
        approved.now();
    }

    /** The one of this window; empty while the workbench starts or ends. */
    static Optional<Authoring> current() {
        return PlatformUI.isWorkbenchRunning() ? Optional.ofNullable(PlatformUI.getWorkbench().getService(Authoring.class))
                : Optional.empty();
    }

    /** A folder; nothing is read before something is asked. */
    AuthorFolder folder(Path folder) {
        return folders.computeIfAbsent(folder.toAbsolutePath().normalize(), path -> new AuthorFolder(path, approved, toAll));
    }

    /** The folder of a file. */
    AuthorFolder folderOf(Path file) {
        return folder(file.toAbsolutePath().normalize().getParent());
    }

    void add(AuthorListener listener) {
        listeners.add(listener);
    }

    void remove(AuthorListener listener) {
        listeners.remove(listener);
    }

    @Override
    public void close() {
        listeners.clear();
        approved.close();
        folders.values().forEach(AuthorFolder::close);
    }
}
