package org.benchwright.ledger;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import org.benchwright.core.Actor;

/**
 * An event before the ledger has given it its place.
 *
 * @param test    the test it belongs to
 * @param instant UTC wall time
 * @param sitting counts the processes that have worked on the test, from 1
 * @param offset  monotonic time since that sitting began, zero or more
 * @param actor   who
 * @param kind    name of the kind of event, see {@link EventKinds#isKind}
 * @param payload text of a JSON object without any JSON number in it: quantities, instants and counters are strings, so that
 *                {@code 23.90} keeps its last digit. Texts are normalised (Unicode NFC) when the event is appended.
 */
public record EntryDraft(TestId test, Instant instant, int sitting, Duration offset, Actor actor, String kind, String payload) {

    /**
     * @throws IllegalArgumentException when sitting, offset or kind are out of range; the payload is looked at by the ledger
     */
    public EntryDraft {
        Objects.requireNonNull(test);
        Objects.requireNonNull(instant);
        Objects.requireNonNull(actor);
        Objects.requireNonNull(payload);
        if (sitting < 1) {
            throw new IllegalArgumentException("sittings count from 1: " + sitting);
        }
        if (offset.isNegative()) {
            throw new IllegalArgumentException("offset below zero: " + offset);
        }
        if (!EventKinds.isKind(kind)) {
            throw new IllegalArgumentException("not the name of a kind of event: " + kind);
        }
    }
}
