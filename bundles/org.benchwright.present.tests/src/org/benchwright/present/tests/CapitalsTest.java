package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.benchwright.present.internal.Capitals;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Instructions in capitals never change a quantity. */
class CapitalsTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "Switch on.                       | SWITCH ON.",
            "Apply 12 mA, then 5 mV.          | APPLY 12 mA, THEN 5 mV.",
            "Wait 5 min at 24V dc.            | WAIT 5 min AT 24V DC.",
            "At most 4.7 kohm or 3,3 Mohm     | AT MOST 4.7 kohm OR 3,3 Mohm",
            "Turn 2 screws of C16m            | TURN 2 SCREWS OF C16M",
            "Pull the plug, fit the tag.      | PULL THE PLUG, FIT THE TAG."})
    void unitsStayAsTheyAre(String text, String capitals) {
        assertEquals(capitals, Capitals.of(text));
    }
}
