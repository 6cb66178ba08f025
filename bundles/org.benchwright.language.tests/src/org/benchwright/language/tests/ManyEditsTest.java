package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.benchwright.core.Cancellation;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.FolderSession;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * However a folder came to be what it is, the answers are those of one that was opened so: remarks, colours, contents, links
 * and folds.
 */
class ManyEditsTest {

    /** Where a text can't be read, most of what is compared below would be empty. */
    @Test
    void allTextsCanBeReadBeforeTheyAreEdited(@TempDir Path parent) {
        Map<Path, String> texts = EditedFolder.texts(parent.resolve("shop"), 2);
        texts.putAll(EditedFolder.imported(parent.resolve("common")));
        Set<RemarkCode> found = Bench.LANGUAGE.checkTexts(texts.entrySet().stream()
                .map(e -> new SourceText(e.getKey(), e.getValue())).toList())
                .remarks().stream().map(Remark::code).collect(Collectors.toSet());
        assertEquals(Set.of(RemarkCode.ENDLESS_REPEAT, RemarkCode.UNUSED_HAZARD), found);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void editsInThreeFilesLeaveTheRemarksOfAFreshCheck(long seed, @TempDir Path folder) throws IOException {
        RandomEdits edits = new RandomEdits(seed);
        Map<Path, String> texts = new TreeMap<>(Map.of(folder.resolve("base.family"), EditedFolder.BASE,
                folder.resolve("lark.family"), EditedFolder.LARK,
                folder.resolve("lark.procedure"), Bench.PROCEDURE));
        write(texts);
        FolderSession session = FolderSession.open(folder);
        LanguageServices fresh = LanguageServices.create();
        for (int i = 0; i < 25; i++) {
            Path file = edits.oneOf(List.copyOf(texts.keySet()));
            texts.put(file, edits.anywhere(texts.get(file)));
            session.change(file, texts.get(file));
            if (i % 3 > 0) {
                Map<Path, List<Remark>> now = session.remarks(Cancellation.never());
                List<Remark> expected = fresh.checkTexts(texts.entrySet().stream()
                        .map(e -> new SourceText(e.getKey(), e.getValue())).toList())
                        .remarks();
                assertEquals(expected, now.values().stream().flatMap(List::stream).sorted()
                        .toList(), "after edit " + i + " of seed " + seed);
            }
        }
    }

    /**
     * Long texts, families and shared stages that others build on, another folder that is imported; mostly changes within
     * steps.
     */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void editsInAFolderLeaveTheAnswersOfAFreshSession(long seed, @TempDir Path folder) throws IOException {
        check(seed, folder, 60);
    }

    static void check(long seed, Path parent, int count) throws IOException {
        RandomEdits edits = new RandomEdits(seed);
        Path folder = Files.createDirectories(parent.resolve("shop"));
        Map<Path, String> texts = EditedFolder.texts(folder, 60);
        Map<Path, String> imported = EditedFolder.imported(Files.createDirectories(parent.resolve("common")));
        write(imported);
        write(texts);
        FolderSession session = FolderSession.open(folder);
        for (int i = 0; i < count; i++) {
            if (edits.sometimes()) {
                Path file = edits.oneOf(List.copyOf(imported.keySet()));
                imported.put(file, edits.anywhere(imported.get(file)) + " ".repeat(i));
                write(imported);
                session.refresh();
            }
            Path file = edits.oneOf(List.copyOf(texts.keySet()));
            for (String text : edits.typed(texts.get(file))) {
                texts.put(file, text);
                session.change(file, text);
                if (edits.sometimes()) {
                    session.analyse(file, Cancellation.never());
                }
            }
            compare(session, texts, "after edit " + i + " of seed " + seed + " in " + file.getFileName());
        }
    }

    private static void compare(FolderSession session, Map<Path, String> texts, String when) {
        Path folder = session.folder();
        FolderSession fresh = FolderSession.open(folder);
        texts.forEach(fresh::change);
        for (Path file : texts.keySet()) {
            Analysis expected = fresh.analyse(file, Cancellation.never()).orElseThrow();
            Analysis now = session.analyse(file, Cancellation.never()).orElseThrow();
            String where = when + ", seen in " + file.getFileName();
            assertEquals(expected.text(), now.text(), where);
            assertEquals(expected.remarks(), now.remarks(), where);
            assertEquals(expected.contents(), now.contents(), where);
            assertEquals(expected.folds(), now.folds(), where);
            assertEquals(expected.links(), now.links(), where);
            assertEquals(expected.styles(), now.styles(), where);
            assertEquals(expected, now, where);
        }
    }

    private static void write(Map<Path, String> texts) throws IOException {
        for (Map.Entry<Path, String> text : texts.entrySet()) {
            Files.writeString(text.getKey(), text.getValue());
        }
    }
}
