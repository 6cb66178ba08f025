package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.cli.internal.AnswerScript;
import org.benchwright.cli.internal.AnswersFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which line of an answers file answers what. */
class AnswersFileTest {

    @TempDir
    private Path folder;

    private AnswersFile file(String text) throws Exception {
        return AnswersFile.read(Files.writeString(folder.resolve("a.answers"), text));
    }

    private AnswerScript script(String text) throws Exception {
        return new AnswerScript(file(text), Map.of());
    }

    private static String next(AnswerScript script, String key) {
        return script.next(key).map(AnswersFile.Line::text).orElse("(none)");
    }

    @Test
    void linesAreReadWithTheirNumbers() throws Exception {
        AnswersFile file = file("\ufeff# comment\r\n\r\n  a.b = 1 = one # and more  \r\nc=\r\n");
        assertEquals(List.of(new AnswersFile.Line(3, "a.b", "1 = one # and more"), new AnswersFile.Line(4, "c", "")), file.answers());
    }

    @Test
    void aRepeatedKeyIsTakenInOrderAndTheLastLineStays() throws Exception {
        AnswerScript script = script("look = 1\nother = x\nlook = 2\n");
        assertEquals("1", next(script, "look"));
        assertEquals("2", next(script, "look"));
        assertEquals("2", next(script, "look"));
        assertEquals("(none)", next(script, "lo"));
    }

    @Test
    void aLineThatNamesTheKeyGoesBeforeAWildcard() throws Exception {
        AnswerScript script = script("* = any\nhazard.* = all\nhazard.mains = this\nhazard.m* = some\n");
        assertEquals("this", next(script, "hazard.mains"));
        assertEquals("some", next(script, "hazard.motor"));
        assertEquals("all", next(script, "hazard.static"));
        assertEquals("any", next(script, "lamps.on"));
    }

    @Test
    void aPointInAKeyIsAPointOnly() throws Exception {
        assertEquals("(none)", next(script("a.* = 1\n"), "ab.c"));
    }

    @Test
    void linesOfAWildcardAreTakenInOrderForEachKey() throws Exception {
        AnswerScript script = script("x.* = 1\nx.* = 2\n");
        assertEquals("1", next(script, "x.a"));
        assertEquals("1", next(script, "x.b"));
        assertEquals("2", next(script, "x.a"));
    }

    @Test
    void afterAnInterruptionItGoesOnWhereTheRecordStands() throws Exception {
        AnswerScript script = new AnswerScript(file("look = 1\nlook = 2\nlook = 3\nb = 4\n"), Map.of("look", 2));
        assertEquals(Optional.of("3"), script.next("look").map(AnswersFile.Line::text));
        assertEquals(List.of("Not needed: b (line 4)"), script.unused());
    }

    @Test
    void whatWasNotNeededIsToldByKey() throws Exception {
        AnswerScript script = script("a = 1\na = 2\nb = 3\na = 4\n");
        next(script, "a");
        assertEquals(List.of("Not needed: a (line 2, 4)", "Not needed: b (line 3)"), script.unused());
    }
}
