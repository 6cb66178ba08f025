package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.text.SyntaxText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every code has words, and a line on the page that explains them. */
class RemarkCodesTest {

    private static final Path PAGE = Path.of("../../docs/remarks.md");

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

    @Test
    void thePageListsEveryCodeWithItsSeverityAndNothingElse() throws IOException {
        List<String> listed = Files.readAllLines(PAGE).stream().filter(line -> line.startsWith("| `"))
                .map(line -> line.replaceAll("^\\| `([a-z0-9-]+)` \\| (\\w+) .*$", "$1 $2")).sorted().toList();
        assertEquals(Stream.of(RemarkCode.values()).map(code -> code.word() + " " + code.severity().word()).sorted().toList(), listed);
    }
}
