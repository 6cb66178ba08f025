package org.benchwright.ui.internal.house;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.ClosedWatchServiceException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchEvent;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.benchwright.present.Photos;
import org.eclipse.core.runtime.ILog;

/** The folder into which a camera's pictures come: each new one is told, and nothing is done with it. Any thread may call. */
public final class CameraFolder implements AutoCloseable {

    private static final long STILL_MILLIS = 300;
    /** At a file that does not grow. */
    private static final int MOST_LOOKS = 100;
    private static final long AWAY_MILLIS = 1000;

    private final List<Consumer<Path>> listeners = new CopyOnWriteArrayList<>();
    private Optional<Watching> watching = Optional.empty();

    private record Watching(Path folder, WatchService service) {
    }

    /** Tells of each new picture from now on, on a thread of its own. */
    public void add(Consumer<Path> listener) {
        listeners.add(listener);
    }

    /** Tells no more. */
    public void remove(Consumer<Path> listener) {
        listeners.remove(listener);
    }

    /** The folder that is watched, if one is. */
    public synchronized Optional<Path> folder() {
        return watching.map(Watching::folder);
    }

    /**
     * Watches a folder in the place of the one before.
     *
     * @throws IOException if it can't be watched
     */
    public synchronized void watch(Path folder) throws IOException {
        WatchService service = FileSystems.getDefault().newWatchService();
        try {
            folder.register(service, StandardWatchEventKinds.ENTRY_CREATE);
        } catch (IOException e) {
            service.close();
            throw e;
        }
        close();
        watching = Optional.of(new Watching(folder, service));
        Thread watcher = new Thread(() -> listen(folder, service), "camera folder");
        watcher.setDaemon(true);
        watcher.start();
    }

    private void listen(Path folder, WatchService service) {
        // What was there before, and what was told: nothing new.
        Set<Path> known = new HashSet<>(pictures(folder));
        try {
            for (WatchKey key = service.take(); ; key = service.take()) {
                for (WatchEvent<?> event : key.pollEvents()) {
                    for (Path picture : came(event, folder, known)) {
                        known.add(picture);
                        whole(picture);
                    }
                }
                if (!key.reset()) {
                    awaitBack(folder, service);
                    known.clear();
                    known.addAll(pictures(folder));
                }
            }
        } catch (ClosedWatchServiceException over) {
            return;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Where more came at once than the system keeps, it says that, and not what: then the folder is looked through. */
    private static List<Path> came(WatchEvent<?> event, Path folder, Set<Path> known) {
        if (event.context() instanceof Path name) {
            return Photos.named(name) ? List.of(folder.resolve(name)) : List.of();
        }
        return pictures(folder).stream().filter(picture -> !known.contains(picture)).toList();
    }

    private static List<Path> pictures(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Photos::named).sorted().toList();
        } catch (IOException | UncheckedIOException gone) {
            ILog.of(CameraFolder.class).info("The camera folder went away: " + gone.getMessage());
            return List.of();
        }
    }

    /** A camera that is unplugged takes its folder with it; once it is back, it is watched again. */
    private static void awaitBack(Path folder, WatchService service) throws InterruptedException {
        while (true) {
            if (Files.isDirectory(folder)) {
                try {
                    folder.register(service, StandardWatchEventKinds.ENTRY_CREATE);
                    return;
                } catch (IOException e) {
                    ILog.of(CameraFolder.class).info("The camera folder is not back yet: " + e.getMessage());
                }
            }
            // Ends when nobody watches any more.
            service.poll(AWAY_MILLIS, TimeUnit.MILLISECONDS);
        }
    }

    /** A picture is told once it doesn't grow any more: a camera takes its time to write. One that never comes whole is given up. */
    private void whole(Path picture) throws InterruptedException {
        try {
            long before = -1;
            for (int looks = 0; looks < MOST_LOOKS; looks++) {
                long size = Files.isRegularFile(picture) ? Files.size(picture) : -1;
                if (size > 0 && size == before) {
                    listeners.forEach(listener -> listener.accept(picture));
                    return;
                }
                looks = size > before ? 0 : looks;
                before = size;
                TimeUnit.MILLISECONDS.sleep(STILL_MILLIS);
            }
        } catch (IOException gone) {
            ILog.of(CameraFolder.class).info("A picture in the camera folder went away: " + picture.getFileName());
        }
    }

    @Override
    public synchronized void close() {
        watching.ifPresent(before -> {
            try {
                before.service().close();
            } catch (IOException e) {
                ILog.of(CameraFolder.class).error(String.valueOf(e.getMessage()), e);
            }
        });
        watching = Optional.empty();
    }
}
