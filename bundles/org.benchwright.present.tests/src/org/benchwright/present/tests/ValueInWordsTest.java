package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.benchwright.present.internal.ValueInWords;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sentence gives a value away where it has that value in it, and not where it ends in the same digits. */
class ValueInWordsTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            12 V is past the limit           | 2 V    | false
            0.2 V is past the limit          | 2 V    | false
            0,2 V is past the limit          | 2 V    | false
            2 Vs is another unit             | 2 V    | false
            it read -2 V                     | 2 V    | false
            2 V is past the limit            | 2 V    | true
            it read 2 V, twice               | 2 V    | true
            limits 1 .. 2 V                  | 2 V    | true
            between 1-2 V                    | 2 V    | true
            it read (2 V)                    | 2 V    | true
            it read -2 V                     | -2 V   | true
            again: 24.02 V does not conform  | 24.02 V does not conform | true
            """)
    void isTold(String words, String value, boolean told) {
        assertEquals(told, ValueInWords.tells(words, value));
    }
}
