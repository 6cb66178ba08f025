package org.benchwright.ledger;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;
import org.benchwright.core.Actor;

/**
 * An event in its place in the ledger. Two entries are equal when their places, links and canonical bytes are.
 *
 * @param position  place in the whole ledger, from 1, without gaps
 * @param test      the test it belongs to
 * @param sequence  place in the test, from 1, without gaps
 * @param instant   UTC wall time
 * @param sitting   counts the processes that have worked on the test, from 1
 * @param offset    monotonic time since that sitting began
 * @param actor     who
 * @param kind      name of the kind of event
 * @param payload   canonical JSON text of the payload
 * @param link      ties the event to all events before it in its test
 * @param canonical the bytes that the link was made over (RFC 8785); handed out as a copy
 */
public record LedgerEntry(long position, TestId test, long sequence, Instant instant, int sitting, Duration offset, Actor actor,
        String kind, String payload, Link link, byte[] canonical) {

    public LedgerEntry {
        Objects.requireNonNull(test);
        Objects.requireNonNull(link);
        canonical = canonical.clone();
    }

    @Override
    public byte[] canonical() {
        return canonical.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LedgerEntry entry && position == entry.position && link.equals(entry.link)
                && Arrays.equals(canonical, entry.canonical);
    }

    @Override
    public int hashCode() {
        return link.hashCode();
    }

    @Override
    public String toString() {
        return test + " " + sequence + " " + kind + " at " + position;
    }
}
