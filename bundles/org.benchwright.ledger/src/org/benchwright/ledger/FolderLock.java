package org.benchwright.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.Optional;

/**
 * For short work that only one process may do in a folder at a time: making or opening the ledger, making the bench key. It is given back
 * when the process ends, however it ends. Appending to a ledger needs no such lock.
 */
public final class FolderLock implements AutoCloseable {

    private static final String NAME = "bench.lock";
    private static final Duration BETWEEN_TRIES = Duration.ofMillis(20);

    private final FileChannel channel;

    private FolderLock(FileChannel channel) {
        this.channel = channel;
    }

    /**
     * Waits for the lock.
     *
     * @return the lock; empty when others held it for longer than {@code patience}
     * @throws IOException when the folder can't be written to
     */
    public static Optional<FolderLock> take(Path folder, Duration patience) throws IOException {
        Files.createDirectories(folder);
        FileChannel channel = FileChannel.open(folder.resolve(NAME), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            long end = System.nanoTime() + patience.toNanos();
            while (!isTaken(channel)) {
                if (System.nanoTime() - end > 0) {
                    channel.close();
                    return Optional.empty();
                }
                Thread.sleep(BETWEEN_TRIES.toMillis());
            }
            return Optional.of(new FolderLock(channel));
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            channel.close();
            throw new IOException("interrupted while waiting for " + folder, interrupted);
        } catch (IOException | RuntimeException failure) {
            channel.close();
            throw failure;
        }
    }

    private static boolean isTaken(FileChannel channel) throws IOException {
        try {
            FileLock lock = channel.tryLock();
            return lock != null;
        } catch (OverlappingFileLockException heldByAnotherThread) {
            return false;
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
