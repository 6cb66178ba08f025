package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.function.Function;

import org.benchwright.core.Cancellation;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.FolderSession;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * All that an editor asks, of texts that nobody would write: from the grammar, and from bytes. Nothing fails, and nothing
 * takes a second. More
 * of them by {@code releng/fuzz}.
 */
class EditorFuzzTest {

    private static final long SEED = Long.getLong("benchwright.fuzz.seed", 20_260_401);
    /** Each is asked about a dozen things, at two places. */
    private static final int COUNT = Integer.getInteger("benchwright.fuzz.count", 5_000) / 100;
    private static final Duration SOON = Duration.ofSeconds(1);
    /** Texts before which nothing is timed: the virtual machine compiles itself first. */
    private static final int WARM_UP = 12;

    @TempDir
    Path folder;
    private FolderSession session;
    private Duration limit = Duration.ofMinutes(1);
    private Path file;

    @BeforeEach
    void open() {
        session = FolderSession.open(folder);
        file = folder.resolve("lark.procedure");
        session.change(folder.resolve("lark.family"), Bench.FAMILY);
        for (int i = 0; i < WARM_UP; i++) {
            Random random = new Random(SEED - i);
            String text = i % 2 == 0 ? Bench.PROCEDURE : RandomTexts.next(random);
            session.change(file, text);
            ask(random, text);
        }
        limit = SOON;
    }

    @Test
    void textsOfTheGrammar() {
        all(0, RandomTexts::next);
    }

    @Test
    void bytesChangedInASoundText() {
        byte[] sound = Bench.PROCEDURE.getBytes(StandardCharsets.UTF_8);
        all(1, random -> {
            byte[] bytes = sound.clone();
            for (int i = 0; i <= random.nextInt(6); i++) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(128);
            }
            return new String(bytes, 0, bytes.length - random.nextInt(2) * random.nextInt(bytes.length),
                    StandardCharsets.UTF_8);
        });
    }

    /** Found by seed 1392: a character that fits nowhere stands where a name should. */
    @Test
    void anItemToLoadWithoutAName() {
        for (String item : List.of("#", ",", "\u0001", "5", "\"x\"", "load", "")) {
            String text = Bench.PROCEDURE.replace("load only bench_program", "load only " + item);
            session.change(file, text);
            ask(new Random(1), text);
            session.hover(file, text.indexOf("load only") + 10);
        }
    }

    private void all(long series, Function<Random, String> texts) {
        for (int i = 0; i < COUNT; i++) {
            long seed = SEED + 2L * i + series;
            Random random = new Random(seed);
            String text = texts.apply(random);
            try {
                session.change(file, text);
                ask(random, text);
            } catch (RuntimeException | StackOverflowError | AssertionError failed) {
                throw new AssertionError("seed " + seed + ": " + text, failed);
            }
        }
    }

    private void ask(Random random, String text) {
        Analysis analysis = soon("analyse", () -> session.analyse(file, Cancellation.never()).orElseThrow());
        soon("compiled", () -> session.compiled(file, Cancellation.never()));
        soon("format", () -> session.format(file));
        for (int i = 0; i < 2; i++) {
            int at = random.nextInt(text.length() + 1);
            soon("proposals", () -> session.proposals(file, at));
            soon("hover", () -> session.hover(file, at));
            soon("declaration", () -> session.declaration(file, at));
            soon("references", () -> session.references(file, at));
            soon("rename", () -> session.rename(file, at, "other"));
        }
        List<Remark> remarks = analysis.remarks();
        if (!remarks.isEmpty()) {
            Remark remark = remarks.get(random.nextInt(remarks.size()));
            soon("fixes", () -> session.fixes(remark));
        }
        assertTrue(analysis.folds().stream().allMatch(fold -> fold.offset() >= 0
                && fold.offset() + fold.length() <= text.length()), "folds inside the text");
    }

    private interface Asking<T> {
        T ask();
    }

    private <T> T soon(String what, Asking<T> asking) {
        long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        T answer = asking.ask();
        Duration took = Duration.ofNanos(ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begin);
        assertTrue(took.compareTo(limit) < 0, () -> what + " took " + took);
        return answer;
    }
}
