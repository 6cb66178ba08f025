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

    private static final long PATIENCE_S = 20;

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

    static void assertFails(String words, PointReader reader) throws Exception {
        assertEquals(words, failure(reader));
    }
}
