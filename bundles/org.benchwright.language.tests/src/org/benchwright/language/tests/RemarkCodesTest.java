package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.text.SyntaxText;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every code has words. */
class RemarkCodesTest {

    @ParameterizedTest
    @EnumSource(RemarkCode.class)
    void aCodeHasWordsThatSayWhatTheyAreGiven(RemarkCode code) {
        String words = code.text("first", "second", "third");
        assertFalse(words.isBlank());
        assertFalse(words.contains("{"), words);
        assertTrue(words.endsWith(".") || words.endsWith("...") || words.endsWith("first") || words.endsWith("?"), words);
    }

    @ParameterizedTest
    @EnumSource(SyntaxText.class)
    void aSyntaxTextHasWords(SyntaxText text) {
        assertFalse(text.text("first", "second").isBlank());
    }
}
