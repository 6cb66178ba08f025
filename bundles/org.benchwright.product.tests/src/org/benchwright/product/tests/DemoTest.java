package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The four scripted rehearsals of the demo in the product, with the exit statuses that scripts rely on. */
class DemoTest {

    private static final Path PROCEDURES = Path.of("..", "..", "procedures").toAbsolutePath().normalize();

    @TempDir
    private Path folder;

    @Test
    void eachRehearsalEndsWithItsStatusAndTheLedgerIsSound() throws Exception {
        assertEnds("accepted", 0, "rehearsal: would be accepted");
        assertEnds("rejected-at-power-up", 3, "rehearsal: would be rejected");
        assertEnds("dropped-out-of-soak", 3, "rehearsal: would be rejected");
        assertEnds("bench-supply-bad", 4, "rehearsal: would be undecided");
        Product.Ended verified = run("verify", ledger());
        assertEquals(0, verified.status(), verified.out() + verified.err());
        assertTrue(verified.out().contains("4 of 4 tests derived again, no fault"), verified.out());
        Product.Ended units = run("units", "--ledger", ledger());
        assertEquals(0, units.status(), units.err());
    }

    @Test
    void theDemoIsCheckedWithoutAnError() throws Exception {
        Product.Ended checked = run("check", PROCEDURES.toString());
        assertEquals(0, checked.status(), checked.out() + checked.err());
    }

    @Test
    void theInstalledCopyChecksItself() throws Exception {
        Product.Ended ended = run("self-check", "--ledger", ledger(), "--out", folder.resolve("sheet.txt").toString());
        assertEquals(0, ended.status(), ended.out() + ended.err());
        assertTrue(ended.out().startsWith("benchwright.self-check/1\n"), ended.out());
        assertTrue(ended.out().contains("holds  rehearsal accepted.answers"), ended.out());
        assertTrue(ended.out().contains("holds  the ledger of these rehearsals"), ended.out());
    }

    private void assertEnds(String answers, int status, String lastLine) throws Exception {
        Product.Ended ended = run("test", PROCEDURES.resolve("tarn-c16-acceptance.procedure").toString(), "--serial", "C16-004711",
                "--answers", PROCEDURES.resolve("answers").resolve(answers + ".answers").toString(), "--ledger", ledger(), "--rehearse");
        assertEquals(status, ended.status(), ended.err());
        String[] lines = ended.out().strip().split("\\R");
        assertTrue(lines[lines.length - 1].matches(lastLine + " \\| .+ \\| T-[0-9A-Z]{5}-[0-9A-Z]{5}"),
                () -> Arrays.toString(lines));
    }

    private Product.Ended run(String... arguments) throws Exception {
        return new Product(folder).run(arguments);
    }

    private String ledger() {
        return folder.resolve("ledger").resolve("bench.ledger").toString();
    }
}
