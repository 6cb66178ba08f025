package org.benchwright.language.internal.server;

import java.net.URI;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;

import org.benchwright.core.Cancellation;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.FolderSession;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.services.LanguageClient;

/** The folders of the texts that the editor has open, and the remarks that it is told. Any thread may ask. */
final class Desk {

    /** Remarks follow once nothing was typed for so long. */
    private static final long PAUSE_MILLIS = 60;

    private final Map<Path, FolderSession> folders = new HashMap<>();
    private final Map<Path, ScheduledFuture<?>> waiting = new HashMap<>();
    private final Map<Path, Set<Path>> told = new HashMap<>();
    private final ScheduledExecutorService work = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "remarks");
        thread.setDaemon(true);
        return thread;
    });
    private volatile LanguageClient editor;

    void connect(LanguageClient client) {
        editor = client;
    }

    void close() {
        work.shutdownNow();
    }

    /** The file of a document; nothing where it is none on a disk. */
    static Optional<Path> file(String uri) {
        URI location = URI.create(uri);
        return "file".equals(location.getScheme()) ? Optional.of(Path.of(location).toAbsolutePath().normalize()) : Optional.empty();
    }

    static String uri(Path file) {
        return file.toUri().toString();
    }

    /** The folder of a file, opened if need be. */
    synchronized FolderSession session(Path file) {
        return folders.computeIfAbsent(file.getParent(), FolderSession::open);
    }

    void change(Path file, String text) {
        session(file).change(file, text);
        tellSoon(file.getParent());
    }

    void close(Path file) {
        session(file).close(file);
        tellSoon(file.getParent());
    }

    void lookAtDisk() {
        List<Path> open;
        synchronized (this) {
            open = List.copyOf(folders.keySet());
            folders.values().forEach(FolderSession::refresh);
        }
        open.forEach(this::tellSoon);
    }

    private synchronized void tellSoon(Path folder) {
        Optional.ofNullable(waiting.get(folder)).ifPresent(earlier -> earlier.cancel(false));
        waiting.put(folder, work.schedule(() -> tell(folder), PAUSE_MILLIS, TimeUnit.MILLISECONDS));
    }

    private void tell(Path folder) {
        FolderSession session;
        synchronized (this) {
            session = folders.get(folder);
        }
        Map<Path, List<Remark>> remarks = session.remarks(Cancellation.never());
        Set<Path> now = new HashSet<>();
        remarks.forEach((file, found) -> {
            boolean news = !found.isEmpty() || told.getOrDefault(folder, Set.of()).contains(file);
            session.text(file).filter(text -> news).ifPresent(text -> editor.publishDiagnostics(
                    new PublishDiagnosticsParams(uri(file), Answers.diagnostics(found, new Lines(text)))));
            if (!found.isEmpty()) {
                now.add(file);
            }
        });
        told.put(folder, now);
    }
}
