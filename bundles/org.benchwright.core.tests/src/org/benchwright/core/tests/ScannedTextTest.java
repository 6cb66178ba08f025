package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.text.Normalizer;

import org.benchwright.core.ScannedText;
import org.benchwright.testkit.PropertyTest;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** What scanners send around and between the characters of a plate does no harm. */
class ScannedTextTest implements PropertyTest {

    @ParameterizedTest
    @CsvSource({"'\u0002C16-004711\r\u0003', C16-004711", "'C16\u001d-004711', C16-004711", "'  C16-004711\t\n', C16-004711",
        "'\u202eC16-\u200b004711', C16-004711", "'A\u030a-1', \u00c5-1", "'C16\ud800-1', C16-1", "'\u001b[2J', [2J", "'\u0000 \u0007', ''", "'', ''"})
    void whatNobodySeesIsLeftOut(String scanned, String text) {
        assertEquals(text, ScannedText.clean(scanned));
    }

    @Property(tries = 2000)
    void whateverComesNothingHiddenIsLeftAndOnceIsEnough(@ForAll String typed) {
        String text = ScannedText.clean(typed);
        assertTrue(text.codePoints().map(Character::getType).noneMatch(type -> type == Character.CONTROL || type == Character.FORMAT
                || type == Character.SURROGATE || type == Character.LINE_SEPARATOR || type == Character.PARAGRAPH_SEPARATOR), text);
        assertEquals(text.strip(), text);
        assertTrue(Normalizer.isNormalized(text, Normalizer.Form.NFC));
        assertEquals(text, ScannedText.clean(text));
    }
}
