package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** The reference in {@code docs} is what the grammar says now; where it isn't, what it should be lies in {@code target}. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LanguageReferenceTest {

    private String expected;

    @BeforeAll
    void write() throws Exception {
        expected = new LanguageReference().text();
    }

    @Test
    void thePageIsWhatTheGrammarSays() throws Exception {
        String there = Files.exists(LanguageReference.PAGE) ? Files.readString(LanguageReference.PAGE) : "";
        if (!there.equals(expected)) {
            Files.writeString(Files.createDirectories(Path.of("target")).resolve("language-reference.md"), expected);
        }
        assertEquals(expected, there, "the grammar has changed: copy target/language-reference.md of the language's tests to docs");
    }

    @Test
    void everyConstructHasAnExample() {
        List<String> without = List.of(expected.split("\n## ")).stream().skip(1)
                .filter(section -> !section.startsWith("All words") && !section.contains("For example:")).map(section -> section.lines().findFirst().orElseThrow())
                .toList();
        assertTrue(without.isEmpty(), without::toString);
    }
}
