package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.Map;
import java.util.Optional;

import org.benchwright.cli.BenchCommandLine;
import org.benchwright.cli.Surroundings;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.SignerKey;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The self-check on a demo of one rehearsal, which comes to its end or does not. */
class SelfCheckTest extends OnABench {

    private int status;

    @BeforeEach
    void demo() throws Exception {
        Files.createDirectories(folder.resolve("demo").resolve("answers"));
        Files.copy(folder.resolve("plate.jpg"), folder.resolve("demo").resolve("answers").resolve("plate.jpg"));
    }

    private String sheet(String verdict) throws Exception {
        Files.writeString(folder.resolve("demo").resolve("answers").resolve("one.answers"),
                "# For a rehearsal of c16.procedure on C16-004711.\n# Would-be verdict: " + verdict + ".\n" + SampleProcedure.GOOD.replaceAll("(?m)^(power|lamps.supply.off) = .*\\R", ""));
        return run(Optional.of(folder.resolve("demo")));
    }

    private String run(Optional<Path> demo) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Surroundings around = new Surroundings(InputStream.nullInputStream(), out, new ByteArrayOutputStream(), false, Map.of(), folder, demo,
                bench.clocks(), ZoneOffset.UTC, "0.1.0");
        status = new BenchCommandLine(around, SampleProcedure.SOURCE).run("self-check", "--ledger", folder.resolve("own").resolve("x").toString());
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void aCopyThatWorksSignsASheetThatSaysSo() throws Exception {
        String sheet = sheet("accepted");
        assertEquals(0, status, sheet);
        assertTrue(sheet.contains("holds  rehearsal one.answers comes to the end that its head names\n"), sheet);
        assertTrue(sheet.contains("All 13 hold.\n"), sheet);
        String text = sheet.substring(0, sheet.indexOf("key "));
        byte[] signature = Base64.getDecoder().decode(sheet.substring(sheet.indexOf("signature ") + 10).strip());
        SignerKey key = BenchKeyStore.publicKey(folder.resolve("own")).orElseThrow();
        assertTrue(key.verifies(text.getBytes(StandardCharsets.UTF_8), signature));
        assertFalse(key.verifies(text.replace("holds", "HOLDS").getBytes(StandardCharsets.UTF_8), signature));
        assertFalse(Files.exists(folder.resolve("own").resolve("x")), "nothing is put into the bench's ledger");
    }

    @Test
    void aRehearsalThatComesToAnotherEndIsSaidAndTheStatusTellsIt() throws Exception {
        String sheet = sheet("rejected");
        assertEquals(1, status);
        assertTrue(sheet.contains("FAILS  rehearsal one.answers"), sheet);
        assertTrue(sheet.contains("Only 12 of 13 hold. Do not use this copy.\n"), sheet);
    }

    @Test
    void aCopyWithoutItsDemoIsNotCalledSound() {
        String sheet = run(Optional.empty());
        assertEquals(1, status);
        assertTrue(sheet.contains("FAILS  the demo rehearsals: there are none with this copy"), sheet);
    }
}
