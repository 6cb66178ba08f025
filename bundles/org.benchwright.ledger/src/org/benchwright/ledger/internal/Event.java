package org.benchwright.ledger.internal;

import java.time.Duration;
import java.time.Instant;
import org.benchwright.core.Actor;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.JsonValue.Members;

/** What the canonical bytes of one event say. */
public record Event(TestId test, long sequence, Instant instant, int sitting, Duration offset, Actor actor, String kind,
        Members payload) {

    /** The event that {@code draft} becomes at its place in the test, with {@code payload} instead of the draft's text. */
    public static Event of(EntryDraft draft, long sequence, Members payload) {
        return new Event(draft.test(), sequence, draft.instant(), draft.sitting(), draft.offset(), draft.actor(), draft.kind(), payload);
    }

    /** The entry that this event is at its place in the ledger. */
    public LedgerEntry at(long position, Link link, byte[] canonical) {
        return new LedgerEntry(position, test, sequence, instant, sitting, offset, actor, kind, CanonicalJson.text(payload), link,
                canonical);
    }
}
