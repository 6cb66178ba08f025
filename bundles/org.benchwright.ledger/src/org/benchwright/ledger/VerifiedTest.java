package org.benchwright.ledger;

import java.util.Objects;

/**
 * A test as verification found it.
 *
 * @param test   its id
 * @param events number of its events
 * @param sealed whether it is sealed; an open test is verified as far as it goes
 * @param clean  whether no fault of any line was found in it
 */
public record VerifiedTest(TestId test, long events, boolean sealed, boolean clean) {

    public VerifiedTest {
        Objects.requireNonNull(test);
    }
}
