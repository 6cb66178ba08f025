package org.benchwright.ledger;

import java.util.Objects;

/**
 * Something that was done on a bench which did not know the books as they stand before it in this ledger: an approval, a key or a role may
 * have ended meanwhile. No fault, since nobody there could know it; told, since nobody else can say whether it was so.
 *
 * @param test     the test
 * @param sequence number of the event
 * @param words    what the bench knew, and what stands here
 */
public record LateArrival(TestId test, long sequence, String words) {

    public LateArrival {
        Objects.requireNonNull(test);
        Objects.requireNonNull(words);
    }
}
