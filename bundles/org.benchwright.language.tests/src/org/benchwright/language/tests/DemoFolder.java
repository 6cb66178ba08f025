package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;

import org.benchwright.language.editing.FolderSession;

/** The demo folder as an editor has it open, and places in its texts. */
final class DemoFolder {

    static final Path FOLDER = Path.of("../../procedures").toAbsolutePath().normalize();
    static final Path BASE = FOLDER.resolve("tarn.family");
    static final Path FAMILY = FOLDER.resolve("tarn-c16.family");
    static final Path PROCEDURE = FOLDER.resolve("tarn-c16-acceptance.procedure");

    private DemoFolder() {
    }

    static FolderSession open() {
        return FolderSession.open(FOLDER);
    }

    static String text(FolderSession session, Path file) {
        return session.text(file).orElseThrow();
    }

    /** The place behind the first such passage. */
    static int behind(FolderSession session, Path file, String passage) {
        int at = text(session, file).indexOf(passage);
        assertTrue(at >= 0, passage);
        return at + passage.length();
    }
}
