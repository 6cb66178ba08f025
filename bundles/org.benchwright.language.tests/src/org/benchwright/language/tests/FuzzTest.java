package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.function.Function;

import org.benchwright.language.Checked;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Thousands of texts that nobody would write: from the grammar, and from bytes. None makes the language fail or takes a
 * second; what has no
 * errors has plans that the engine begins, and what fits the grammar can be laid out: a second time changes nothing, and no
 * word and no plan is another. More of them by {@code releng/fuzz}.
 */
class FuzzTest {

    private static final long SEED = Long.getLong("benchwright.fuzz.seed", 20_260_401);
    private static final int COUNT = Integer.getInteger("benchwright.fuzz.count", 5_000);
    private static final Duration SOON = Duration.ofSeconds(1);

    @BeforeAll
    static void warmUp() {
        Bench.check(Bench.FAMILY, Bench.PROCEDURE);
    }

    @Test
    void textsOfTheGrammar() {
        int whole = all(COUNT * 3 / 5, 0, RandomTexts::next);
        assertTrue(whole > COUNT / 10, () -> "only " + whole + " fitted the grammar");
    }

    @Test
    void bytesChangedInASoundText() {
        byte[] sound = (Bench.FAMILY + Bench.PROCEDURE).substring(0, 3_000).getBytes(StandardCharsets.UTF_8);
        all(COUNT - COUNT * 3 / 5, 1, random -> {
            byte[] bytes = sound.clone();
            for (int i = 0; i <= random.nextInt(8); i++) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            int from = random.nextInt(bytes.length);
            return new String(bytes, from, random.nextInt(bytes.length - from), StandardCharsets.UTF_8);
        });
    }

    /** @return how many fitted the grammar */
    private static int all(int count, long series, Function<Random, String> texts) {
        int whole = 0;
        for (int i = 0; i < count; i++) {
            long seed = SEED + 2L * i + series;
            String text = texts.apply(new Random(seed));
            try {
                whole += one(text) ? 1 : 0;
            } catch (RuntimeException | StackOverflowError | AssertionError failed) {
                throw new AssertionError("seed " + seed + ": " + text, failed);
            }
        }
        return whole;
    }

    private static boolean one(String text) {
        long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        SourceText own = new SourceText(Bench.PROCEDURE_FILE, text);
        Checked checked = Bench.LANGUAGE.checkTexts(List.of(own));
        Duration took = Duration.ofNanos(ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begin);
        assertTrue(took.compareTo(SOON) < 0, () -> took + " for " + text);
        assertEquals(List.of(), checked.remarks().stream().filter(remark -> remark.code() == RemarkCode.INSPECTION_FAILED)
                .toList(), text);
        return Bench.LANGUAGE.format(own).map(once -> {
            SourceText laidOut = new SourceText(Bench.PROCEDURE_FILE, once);
            assertEquals(once, Bench.LANGUAGE.format(laidOut).orElseThrow(), text);
            assertEquals(LayoutTest.words(text), LayoutTest.words(once), text);
            if (!checked.hasErrors()) {
                assertEquals(SoundPlans.of(checked), SoundPlans.of(Bench.LANGUAGE.checkTexts(List.of(laidOut))), text);
            }
            return true;
        }).orElse(false);
    }
}
