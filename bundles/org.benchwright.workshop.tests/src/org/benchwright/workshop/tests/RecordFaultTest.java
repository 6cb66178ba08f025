package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.benchwright.workshop.RecordFault;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The place of a fault is told once. */
class RecordFaultTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "T-4K7M2-QXD9R | 4 | it does not follow.                                           | T-4K7M2-QXD9R event 4: it does not follow.",
        "T-4K7M2-QXD9R | 0 | it can't be read: no room                                     | T-4K7M2-QXD9R: it can't be read: no room",
        "T-4K7M2-QXD9R | 4 | Test T-4K7M2-QXD9R, event 4 (position 14): the link is wrong. | Test T-4K7M2-QXD9R, event 4 (position 14): the link is wrong.",
        "T-4K7M2-QXD9R | 4 | certificate T-4K7M2-QXD9R/2 is not the next                   | T-4K7M2-QXD9R event 4: certificate T-4K7M2-QXD9R/2 is not the next",
        "''            | 0 | The file is damaged: it ends early                            | The file is damaged: it ends early"})
    void itsPlaceIsToldOnce(String test, long sequence, String reason, String told) {
        assertEquals(told, new RecordFault(test, sequence, reason).toString());
    }
}
