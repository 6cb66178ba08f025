package org.benchwright.workshop;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

import org.benchwright.engine.receipt.Standing;

/** Remembers where tests stood, so that only those that went on are read again. May be used from several threads. */
public final class StandingMemory {

    private final Map<String, Remembered> tests = new ConcurrentHashMap<>();

    /**
     * Where a test stood.
     *
     * @param sequence number of its last event then
     * @param standing where its unit stood
     * @param since    since when
     */
    record Remembered(long sequence, Standing standing, Instant since) {
    }

    Optional<Remembered> of(String test, long sequence) {
        return Optional.ofNullable(tests.get(test)).filter(known -> known.sequence() == sequence);
    }

    void remember(String test, Remembered what) {
        tests.put(test, what);
    }
}
