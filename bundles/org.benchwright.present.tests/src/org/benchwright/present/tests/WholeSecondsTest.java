package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.benchwright.present.internal.WholeSeconds;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Times in the sentences of a record are told as exactly as people say them. */
class WholeSecondsTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            look 1 h 2 min 3.456 s later than due; tolerance 30 min | look 1 h 2 min 3 s later than due; tolerance 30 min
            it stopped between 71 h 0.004 s and 71 h 59 min 59.999 s of the soak | it stopped between 71 h and 71 h 59 min 59 s of the soak
            the lamp came 1.456 s after "on" | the lamp came 1.456 s after "on"
            2 h 3 s | 2 h 3 s
            took 1 h 0.4 s; at most 1 h are allowed | took 1 h 0.4 s; at most 1 h are allowed
            after 1 min 30.25 s, not within 1 min 30 s | after 1 min 30.25 s, not within 1 min 30 s
            took 21 h 0.4 s; at most 1 h 5 min are allowed | took 21 h; at most 1 h 5 min are allowed
            24.02 V accepted | 24.02 V accepted
            """)
    void areToldToTheSecondFromAMinuteOn(String recorded, String shown) {
        assertEquals(shown, WholeSeconds.in(recorded));
    }
}
