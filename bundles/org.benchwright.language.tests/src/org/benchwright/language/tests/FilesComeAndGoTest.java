package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

import org.benchwright.core.Cancellation;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.editing.Renaming;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that come and go on the disk beneath an open folder, and in folders from which it imports. */
class FilesComeAndGoTest {

    @TempDir
    Path root;

    private Path folder;
    private Path common;

    @BeforeEach
    void write() throws IOException {
        folder = Files.createDirectory(root.resolve("bench"));
        common = Files.createDirectory(root.resolve("common"));
        for (Map.Entry<Path, String> each : EditedFolder.texts(folder, 1).entrySet()) {
            Files.writeString(each.getKey(), each.getValue());
        }
        for (Map.Entry<Path, String> each : EditedFolder.imported(common).entrySet()) {
            Files.writeString(each.getKey(), each.getValue());
        }
    }

    private static Map<Path, List<Remark>> remarks(FolderSession session) {
        return session.remarks(Cancellation.never());
    }

    /** What is moved keeps its size and the time of its last change. */
    @Test
    void aFileThatIsMovedAwayAndBackIsThereAgain() throws IOException {
        FolderSession session = FolderSession.open(folder);
        List<Path> before = session.files();
        Path family = folder.resolve("lark.family");
        Files.move(family, root.resolve("aside"));
        assertTrue(session.refresh());
        assertFalse(session.files().contains(family));
        Files.move(root.resolve("aside"), family);
        assertTrue(session.refresh());
        assertEquals(before, session.files());
        assertEquals(List.of(), remarks(session).get(family));
    }

    @Test
    void whatAnImportedFileDeclaredIsGoneWithIt() throws IOException {
        Path crow = folder.resolve("crow.procedure");
        FolderSession session = FolderSession.open(folder);
        assertEquals(List.of(), remarks(session).get(crow));
        Path imported = common.resolve("crow.procedure");
        Files.move(imported, root.resolve("aside"));
        session.refresh();
        assertEquals(remarks(FolderSession.open(folder)), remarks(session), "as a folder that is read afresh");
        assertTrue(remarks(session).get(crow).stream()
                .anyMatch(remark -> remark.code() == RemarkCode.UNKNOWN_FAMILY), () -> remarks(session).toString());
        Files.move(root.resolve("aside"), imported);
        session.refresh();
        assertEquals(List.of(), remarks(session).get(crow));
    }

    @Test
    void whatOneOfTwoImportedFilesDeclaredIsGoneWithIt() throws IOException {
        Path crow = folder.resolve("crow.procedure");
        String text = Files.readString(common.resolve("crow.procedure"));
        int shared = text.indexOf("shared stage");
        Files.writeString(common.resolve("bird.family"), text.substring(0, shared));
        Files.writeString(common.resolve("crow.procedure"), text.substring(shared));
        FolderSession session = FolderSession.open(folder);
        assertEquals(List.of(), remarks(session).get(crow));
        Files.delete(common.resolve("bird.family"));
        session.refresh();
        assertEquals(remarks(FolderSession.open(folder)), remarks(session), "as a folder that is read afresh");
        assertTrue(remarks(session).get(crow).stream()
                .anyMatch(remark -> remark.code() == RemarkCode.UNKNOWN_FAMILY), () -> remarks(session).toString());
    }

    /** Which of two files that declare one name comes first does not depend on which was there first. */
    @Test
    void aFileThatComesLaterIsReadInItsPlace() throws IOException {
        FolderSession session = FolderSession.open(folder);
        remarks(session);
        String text = Files.readString(common.resolve("crow.procedure"));
        Files.writeString(common.resolve("a.procedure"), text.substring(text.indexOf("shared stage"))
                .replace("step hello", "step howl")
                .replace("go to hello", "go to howl").replace("lamp ok", "lamp good"));
        session.refresh();
        assertEquals(remarks(FolderSession.open(folder)), remarks(session), "as a folder that is read afresh");
        Path crow = folder.resolve("crow.procedure");
        int at = Files.readString(crow).indexOf("carry out greet") + "carry out ".length();
        assertEquals(FolderSession.open(folder).declaration(crow, at), session.declaration(crow, at));
    }

    /** The other places where it is meant would not be seen from here. */
    @Test
    void whatAnotherFolderDeclaresIsRenamedThere() throws IOException {
        FolderSession session = FolderSession.open(folder);
        Path crow = folder.resolve("crow.procedure");
        int at = Files.readString(crow).indexOf("carry out greet") + "carry out ".length();
        assertEquals("This is declared in " + common.resolve("crow.procedure")
                + ", in another folder; rename it there, and then here.",
                ((Renaming.Refused) session.rename(crow, at, "welcome")).why());
    }
}
