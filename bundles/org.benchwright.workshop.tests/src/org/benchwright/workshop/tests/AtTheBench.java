package org.benchwright.workshop.tests;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A new ledger that is open at a bench, by clocks that are moved by hand. */
abstract class AtTheBench {

    static final Station STATION = new Station("bench 2", "Benchwright 0.1.0");
    static final Actor QN = new Actor("QN", Role.TECHNICIAN);

    @TempDir
    Path folder;
    final MovedTime time = new MovedTime();
    BenchLedger ledger;
    Workshop workshop;

    @BeforeEach
    void openLedger() throws Exception {
        ledger = BenchLedger.open(file());
        workshop = ledger.workshop(STATION, time.benchTime());
    }

    @AfterEach
    void closeLedger() throws Exception {
        ledger.close();
    }

    Path file() {
        return folder.resolve("bench.ledger");
    }

    /** The photo of a type plate. */
    Path plate() throws IOException {
        return Files.write(folder.resolve("plate.jpg"), new byte[] {1});
    }
}
