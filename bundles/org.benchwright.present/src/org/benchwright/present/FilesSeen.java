package org.benchwright.present;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How files that others write to looked when they were read last, so that they are not read again before they may hold more.
 *
 * <p>Sizes and times alone don't tell. What somebody commits to a ledger is in its files some time before a reader can see it, for the disk lies
 * between the two; whoever reads in that time finds nothing new, and the files don't change any more. Nor does a file's time change between two
 * writes that follow each other closely. So a reading counts only if it began when the files had stood still for {@link #STILL}.
 *
 * <pre>{@code
 * FilesSeen now = seen.look(files);
 * if (now.mayHoldMoreThan(seen)) {
 *     seen = now;
 *     read();   // behind the look, never before it
 * }
 * }</pre>
 */
public final class FilesSeen {

    /** Files that were never read: whatever is looked at may hold more. */
    public static final FilesSeen NEVER = new FilesSeen(Map.of(), 0, 0);

    /** Longer than a disk usually takes for a commit, and many times the resolution of a file's time. */
    public static final Duration STILL = Duration.ofSeconds(3);
    /** Files that changed a moment ago are read again no sooner, unless they have changed once more. */
    public static final Duration AGAIN = Duration.ofMillis(500);

    private final Map<Path, String> stamps;
    private final long since;
    private final long at;

    private FilesSeen(Map<Path, String> stamps, long since, long at) {
        this.stamps = stamps;
        this.since = since;
        this.at = at;
    }

    /** The files that a ledger is in: what was written last may still stand in the journal beside it. */
    public static List<Path> ofLedger(Path ledger) {
        return List.of(ledger, ledger.resolveSibling(ledger.getFileName() + "-wal"));
    }

    /** Looks at files; what is not there is seen as missing. */
    public FilesSeen look(Collection<Path> files) {
        return look(files, System.nanoTime());
    }

    /** The same at a moment of a clock that only goes forward, in ns. */
    public FilesSeen look(Collection<Path> files, long nanos) {
        Map<Path, String> now = new HashMap<>();
        files.forEach(file -> now.put(file, stamp(file, nanos)));
        return new FilesSeen(Map.copyOf(now), this != NEVER && now.equals(stamps) ? since : nanos, nanos);
    }

    /** True if the files as they are seen now have to be read by whoever read them after an earlier look. */
    public boolean mayHoldMoreThan(FilesSeen earlier) {
        if (earlier == NEVER || !stamps.equals(earlier.stamps)) {
            return true;
        }
        return earlier.at - earlier.since < STILL.toNanos() && at - earlier.at >= AGAIN.toNanos();
    }

    private static String stamp(Path file, long nanos) {
        try {
            return Files.exists(file) ? Files.size(file) + " " + Files.getLastModifiedTime(file) : "missing";
        } catch (IOException e) {
            // It may just have been removed; then it is read, and whatever is wrong shows there.
            return "unreadable " + nanos;
        }
    }
}
