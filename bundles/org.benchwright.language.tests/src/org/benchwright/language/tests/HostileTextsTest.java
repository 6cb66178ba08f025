package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.stream.Stream;

import org.benchwright.language.Checked;
import org.benchwright.language.CheckedFile;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.benchwright.language.internal.compile.PlanCompiler;
import org.benchwright.model.Procedure;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever a file holds, there are remarks and no exception, soon; and what has no errors compiles. */
class HostileTextsTest {

    private static final Path DEMO = Path.of("../../procedures");
    private static final Duration SOON = Duration.ofSeconds(1);
    private static final int MUTATIONS = 300;

    @TempDir
    Path folder;

    private static final Logger LOG = Logger.getLogger("org.benchwright.language");
    private static final List<String> LOGGED = new CopyOnWriteArrayList<>();
    private static final Handler LISTENER = new Handler() {
        @Override
        public void publish(LogRecord entry) {
            LOGGED.add(entry.getMessage());
        }

        @Override
        public void flush() {
            // Nothing is held back.
        }

        @Override
        public void close() {
            // Nothing is held open.
        }
    };

    @AfterAll
    static void nothingWasLogged() {
        LOG.removeHandler(LISTENER);
        assertEquals(List.of(), LOGGED);
    }

    @BeforeAll
    static void warmUp() {
        LOG.addHandler(LISTENER);
        // The first text pays for loading the classes.
        Bench.check(Bench.FAMILY, Bench.PROCEDURE);
    }

    /** Time that this thread worked, so that a busy machine does not count. */
    private static long processorTime() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static List<Remark> check(String text) {
        return Bench.LANGUAGE.checkTexts(List.of(new SourceText(Bench.PROCEDURE_FILE, text))).remarks();
    }

    @Test
    void mutatedTextsNeverFail() throws IOException {
        List<SourceText> demo = demo();
        Random random = new Random(4711);
        int sound = 0;
        for (int i = 0; i < MUTATIONS; i++) {
            int which = random.nextInt(demo.size());
            List<SourceText> texts = new ArrayList<>(demo);
            SourceText mutated = new SourceText(demo.get(which).path(), mutate(demo.get(which).text(), random));
            texts.set(which, mutated);
            long begin = processorTime();
            Checked checked = Bench.LANGUAGE.checkTexts(relevant(texts, mutated));
            Duration took = Duration.ofNanos(processorTime() - begin);
            int number = i;
            assertTrue(took.compareTo(SOON) < 0, () -> "mutation " + number + " took " + took);
            assertEquals(List.of(), checked.remarks().stream().filter(r -> r.code() == RemarkCode.INSPECTION_FAILED)
                    .toList());
            sound += compiled(checked);
        }
        int reached = sound;
        assertTrue(reached > 5, () -> "only " + reached + " mutations were sound; nothing was compiled then");
    }

    /** The families that all see, and the mutated text. */
    private static List<SourceText> relevant(List<SourceText> texts, SourceText mutated) {
        return texts.stream().filter(text -> text == mutated || text.path().toString().endsWith(".family")).toList();
    }

    private static int compiled(Checked checked) {
        if (checked.hasErrors()) {
            return 0;
        }
        int count = 0;
        for (CheckedFile file : checked.files()) {
            for (Procedure procedure : file.content().getProcedures()) {
                PlanCompiler.compile(procedure);
                count++;
            }
        }
        return count;
    }

    private static List<SourceText> demo() throws IOException {
        try (Stream<Path> files = Files.list(DEMO)) {
            List<SourceText> texts = new ArrayList<>();
            for (Path file : files.filter(f -> f.toString().endsWith(".family") || f.toString().endsWith(".procedure"))
                    .sorted().toList()) {
                texts.add(new SourceText(file, Files.readString(file)));
            }
            return texts;
        }
    }

    private static String mutate(String text, Random random) {
        int at = random.nextInt(text.length());
        int length = Math.min(text.length() - at, 1 + random.nextInt(30));
        return switch (random.nextInt(7)) {
            case 0 -> text.substring(0, at);
            case 1 -> text.substring(0, at) + text.substring(at + length);
            case 2 -> text.substring(0, at) + text.substring(at, at + length) + text.substring(at);
            case 3 -> text.substring(0, at) + (char) random.nextInt(0x2100) + text.substring(at + 1);
            case 4 -> text.substring(0, at) + "{}\"/*,..%()".charAt(random.nextInt(11)) + text.substring(at);
            case 5 -> withoutAWord(text, random);
            default -> withAnotherWord(text, random);
        };
    }

    private static String withoutAWord(String text, Random random) {
        String[] words = text.split("(?<=\\s)");
        words[random.nextInt(words.length)] = "";
        return String.join("", words);
    }

    private static String withAnotherWord(String text, Random random) {
        String[] words = text.split("(?<=\\s)");
        words[random.nextInt(words.length)] = words[random.nextInt(words.length)];
        return String.join("", words);
    }

    @Test
    void everyBeginningOfATextIsBorne() {
        String text = Bench.PROCEDURE.substring(0, 1200);
        for (int i = 0; i < text.length(); i += 7) {
            String beginning = text.substring(0, i);
            assertEquals(beginning.isBlank(), check(beginning).stream()
                    .noneMatch(remark -> remark.code() == RemarkCode.SYNTAX), beginning);
        }
    }

    @Test
    void randomBytesAreBorne() throws IOException {
        Random random = new Random(31);
        for (int i = 0; i < 20; i++) {
            byte[] bytes = new byte[20_000];
            random.nextBytes(bytes);
            Path file = Files.write(folder.resolve("random.procedure"), bytes);
            assertTrue(Bench.LANGUAGE.check(List.of(file)).hasErrors());
        }
    }

    private static List<RemarkCode> codes(String text) {
        return Bench.check(Bench.FAMILY, text).remarks().stream().map(Remark::code).toList();
    }

    private static String nested(int depth) {
        return Bench.PROCEDURE.replace("judge shown - applied", "judge " + "(".repeat(depth) + "shown" + ")".repeat(depth));
    }

    private static String sum(int terms) {
        return Bench.PROCEDURE.replace("judge shown - applied", "judge shown" + " - applied".repeat(terms));
    }

    private static String alternatives(int times) {
        return Bench.PROCEDURE.replace("when stopped go to read_log",
                "when stopped " + "go to read_log, at most 1, or ".repeat(times) + "conclude rejected \"It stopped.\"");
    }

    @Test
    void nestingWithoutEndIsARemark() {
        for (String deep : List.of(nested(200_000), nested(51), sum(100_000), sum(501), alternatives(60_000),
                alternatives(201))) {
            assertEquals(List.of(RemarkCode.NESTED_TOO_DEEP), codes(deep));
        }
        assertEquals(List.of(), codes(nested(50)));
        assertEquals(List.of(), codes(sum(500)));
        assertEquals(List.of(), codes(alternatives(199)));
    }

    @Test
    void remarksWithoutEndAreCutShort() {
        List<Remark> remarks = check("family a \"A\" {} ".repeat(1000));
        assertEquals(201, remarks.size());
        assertEquals("800 more remarks are not shown; mend these first.", remarks.get(200).words());
    }

    @Test
    void familiesThatAreLikeEachOtherInACircleAreBorne() {
        String circle = "family a \"A\" like c {} family b \"B\" like a {} family c \"C\" like b { lamp x red \"X\" } family d \"D\" like d {}"
                + "family e \"E\" like a { mode m shows x steady }";
        List<RemarkCode> codes = check(circle).stream().map(Remark::code).toList();
        assertEquals(4, codes.stream().filter(code -> code == RemarkCode.CYCLIC_LIKE).count());
        assertTrue(codes.contains(RemarkCode.UNKNOWN_MODE));
    }

    @Test
    void aStepThatGoesToItselfIsBorne() {
        String self = Bench.PROCEDURE.replace("conclude rejected \"Stopped by itself.\"", "go to log");
        assertTrue(Bench.check(Bench.FAMILY, self).remarks().stream()
                .anyMatch(remark -> remark.code() == RemarkCode.ENDLESS_REPEAT));
    }

    @Test
    void manyStepsAreCheckedSoon() {
        StringBuilder steps = new StringBuilder();
        for (int i = 0; i < 2000; i++) {
            steps.append("step s").append(i).append(" \"Step\" { confirm \"c\" or go to s").append(i)
                    .append(", at most 2, or go to read_log }\n");
        }
        String text = Bench.PROCEDURE.replace("step fit \"Fit", steps + "step fit \"Fit");
        long begin = processorTime();
        assertEquals(List.of(), Bench.check(Bench.FAMILY, text).remarks());
        Duration took = Duration.ofNanos(processorTime() - begin);
        assertTrue(took.compareTo(Duration.ofSeconds(10)) < 0, took::toString);
    }
}
