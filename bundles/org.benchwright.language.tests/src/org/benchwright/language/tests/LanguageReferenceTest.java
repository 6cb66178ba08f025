package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

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
        List<String> without = constructs().filter(section -> !section.contains("For example:")).map(LanguageReferenceTest::title).toList();
        assertTrue(without.isEmpty(), without::toString);
    }

    /** The syntax tells how it is written, the example how that looks; neither tells what it is for. */
    @Test
    void everyConstructSaysWhatItIs() {
        List<String> without = constructs().filter(section -> !section.lines().skip(1).filter(line -> !line.isBlank()).dropWhile(line -> line.startsWith("    "))
                .findFirst().filter(line -> !line.equals("For example:")).isPresent()).map(LanguageReferenceTest::title).toList();
        assertTrue(without.isEmpty(), without::toString);
    }

    private Stream<String> constructs() {
        return Stream.of(expected.split("\n## ")).skip(1).filter(section -> !section.startsWith("All words") && !section.startsWith("Units of measure"));
    }

    private static String title(String section) {
        return section.lines().findFirst().orElseThrow();
    }
}
