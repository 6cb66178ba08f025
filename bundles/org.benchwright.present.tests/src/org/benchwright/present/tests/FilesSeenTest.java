package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.List;

import org.benchwright.present.FilesSeen;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When files that others write to are read again. */
class FilesSeenTest {

    private static final long MILLI = 1_000_000;

    @TempDir
    private Path folder;
    private Path file;
    private List<Path> files;
    /** Any beginning will do, also one from which a clock of 64 bits runs over. */
    private long now = Long.MAX_VALUE - 1000 * MILLI;

    @BeforeEach
    void write() throws IOException {
        file = Files.writeString(folder.resolve("ledger"), "one");
        files = List.of(file, folder.resolve("ledger-wal"));
    }

    private FilesSeen look(FilesSeen before, Duration later) {
        now += later.toNanos();
        return before.look(files, now);
    }

    private FilesSeen never() {
        return look(FilesSeen.NEVER, Duration.ZERO);
    }

    /** Read until they have stood still for long enough. */
    private FilesSeen still() {
        return look(never(), FilesSeen.STILL);
    }

    @Test
    void whatWasNeverReadIsRead() {
        assertTrue(never().mayHoldMoreThan(FilesSeen.NEVER));
    }

    @Test
    void aCommitThatCouldNotBeReadYetIsReadLaterThoughTheFilesDoNotChangeAnyMore() {
        FilesSeen early = never();
        assertTrue(look(early, FilesSeen.AGAIN).mayHoldMoreThan(early), "its bytes may have been there before they could be read");
    }

    @Test
    void whatChangedAMomentAgoIsNotReadAgainAtOnce() {
        FilesSeen early = never();
        assertFalse(look(early, FilesSeen.AGAIN.minusMillis(1)).mayHoldMoreThan(early));
    }

    @Test
    void whatWasReadWhenItHadStoodStillIsNotReadAgain() {
        FilesSeen still = still();
        assertFalse(look(still, Duration.ofDays(1)).mayHoldMoreThan(still));
    }

    @Test
    void readingsThatAreTakenInTurnComeToAnEnd() {
        FilesSeen seen = FilesSeen.NEVER;
        int readings = 0;
        for (int i = 0; i < 100; i++) {
            FilesSeen next = look(seen, FilesSeen.AGAIN);
            if (next.mayHoldMoreThan(seen)) {
                seen = next;
                readings++;
            }
        }
        assertTrue(readings == 1 + FilesSeen.STILL.dividedBy(FilesSeen.AGAIN), "read " + readings + " times");
    }

    @Test
    void anotherSizeAnotherTimeAndAFileThatCameOrWentAreRead() throws IOException {
        FilesSeen still = still();
        Files.writeString(file, "more");
        assertTrue(look(still, Duration.ZERO).mayHoldMoreThan(still), "size");
        still = still();
        Files.setLastModifiedTime(file, FileTime.fromMillis(1));
        assertTrue(look(still, Duration.ZERO).mayHoldMoreThan(still), "time");
        still = still();
        Files.writeString(files.get(1), "");
        assertTrue(look(still, Duration.ZERO).mayHoldMoreThan(still), "came");
        still = still();
        Files.delete(files.get(1));
        assertTrue(look(still, Duration.ZERO).mayHoldMoreThan(still), "went");
    }

    @Test
    void otherFilesAreRead() {
        FilesSeen still = still();
        assertTrue(still.look(List.of(file), now).mayHoldMoreThan(still));
    }
}
