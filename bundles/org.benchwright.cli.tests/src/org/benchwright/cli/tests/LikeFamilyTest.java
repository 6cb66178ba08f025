package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.tests.Approved;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo's procedure for the C16, carried out on a unit of a family like it: a file beside it that says what is different. */
class LikeFamilyTest {

    private static final Path DEMO = Path.of("../../procedures").toAbsolutePath().normalize();
    private static final String RIGHT = Approved.PASSWORD + "\n";
    private static final String PROCEDURE = "tarn-c16-acceptance.procedure";
    private static final String LIKE_C16 = """
            family tarn_c32 "Tarn C32 modular controller" like tarn_c16 {
                serial "C32-######"
                lamps out 0 .. 31 yellow "Output"
            }
            """;

    @TempDir
    private Path folder;
    private Path procedure;
    private CommandRunner bench;

    @BeforeEach
    void copyTheDemo() throws IOException {
        try (Stream<Path> files = Files.list(DEMO)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        Files.writeString(folder.resolve("tarn-c32.family"), LIKE_C16);
        procedure = folder.resolve(PROCEDURE);
        bench = new CommandRunner(folder).with(new ProcedureReader(LanguageServices.create())::read);
    }

    private CommandRunner.Ended bench(String typed, String command, String... words) {
        List<String> all = Stream.of(Stream.of(command, procedure.toString()), Stream.of(words), Stream.of("--ledger", bench.ledger().toString()))
                .flatMap(each -> each).toList();
        return bench.typing(typed, all.toArray(String[]::new));
    }

    private CommandRunner.Ended rehearse(String serial, String... more) {
        List<String> words = Stream.concat(Stream.of("--serial", serial, "--answers", DEMO.resolve("answers/accepted.answers").toString(), "--rehearse"),
                Stream.of(more)).toList();
        return bench("", "test", words.toArray(String[]::new));
    }

    private void left(String serial) {
        CommandRunner.Ended test = bench("", "test", "--serial", serial);
        assertEquals(5, test.status(), test.out() + test.err());
    }

    private void draft(String serial) {
        CommandRunner.Ended test = bench("", "test", "--serial", serial);
        assertEquals(1, test.status(), test.out() + test.err());
        assertTrue(test.err().contains("is a draft: nobody has approved it."), test.err());
    }

    @Test
    void aUnitOfAFamilyLikeItIsRehearsedBySerialNumberAndVerified() {
        CommandRunner.Ended like = rehearse("C32-000815");
        like.done();
        assertTrue(like.lastLine().startsWith("rehearsal: would be accepted | "), like.lastLine());
        rehearse("C16-004711").done();
        CommandRunner.Ended sheets = bench.run("verify", bench.ledger().toString());
        sheets.done();
        assertTrue(sheets.out().contains("of 2 tests,"), sheets.out());
    }

    @Test
    void aNumberOfNoneIsRefusedAsBeforeAndANamedFamilyIsHeldToItsNumbers() {
        CommandRunner.Ended none = rehearse("P24-000001");
        assertEquals(1, none.status());
        assertTrue(none.err().contains("C16-######"), none.err());
        CommandRunner.Ended other = rehearse("C16-004711", "--family", "tarn_c32");
        assertEquals(1, other.status());
        assertTrue(other.err().contains("C32-######"), other.err());
        CommandRunner.Ended unlike = rehearse("P24-000001", "--family", "tarn_p24");
        assertEquals(1, unlike.status());
        assertTrue(unlike.err().contains("'tarn_p24' is none of them. They are: tarn_c16, tarn_c32."), unlike.err());
    }

    @Test
    void eachFamilyHasAnApprovalOfItsOwn() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(bench.ledger())) {
            Approved.people(ledger, bench.time().benchTime());
        }
        bench(RIGHT, "prepare", "--by", "RB").done();
        bench(RIGHT, "approve", "--by", "KM").done();
        left("C16-004711");
        draft("C32-000815");

        bench(RIGHT, "prepare", "--family", "tarn_c32", "--by", "RB").done();
        draft("C32-000815");
        CommandRunner.Ended approved = bench(RIGHT, "approve", "--family", "tarn_c32", "--by", "KM");
        approved.done();
        assertTrue(approved.said().contains("no revision of it is approved yet"), approved.out());
        left("C32-000815");
        left("C16-004712");
        String all = bench.run("revisions", "--ledger", bench.ledger().toString()).said();
        assertTrue(all.contains(", for tarn_c16, revision ") && all.contains(", for tarn_c32, revision "), all);
        String ofOne = bench("", "revisions", "--family", "tarn_c32").out();
        assertTrue(ofOne.contains("for tarn_c32") && !ofOne.contains("for tarn_c16"), ofOne);

        bench(RIGHT, "withdraw", "--family", "tarn_c32", "--by", "KM", "--reason", "lamps are another colour").done();
        assertEquals(1, bench("", "test", "--serial", "C32-000816").status());
        left("C16-004713");
        bench.run("verify", bench.ledger().toString()).done();
    }
}
