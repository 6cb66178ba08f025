package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.benchwright.ledger.BenchKeyStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The checker for strangers, run as a stranger would: one source file, a JDK, and nothing of this program. */
class CheckProofTest {

    private static final int STRIDE = 23;

    @TempDir
    Path folder;

    private List<String> samples;
    private String fingerprint;

    /** What the checker said. */
    record Outcome(int status, List<String> lines) {
    }

    @BeforeEach
    void build() throws Exception {
        samples = Samples.of(SampleLedger.build(folder, 4, 10));
        fingerprint = BenchKeyStore.publicKey(folder).orElseThrow().fingerprint().hex();
    }

    private static Path checker() {
        for (Path place = Path.of("").toAbsolutePath(); place != null; place = place.getParent()) {
            Path found = place.resolve("docs").resolve("CheckProof.java");
            if (Files.exists(found)) {
                return found;
            }
        }
        throw new IllegalStateException("docs/CheckProof.java is not above " + Path.of("").toAbsolutePath());
    }

    private Outcome check(List<String> texts, String... more) throws Exception {
        return check(folder, texts, more);
    }

    /** What the checker says of files with these texts, which are put into {@code folder} as {@code 0.json} and so on. */
    static Outcome check(Path folder, List<String> texts, String... more) throws Exception {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1", checker().toString()));
        for (int i = 0; i < texts.size(); i++) {
            command.add(Files.writeString(folder.resolve(i + ".json"), texts.get(i)).toString());
        }
        command.addAll(List.of(more));
        Path out = folder.resolve("out.txt");
        Process process = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(out.toFile()).start();
        assertTrue(process.waitFor(5, TimeUnit.MINUTES), "the checker ends");
        return new Outcome(process.exitValue(), Files.readAllLines(out, StandardCharsets.UTF_8));
    }

    @Test
    void realProofsHold() throws Exception {
        Outcome outcome = check(samples, "--key", fingerprint);
        assertEquals(0, outcome.status(), outcome.lines().toString());
        assertEquals(samples.size(), outcome.lines().stream().filter(line -> line.endsWith(": holds")).count());
        assertTrue(outcome.lines().contains("  the 37 events of the older are the first of the 39 of the newer, unchanged"),
                outcome.lines().toString());
        assertTrue(outcome.lines().contains("  with all 4 events before it"));
    }

    @Test
    void anotherKeyIsToldFrom() throws Exception {
        Outcome outcome = check(samples, "--key", "0".repeat(64));
        assertEquals(1, outcome.status());
        assertFalse(outcome.lines().stream().anyMatch(line -> line.endsWith(": holds")), outcome.lines().toString());
    }

    @Test
    void noChangedFileHolds() throws Exception {
        List<String> changed = new ArrayList<>();
        for (String text : samples) {
            for (int i = 0; i < text.length(); i += STRIDE) {
                if (Character.isLetterOrDigit(text.charAt(i))) {
                    changed.add(Samples.changed(text, i));
                }
            }
        }
        assertTrue(changed.size() > 200, changed.size() + " files");
        Outcome outcome = check(changed);
        assertFalse(outcome.lines().stream().anyMatch(line -> line.endsWith(": holds")), outcome.lines().toString());
        assertEquals(changed.size(), outcome.lines().stream().filter(line -> line.contains(".json: ")).count(), "it speaks of every file");
    }

    @Test
    void noOtherFormOfANumberAHashOrAnInstantHolds() throws Exception {
        List<String> changed = new ArrayList<>();
        for (String text : samples) {
            for (String[] form : Samples.OTHER_FORMS) {
                if (!text.replaceFirst(form[0], form[1]).equals(text)) {
                    changed.add(text.replaceFirst(form[0], form[1]));
                }
            }
        }
        Outcome outcome = check(changed);
        assertFalse(outcome.lines().stream().anyMatch(line -> line.endsWith(": holds")), outcome.lines().toString());
        assertEquals(changed.size(), outcome.lines().stream().filter(line -> line.contains(".json: ")).count(), "it speaks of every file");
    }

    @Test
    void exchangedPartsDoNotHoldAndWhatIsNoProofIsSaidToBeNone() throws Exception {
        Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
        List<String> others = Samples.of(SampleLedger.build(elsewhere, 4, 12));
        String swapped = samples.get(3).substring(0, samples.get(3).indexOf("\"path\"")) + others.get(3).substring(others.get(3).indexOf("\"path\""));
        Outcome outcome = check(List.of(swapped, "{}", "no JSON", samples.get(0).replace("}", "")));
        assertEquals(2, outcome.status());
        assertEquals(1, outcome.lines().stream().filter(line -> line.contains("DOES NOT HOLD")).count(), outcome.lines().toString());
        assertEquals(3, outcome.lines().stream().filter(line -> line.contains("can't be read")).count(), outcome.lines().toString());
    }
}
