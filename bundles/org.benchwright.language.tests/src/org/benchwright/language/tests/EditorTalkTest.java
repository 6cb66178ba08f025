package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.benchwright.language.ApprovedRevisions;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An editor and the server in conversation: files that go, addresses and places of every kind, work that fails. */
class EditorTalkTest {

    private static final String WRONG = "family wren \"Wren\" {\n    lamp pwr green \"Power\"\n    lamp pwr red \"Power\"\n}\n";
    private static final String SOUND = "family wren \"Wren\" {\n    lamp pwr green \"Power\"\n    modes idle\n    mode idle shows pwr steady\n}\n";

    @TempDir
    Path folder;

    private static TextDocumentIdentifier document(String uri) {
        return new TextDocumentIdentifier(uri);
    }

    @Test
    void theRemarksOnAFileThatIsGoneAreTakenBack() throws Exception {
        Path other = Files.writeString(folder.resolve("other.family"), WRONG.replace("wren", "finch"));
        try (EditorTalk talk = new EditorTalk(ApprovedRevisions.none())) {
            talk.opens(folder.resolve("wren.family").toUri().toString(), SOUND);
            assertEquals(List.of("duplicate-name"), talk.told("other.family", codes -> true));
            Files.delete(other);
            talk.server().getWorkspaceService().didChangeWatchedFiles(new DidChangeWatchedFilesParams(List.of()));
            assertEquals(List.of(), talk.told("other.family", codes -> true));
            talk.assertNothingFailed();
        }
    }

    @Test
    void theRemarksOnATextThatIsClosedWithoutHavingBeenSavedAreTakenBack() throws Exception {
        try (EditorTalk talk = new EditorTalk(ApprovedRevisions.none())) {
            String uri = folder.resolve("wren.family").toUri().toString();
            talk.opens(uri, WRONG);
            assertEquals(List.of("duplicate-name"), talk.told("wren.family", codes -> true));
            talk.server().getTextDocumentService().didClose(new DidCloseTextDocumentParams(document(uri)));
            assertEquals(List.of(), talk.told("wren.family", codes -> true));
            talk.assertNothingFailed();
        }
    }

    @Test
    void theEditorIsToldWhereNoRemarksCanBeMade() throws Exception {
        ApprovedRevisions broken = (procedure, family, number) -> {
            throw new IllegalStateException("the records can't be read");
        };
        try (EditorTalk talk = new EditorTalk(broken)) {
            String uri = folder.resolve("lark.procedure").toUri().toString();
            talk.opens(uri, Bench.PROCEDURE + "\n" + Bench.FAMILY);
            String said = talk.said();
            assertTrue(said.startsWith("The remarks"), said);
            assertFalse(said.contains("Exception"), said);
            assertTrue(talk.failures().stream().anyMatch(each -> each.contains("the records can't be read")),
                    () -> talk.failures().toString());
        }
    }

    /** Editors say 2147483647 for the end of a line. */
    @Test
    void aPlaceFarBehindALinesEndIsItsEnd() throws Exception {
        try (EditorTalk talk = new EditorTalk(ApprovedRevisions.none())) {
            String uri = folder.resolve("wren.family").toUri().toString();
            talk.opens(uri, WRONG.replace("\n", "\r\n"));
            talk.told("wren.family", codes -> !codes.isEmpty());
            Range line = new Range(new Position(2, 0), new Position(2, Integer.MAX_VALUE));
            assertEquals(1, fixes(talk, uri, line));
            assertEquals(0, fixes(talk, uri, new Range(new Position(3, 1), new Position(3, Integer.MAX_VALUE))));
            assertEquals(1, fixes(talk, uri, new Range(new Position(0, 0),
                    new Position(Integer.MAX_VALUE, Integer.MAX_VALUE))));
            talk.assertNothingFailed();
        }
    }

    private static long fixes(EditorTalk talk, String uri, Range range) throws Exception {
        return talk.answer(talk.server().getTextDocumentService()
                .codeAction(new CodeActionParams(document(uri), range, new CodeActionContext(List.of()))))
                .stream().map(each -> each.getRight()).flatMap(action -> action.getDiagnostics().stream()).distinct()
                        .count();
    }

    /** The protocol has three ends of a line. */
    @Test
    void everyEndOfALineCounts() throws Exception {
        try (EditorTalk talk = new EditorTalk(ApprovedRevisions.none())) {
            String uri = folder.resolve("wren.family").toUri().toString();
            for (String end : List.of("\n", "\r\n", "\r")) {
                talk.opens(uri, SOUND.replace("\n", end));
                Hover hover = talk.answer(talk.server().getTextDocumentService()
                        .hover(new HoverParams(document(uri), new Position(3, 20))));
                assertTrue(hover.getContents().getRight().getValue().startsWith("Lamp pwr"), hover::toString);
                assertEquals(new Range(new Position(3, 20), new Position(3, 23)), hover.getRange());
                assertEquals(new Range(new Position(1, 9), new Position(1, 12)),
                        talk.answer(talk.server().getTextDocumentService()
                        .definition(new DefinitionParams(document(uri), new Position(3, 20)))).getLeft().get(0).getRange());
                assertEquals(List.of(), talk.told("wren.family", codes -> true));
            }
            talk.assertNothingFailed();
        }
    }

    /** A colour stays in its line, and ends before what ends the line. */
    @Test
    void aCommentIsColouredLineByLine() throws Exception {
        try (EditorTalk talk = new EditorTalk(ApprovedRevisions.none())) {
            String uri = folder.resolve("wren.family").toUri().toString();
            for (String end : List.of("\n", "\r\n", "\r")) {
                talk.opens(uri, "/* a" + end + "bc */" + end + end);
                assertEquals(List.of(0, 0, 4, 5, 0, 1, 0, 5, 5, 0), talk.answer(talk.server().getTextDocumentService()
                        .semanticTokensFull(new SemanticTokensParams(document(uri)))).getData());
            }
            talk.assertNothingFailed();
        }
    }

    /** What is no file of this machine has no remarks and no answers, and disturbs nothing. */
    @Test
    void anAddressThatIsNoFileIsLeftAlone() throws Exception {
        try (EditorTalk talk = new EditorTalk(ApprovedRevisions.none())) {
            for (String uri : List.of("untitled:Untitled-1", "", "file:", "file:wren.family", "file:///",
                    "file://elsewhere/share/wren.family",
                    "https://example.org/wren.family", "file:///a?b", "file:///a#b", "::", "%", "file:///%00",
                    "wren.family", "git:/a/wren.family?x")) {
                talk.opens(uri, WRONG);
                assertNull(talk.answer(talk.server().getTextDocumentService()
                        .hover(new HoverParams(document(uri), new Position(1, 10)))), uri);
                talk.server().getTextDocumentService().didClose(new DidCloseTextDocumentParams(document(uri)));
            }
            talk.opens(folder.resolve("after.family").toUri().toString(), WRONG);
            assertEquals(List.of("duplicate-name"), talk.told("", codes -> true), "the first that is told at all");
            talk.assertNothingFailed();
        }
    }

    @Test
    void aChangeThatChangesNothingIsNoFailure() throws Exception {
        try (EditorTalk talk = new EditorTalk(ApprovedRevisions.none())) {
            String uri = folder.resolve("wren.family").toUri().toString();
            talk.opens(uri, SOUND);
            talk.server().getTextDocumentService()
                    .didChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(uri, 2), List.of()));
            assertEquals(1, talk.answer(talk.server().getTextDocumentService()
                    .definition(new DefinitionParams(document(uri), new Position(3, 20)))).getLeft().size());
            talk.assertNothingFailed();
        }
    }

    /** Not every editor escapes what an address can't hold. */
    @Test
    void aFileIsFoundHoweverItsAddressIsWritten() throws Exception {
        try (EditorTalk talk = new EditorTalk(ApprovedRevisions.none())) {
            for (String name : List.of("a b.family", "a%20c.family", "a[1]{2}^|.family", "100%.family", "\u00e4.family",
                    "%C3%B6.family")) {
                String uri = "file://" + folder.toUri().getRawPath() + name;
                talk.opens(uri, SOUND);
                assertNotNull(talk.answer(talk.server().getTextDocumentService()
                        .hover(new HoverParams(document(uri), new Position(3, 20)))), uri);
                talk.server().getTextDocumentService().didClose(new DidCloseTextDocumentParams(document(uri)));
            }
            talk.assertNothingFailed();
        }
    }
}
