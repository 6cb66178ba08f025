package org.benchwright.ledger.internal.verify;

import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;
import org.benchwright.ledger.people.People;

/**
 * The register of people as a verification knows it.
 *
 * @param people    what its events make
 * @param positions where its events stand in the ledger, in order
 */
record KnownRegister(People people, List<Long> positions) {

    KnownRegister {
        positions = List.copyOf(positions);
    }

    static KnownRegister none() {
        return new KnownRegister(People.none(), List.of());
    }

    /** How many of its events stand before that position. */
    long before(long position) {
        int found = Collections.binarySearch(positions, position);
        return found < 0 ? -found - 1 : found;
    }

    /** Where the event of that number stands. */
    OptionalLong position(long number) {
        return number < 1 || number > positions.size() ? OptionalLong.empty() : OptionalLong.of(positions.get((int) number - 1));
    }
}
