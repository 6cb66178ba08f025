package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

import org.benchwright.core.Cancellation;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.Remark;
import org.benchwright.language.SourceText;
import org.benchwright.language.editing.FolderSession;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** However a folder came to be what it is, the answers are those of one that was opened so. */
class ManyEditsTest {

    private static final List<String> PIECES = List.of("", "", "x", " ", "\n", "}", "{", "pwr", "lark", "lark_base", "run", "mark on \"On\"",
            "family lark \"L\" {}", "like lark_base", "steady");

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void editsInThreeFilesLeaveTheAnswersOfAFreshFolder(long seed, @TempDir Path folder) throws IOException {
        Random random = new Random(seed);
        Map<Path, String> texts = new TreeMap<>(Map.of(folder.resolve("base.family"), Bench.FAMILY.substring(0, Bench.FAMILY.indexOf("family lark \"")),
                folder.resolve("lark.family"), Bench.FAMILY.substring(Bench.FAMILY.indexOf("family lark \"")),
                folder.resolve("lark.procedure"), Bench.PROCEDURE));
        for (Map.Entry<Path, String> text : texts.entrySet()) {
            Files.writeString(text.getKey(), text.getValue());
        }
        FolderSession session = FolderSession.open(folder);
        LanguageServices fresh = LanguageServices.create();
        for (int i = 0; i < 25; i++) {
            Path file = List.copyOf(texts.keySet()).get(random.nextInt(3));
            texts.put(file, edited(texts.get(file), random));
            session.change(file, texts.get(file));
            if (random.nextInt(3) > 0) {
                Map<Path, List<Remark>> now = session.remarks(Cancellation.never());
                List<Remark> expected = fresh.checkTexts(texts.entrySet().stream().map(e -> new SourceText(e.getKey(), e.getValue())).toList())
                        .remarks();
                assertEquals(expected, now.values().stream().flatMap(List::stream).sorted().toList(), "after edit " + i + " of seed " + seed);
            }
        }
    }

    /** Mostly small, sometimes the declaration of a family under another name, so that other files lose and find it again. */
    private static String edited(String text, Random random) {
        if (random.nextInt(4) == 0) {
            return text.contains("family lark_base") ? text.replace("family lark_base", "family lark_basic")
                    : text.replace("family lark_basic", "family lark_base");
        }
        int at = random.nextInt(text.length() + 1);
        int end = Math.min(text.length(), at + random.nextInt(4));
        return text.substring(0, at) + PIECES.get(random.nextInt(PIECES.size())) + text.substring(end);
    }
}
