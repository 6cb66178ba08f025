package org.benchwright.ledger.people;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchwright.ledger.SignerKey;

/**
 * A key of a person, and from where to where in the ledger it may sign. Places in the ledger count, and not the clock: that can be set back.
 *
 * @param key      the public half
 * @param enrolled position of the event that enrolled it
 * @param replaced position of the event that put another in its place, if there was one
 * @param revoked  how it was revoked, if it was
 */
public record PersonKey(SignerKey key, long enrolled, OptionalLong replaced, Optional<Revocation> revoked) {

    public PersonKey {
        Objects.requireNonNull(key);
        Objects.requireNonNull(replaced);
        Objects.requireNonNull(revoked);
    }

    /**
     * How a key was revoked.
     *
     * @param position of the event that did it
     * @param from     since when it is not to be trusted; never after that event's instant
     * @param reason   why
     */
    public record Revocation(long position, Instant from, String reason) {
    }

    /** Whether an event at {@code position} that says to be of {@code instant} may be signed with it. */
    public boolean signs(long position, Instant instant) {
        boolean there = position > enrolled && (replaced.isEmpty() || position <= replaced.getAsLong());
        return there && revoked.map(how -> position == how.position() || position < how.position() && instant.isBefore(how.from()))
                .orElse(true);
    }

    /**
     * Whether it was good as far as a bench knew whose register of people ended with the event at {@code registerEnd}, and is not among what
     * a later revocation reaches back to.
     */
    public boolean signedUnknowing(long registerEnd, Instant instant) {
        return enrolled <= registerEnd && (replaced.isEmpty() || registerEnd < replaced.getAsLong())
                && revoked.map(how -> registerEnd < how.position() && instant.isBefore(how.from())).orElse(true);
    }

    /** Whether it was neither replaced nor revoked. */
    public boolean inUse() {
        return replaced.isEmpty() && revoked.isEmpty();
    }
}
