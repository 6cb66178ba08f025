package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.tests.Approved;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The demo's acceptance procedure is approved in a ledger; checking it against that ledger tells whether it is still what was approved. */
class ApprovedChangedTest extends OnABench {

    private static final Path DEMO = Path.of("../../procedures").toAbsolutePath().normalize();
    private static final String NAME = "tarn-c16-acceptance.procedure";

    private Path procedure;

    @BeforeEach
    void approve() throws Exception {
        Path texts = Files.createDirectory(folder.resolve("texts"));
        for (Path file : demo()) {
            Files.copy(file, texts.resolve(file.getFileName()));
        }
        procedure = texts.resolve(NAME);
        Reading.Ready ready = (Reading.Ready) new ProcedureReader(LanguageServices.create()).read(procedure);
        Approved.in(bench.ledger(), bench.time().benchTime(), ready.plan(), ready.text());
    }

    private static List<Path> demo() throws IOException {
        try (Stream<Path> files = Files.list(DEMO)) {
            return files.filter(LanguageServices::isOurs).toList();
        }
    }

    private CommandRunner.Ended check(Path ledger) {
        return bench.run("check", "texts", "--ledger", ledger.toString());
    }

    private void change(String before, String after) throws IOException {
        String text = Files.readString(procedure);
        assertTrue(text.contains(before), before);
        Files.writeString(procedure, text.replace(before, after));
    }

    @Test
    void aChangedTextNeedsANewRevision() throws IOException {
        CommandRunner.Ended same = check(bench.ledger());
        assertEquals(0, same.status(), same.out() + same.err());
        assertEquals("", same.out());

        change("within 2 s of on", "within 3 s of on");
        CommandRunner.Ended changed = check(bench.ledger());
        assertEquals(0, changed.status(), changed.out() + changed.err());
        String[] lines = Files.readString(procedure).split("\n");
        int line = Stream.of(lines).filter(each -> each.startsWith("procedure ")).map(List.of(lines)::indexOf).findFirst().orElseThrow();
        int column = lines[line].indexOf("revision 1") + "revision ".length() + 1;
        assertEquals(Path.of("texts", NAME) + ":" + (line + 1) + ":" + column
                + ": warning: approved-changed: Revision 1 was approved with another text; give a changed text a new revision.\n", changed.out());

        change("revision 1", "revision 2");
        assertEquals(0, check(bench.ledger()).status());
    }

    /** An editor has the changed text open, and its server runs, when the revision is approved with the text as it was. */
    @Test
    void anEditorIsToldWhatIsApprovedWhileItRuns() throws Exception {
        Reading.Ready ready = (Reading.Ready) new ProcedureReader(LanguageServices.create()).read(procedure);
        Path later = folder.resolve("later.ledger");
        try (BenchLedger ledger = BenchLedger.open(later)) {
            Approved.people(ledger, bench.time().benchTime());
        }
        String changed = Files.readString(procedure).replace("within 2 s of on", "within 3 s of on");
        try (EditorTalk editor = new EditorTalk(bench, "lsp", "--ledger", later.toString())) {
            editor.say("""
                    {"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{}}}""");
            editor.say("""
                    {"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"%s","languageId":"procedure","version":1,"text":%s}}}"""
                    .formatted(procedure.toUri(), EditorTalk.quoted(changed)));
            assertTrue(editor.hears("\"diagnostics\":[]"), editor::heard);
            assertFalse(editor.heard().contains("approved-changed"), editor::heard);
            try (BenchLedger ledger = BenchLedger.open(later)) {
                Approved.approve(ledger, bench.time().benchTime(), ready.plan(), ready.text());
            }
            assertTrue(editor.hears("approved-changed"), editor::heard);
            Files.writeString(later, "no ledger");
            assertTrue(editor.hearsTrouble(), "a ledger that can't be read any more is told");
            assertEquals(0, editor.leave());
        }
    }

    @Test
    void aLedgerThatIsNamedHasToBeThere() throws IOException {
        change("within 2 s of on", "within 3 s of on");
        Path none = folder.resolve("none.ledger");
        assertEquals(2, check(none).status());
        assertFalse(Files.exists(none));
    }

    @Test
    void aLedgerThatCantBeReadIsNoLicence() throws IOException {
        Path broken = Files.writeString(folder.resolve("broken.ledger"), "no ledger");
        CommandRunner.Ended ended = check(broken);
        assertEquals(2, ended.status(), ended.out() + ended.err());
        assertFalse(ended.err().contains("at org."), ended.err());
    }
}
