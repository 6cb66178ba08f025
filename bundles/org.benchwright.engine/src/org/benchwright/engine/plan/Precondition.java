package org.benchwright.engine.plan;

import java.time.Duration;
import java.util.Optional;

import org.benchwright.core.Limits;

/**
 * What must hold before work begins.
 *
 * @param name      its name
 * @param statement what must hold
 * @param valid     how long a confirmation lasts; for the whole test where empty
 * @param text      the label of a text to enter with it, where one is asked for
 * @param reading   the limits of a reading that decides it, where one is asked for
 * @param instrument the instrument that the reading is taken with, where one is said
 */
public record Precondition(String name, String statement, Optional<Duration> valid, Optional<String> text, Optional<Limits> reading,
        Optional<String> instrument) {

    /** A precondition without an instrument. */
    public Precondition(String name, String statement, Optional<Duration> valid, Optional<String> text, Optional<Limits> reading) {
        this(name, statement, valid, text, reading, Optional.empty());
    }
}
