package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;

import org.benchwright.core.Cancellation;
import org.benchwright.language.editing.Fold;
import org.benchwright.language.editing.FolderSession;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What can be folded follows the grammar, whatever the text looks like. */
class FoldsTest {

    @TempDir
    static Path folder;
    private static FolderSession session;

    @BeforeAll
    static void open() {
        session = FolderSession.open(folder);
    }

    /** The folds of a text: kind, and lines from 1. */
    private static List<String> folds(String text) {
        Path file = folder.resolve("p.procedure");
        session.change(file, text);
        return session.analyse(file, Cancellation.never()).orElseThrow().folds().stream()
                .map(fold -> fold.kind() + " " + line(text, fold.offset()) + "-" + line(text, fold.offset() + fold.length()))
                        .toList();
    }

    private static long line(String text, int offset) {
        return 1 + text.substring(0, offset).chars().filter(c -> c == '\n').count();
    }

    @Test
    void everythingBetweenBracesFoldsFromItsFirstWord() {
        assertEquals(List.of("BLOCK 1-4", "BLOCK 5-25", "BLOCK 7-13", "BLOCK 8-12", "BLOCK 9-11", "BLOCK 14-16", "BLOCK 17-23", "BLOCK 19-22"), folds("""
                family a "A" {
                    lamp ok green "Health"
                    fault F1 "Fault" { means "It is." }
                }
                procedure p "P" revision 1 {
                    applies to a
                    stage s "S" {
                        step x "X."
                            takes 1 min { expect any of { ok steady,
                                ok off
                            } within 2 s of m
                        }
                    }
                    soak k "K" lasting 2 h witnessed {
                        keep ok steady
                    }
                    make safe "Safe"
                    {
                        step off
                            "Off." {
                            isolates supply
                        }
                    }
                    conclude accepted
                }
                """));
    }

    @Test
    void theLayoutDoesNotMatter() {
        assertEquals(List.of("BLOCK 1-3", "BLOCK 1-2", "BLOCK 1-2", "BLOCK 2-3", "BLOCK 2-3"),
                folds("procedure p \"P\" revision 1 { applies to a stage s \"S\" { step x \"X.\" { wait\n1 s } } make safe \"M\" { step y \"{\" {\n} } conclude accepted }"));
    }

    @Test
    void commentsFoldAndThoseBelowEachOtherTogether() {
        assertEquals(List.of("COMMENT 1-3", "BLOCK 5-13", "COMMENT 10-12"), folds("""
                // One.
                // Two.
                // Three.

                family a "A" { // not at the beginning of a line
                    // alone

                    lamp ok green "Health" // beside
                    lamp no green "Other" // beside too
                    /* over
                       three
                       lines */ /* one line */
                }
                """));
    }

    @Test
    void importsFold() {
        assertEquals(List.of("IMPORTS 1-3"), folds("import \"a.family\"\n\nimport \"b.family\"\n"));
        assertEquals(List.of(), folds("import \"a.family\"\n"));
    }

    @Test
    void aBlockThatIsNotClosedFoldsToTheEndOfWhatIsThere() {
        assertEquals(List.of("BLOCK 1-4", "BLOCK 3-4"),
                folds("procedure p \"P\" revision 1 {\n applies to a\n stage s \"S\" {\n step x \"X.\" { wait 1 s }\n\n\n"));
        assertEquals(List.of(), folds("}\n}\n{\n"));
    }

    @Test
    void theDemoFoldsAtEachStepAndStage() {
        FolderSession demo = DemoFolder.open();
        String text = DemoFolder.text(demo, DemoFolder.PROCEDURE);
        List<Fold> folds = demo.analyse(DemoFolder.PROCEDURE, Cancellation.never()).orElseThrow().folds();
        for (String begin : List.of("procedure c16_acceptance", "stage received", "step plate", "soak endurance",
                "make safe")) {
            assertTrue(folds.stream().anyMatch(fold -> text.startsWith(begin, fold.offset())
                    && text.charAt(fold.offset() + fold.length() - 1) == '}'), begin);
        }
        assertTrue(folds.stream().anyMatch(fold -> fold.kind() == Fold.Kind.COMMENT && fold.offset() == 0),
                "the lines above the procedure");
    }
}
