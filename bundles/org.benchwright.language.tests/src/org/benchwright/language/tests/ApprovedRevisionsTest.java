package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Fix;
import org.benchwright.language.editing.FolderSession;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Revision 3 was approved as the files stood at first; numbers up to 6 are used up. */
class ApprovedRevisionsTest {

    @TempDir
    private Path folder;
    private Path family;
    private Path procedure;
    private ApprovedRevisions approved;

    @BeforeEach
    void approve() throws IOException {
        family = Files.writeString(folder.resolve("lark.family"), Bench.FAMILY);
        procedure = Files.writeString(folder.resolve("lark.procedure"), Bench.PROCEDURE);
        Reading.Ready ready = (Reading.Ready) new ProcedureReader(Bench.LANGUAGE).read(procedure);
        Digest text = Digest.of(ready.text().getBytes(StandardCharsets.UTF_8));
        approved = (name, of, number) -> name.equals("lark_acceptance") && of.equals("lark") && number == 3
                ? Optional.of(new ApprovedRevisions.Approved(text, 7))
                : Optional.empty();
    }

    private List<Remark> checked() {
        return Bench.LANGUAGE.check(List.of(folder), approved).remarks();
    }

    private static void change(Path file, String before, String after) throws IOException {
        String text = Files.readString(file);
        assertTrue(text.contains(before), before);
        Files.writeString(file, text.replace(before, after));
    }

    private void assertChanged() {
        List<Remark> remarks = checked();
        assertEquals(List.of(procedure + ":1:54: warning: approved-changed: Revision 3 was approved with another text; give a changed text a new revision."),
                remarks.stream().map(Remark::toString).toList());
    }

    @Test
    void whatWasApprovedIsAsItWas() {
        assertEquals(List.of(), checked());
    }

    @Test
    void anotherLimitIsAnotherText() throws IOException {
        change(procedure, "limits at most 5 V", "limits at most 4 V");
        assertChanged();
        assertEquals(List.of(), Bench.LANGUAGE.check(List.of(folder)).remarks(), "nothing to compare with");
    }

    @Test
    void aCommentIsSignedToo() throws IOException {
        change(procedure, "conclude accepted\n", "conclude accepted // at last\n");
        assertChanged();
    }

    @Test
    void aFamilyThatItUsesCountsEvenIfItIsNotAskedFor() throws IOException {
        change(family, "Oscillator weak when warm.", "Oscillator weak when cold.");
        assertChanged();
        List<Remark> alone = Bench.LANGUAGE.check(List.of(procedure), approved).remarks();
        assertEquals(List.of(RemarkCode.APPROVED_CHANGED), alone.stream().map(Remark::code).toList());
    }

    @Test
    void anotherFileBesideItDoesNotCount() throws IOException {
        Files.writeString(folder.resolve("another.family"),
                "family another \"Another\" {\n    lamp pwr green \"Power\"\n}\n");
        assertTrue(checked().stream().noneMatch(remark -> remark.code() == RemarkCode.APPROVED_CHANGED), () -> checked()
                .toString());
    }

    @Test
    void aNewRevisionAndOtherProceduresAreFree() throws IOException {
        change(procedure, "revision 3", "revision 4");
        change(procedure, "limits at most 5 V", "limits at most 4 V");
        assertEquals(List.of(), checked());
        change(procedure, "revision 4", "revision 3");
        change(procedure, "procedure lark_acceptance", "procedure lark_retest");
        assertEquals(List.of(), checked());
    }

    @Test
    void anEditorSaysItWhileItIsTypedAndOffersTheNextFreeNumber() {
        FolderSession session = FolderSession.open(folder);
        String changed = Bench.PROCEDURE.replace("limits at most 5 V", "limits at most 4 V");
        session.change(procedure, changed);
        assertEquals(List.of(), remarks(session));
        session.compare(approved);
        List<Remark> remarks = remarks(session);
        assertEquals(List.of(RemarkCode.APPROVED_CHANGED), remarks.stream().map(Remark::code).toList());
        assertEquals("3", changed.substring(remarks.get(0).offset(), remarks.get(0).offset() + remarks.get(0).length()));
        List<Fix> fixes = session.fixes(remarks.get(0));
        assertEquals(List.of("Write 'revision 7'"), fixes.stream().map(Fix::label).toList());
        Edit edit = fixes.get(0).edits().get(0);
        session.change(procedure, new StringBuilder(changed)
                .replace(edit.place().offset(), edit.place().offset() + edit.place().length(), edit.text()).toString());
        assertEquals(List.of(), remarks(session));
        session.change(procedure, Bench.PROCEDURE);
        assertEquals(List.of(), remarks(session));
    }

    @Test
    void anEditorSaysItWhenAFamilyIsChangedBesideIt() {
        FolderSession session = FolderSession.open(folder);
        session.compare(approved);
        assertEquals(List.of(), remarks(session));
        session.change(family, "// New.\n" + Bench.FAMILY);
        assertEquals(List.of(RemarkCode.APPROVED_CHANGED), remarks(session).stream().map(Remark::code).toList());
        session.close(family);
        assertEquals(List.of(), remarks(session));
    }

    private List<Remark> remarks(FolderSession session) {
        List<Remark> shown = session.analyse(procedure, Cancellation.never()).orElseThrow().remarks();
        assertEquals(session.remarks(Cancellation.never()).get(procedure), shown);
        return shown;
    }
}
