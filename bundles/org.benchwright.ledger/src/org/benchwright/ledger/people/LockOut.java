package org.benchwright.ledger.people;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import org.benchwright.core.Durations;
import org.benchwright.ledger.DurableFiles;
import org.benchwright.ledger.internal.Messages;

/**
 * Counts wrong passwords of one key in a file beside it, so that starting the program again does not help. From the fifth on each makes the
 * next try wait: a minute, then twice as long each time, a day at most. A try is counted before it is looked at: killing the program in the
 * midst of it is one wrong password.
 *
 * @param file  where it is counted
 * @param clock wall time
 */
record LockOut(Path file, InstantSource clock) {

    private static final int FREE = 5;
    private static final Duration FIRST_WAIT = Duration.ofMinutes(1);
    private static final Duration LONGEST_WAIT = Duration.ofDays(1);
    private static final int MOST_DOUBLINGS = 11;

    private record Tries(int wrong, Instant last) {

        Tries {
            if (wrong < 0) {
                throw new IllegalArgumentException("wrong passwords count from 0: " + wrong);
            }
        }
    }

    /** Counts a try as wrong. */
    void beginTry() throws IOException, KeyRefusedException {
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        Tries tries = read(now);
        Instant free = tries.last().plus(wait(tries.wrong()));
        // A clock that was set back must not lock somebody out for longer than the wait.
        boolean waiting = now.isBefore(free) && !now.isBefore(tries.last().minus(LONGEST_WAIT));
        if (waiting) {
            throw new KeyRefusedException(Messages.text("key.locked", tries.wrong(), Durations.words(Duration.between(now, free))));
        }
        write(new Tries(Math.min(tries.wrong(), Integer.MAX_VALUE - 1) + 1, now));
    }

    private void write(Tries tries) throws IOException {
        String line = tries.wrong() + " " + tries.last() + "\n";
        DurableFiles.writePrivate(file, line.getBytes(StandardCharsets.US_ASCII));
    }

    /** The password was right. */
    void succeeded() throws IOException {
        Files.deleteIfExists(file);
    }

    private static Duration wait(int wrong) {
        if (wrong < FREE) {
            return Duration.ZERO;
        }
        Duration wait = FIRST_WAIT.multipliedBy(1L << Math.min(wrong - FREE, MOST_DOUBLINGS));
        return wait.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : wait;
    }

    private Tries read(Instant now) throws IOException {
        if (!Files.exists(file)) {
            return new Tries(0, Instant.EPOCH);
        }
        String[] words = new String(Files.readAllBytes(file), StandardCharsets.US_ASCII).strip().split(" ");
        try {
            return new Tries(Integer.parseInt(words[0]), Instant.parse(words[1]));
        } catch (IllegalArgumentException | DateTimeException | ArrayIndexOutOfBoundsException changed) {
            // Somebody wrote into it; that must not make trying cheaper. It is kept, or the wait would begin anew each time it is read.
            Tries begunAnew = new Tries(FREE, now);
            write(begunAnew);
            return begunAnew;
        }
    }
}
