package org.benchwright.watch.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.fail;

import java.time.Duration;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;

import org.benchwright.watch.CannotSeeException;
import org.benchwright.watch.PointReader;
import org.benchwright.watch.PointValues;

/** Reading a unit in a test, in bounded time. */
final class Reading {

    private static final long PATIENCE_S = 180;

    private Reading() {
    }

    static PointValues of(PointReader reader) throws Exception {
        return reader.read().toCompletableFuture().get(PATIENCE_S, TimeUnit.SECONDS);
    }

    /** Reads until it succeeds: after a restart the first read may still meet what is left of the old connection. */
    static PointValues again(PointReader reader) throws Exception {
        long until = System.nanoTime() + Duration.ofSeconds(PATIENCE_S).toNanos();
        while (true) {
            try {
                return of(reader);
            } catch (ExecutionException e) {
                if (System.nanoTime() > until) {
                    throw e;
                }
                Thread.sleep(100);
            }
        }
    }

    /** Why it can't be read. */
    static String failure(PointReader reader) throws Exception {
        try {
            return fail("it was read: " + of(reader));
        } catch (ExecutionException e) {
            return assertInstanceOf(CannotSeeException.class, e.getCause()).getMessage();
        }
    }

    /** Why it can't be read, where that is no silence: a busy machine may take longer than the time-out at first, and is asked again. */
    static String refusal(PointReader reader) throws Exception {
        long until = System.nanoTime() + Duration.ofSeconds(PATIENCE_S).toNanos();
        String words = failure(reader);
        while (words.startsWith("no answer from ") && System.nanoTime() < until) {
            Thread.sleep(100);
            words = failure(reader);
        }
        return words;
    }

    static void assertRefuses(String words, PointReader reader) throws Exception {
        assertEquals(words, refusal(reader));
    }

    static void assertFails(String words, PointReader reader) throws Exception {
        assertEquals(words, failure(reader));
    }
}
