package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.RegisteredPerson;
import org.benchwright.workshop.Registrar;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

/** What is refused by the register of people leaves nothing behind, neither in the ledger nor beside it. */
class RegistrarTest {

    private static final int ROUNDS = 10;

    @TempDir
    private Path folder;
    private final MovedTime time = new MovedTime();
    private BenchLedger ledger;
    private Registrar registrar;

    @BeforeEach
    void open() throws Exception {
        ledger = BenchLedger.open(folder.resolve("bench.ledger"));
        registrar = ledger.registrar(time.benchTime(), ROUNDS);
    }

    @AfterEach
    void close() throws Exception {
        ledger.close();
    }

    private long keyFiles() throws IOException {
        if (!Files.exists(folder.resolve("people"))) {
            return 0;
        }
        try (Stream<Path> files = Files.list(folder.resolve("people"))) {
            return files.filter(file -> file.toString().endsWith(".p12")).count();
        }
    }

    private static void refused(String words, Executable work) {
        String message = assertThrows(RefusedException.class, work).getMessage();
        assertTrue(message.contains(words), message);
    }

    @Test
    void aPasswordThatWillNotDoMakesNobodyAdministrator() throws Exception {
        refused("10 to 128", () -> registrar.begin("LW", "administrator LW", List.of(Role.ENGINEER), "short".toCharArray()));
        refused("name", () -> registrar.begin("LW", "administrator LW", List.of(), "administrator four".toCharArray()));
        assertEquals(List.of(), registrar.people());
        assertEquals(0, keyFiles());
        registrar.begin("KM", "supervisor KM", List.of(), Approved.PASSWORD.toCharArray());
        assertEquals(List.of("KM"), registrar.people().stream().map(RegisteredPerson::id).toList());
    }

    @Test
    void anIdThatWillNotDoLeavesNoKey() throws Exception {
        refused("can't be an id", () -> registrar.begin("../x", "X", List.of(), Approved.PASSWORD.toCharArray()));
        assertEquals(List.of(), registrar.people());
        assertEquals(0, keyFiles());
    }

    @Test
    void aKeyThatTheRegisterDoesNotTakeLeavesNoFile() throws Exception {
        Approved.people(ledger, time.benchTime());
        assertEquals(3, keyFiles());
        refused("has a key", () -> registrar.enroll(Approved.by("LW"), "RB", Approved.PASSWORD.toCharArray()));
        registrar.add(Approved.by("LW"), "QN", "technician QN", List.of(Role.TECHNICIAN));
        refused("no administrator", () -> registrar.enroll(Approved.by("KM"), "QN", Approved.PASSWORD.toCharArray()));
        assertEquals(3, keyFiles());
        registrar.rotate(Approved.by("KM"), "five dry badgers".toCharArray());
        assertEquals(4, keyFiles());
    }
}
