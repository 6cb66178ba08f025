package org.benchwright.ledger.tests;

import java.nio.file.Path;

import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.SqliteLedger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A new ledger whose register of people is entered into. */
abstract class WithRegister {

    @TempDir
    Path folder;

    Ledger ledger;
    BenchKey bench;
    Register register;

    @BeforeEach
    void openLedger() throws Exception {
        ledger = SqliteLedger.open(file());
        bench = BenchKeyStore.openOrCreate(folder);
        register = new Register(ledger, bench);
    }

    @AfterEach
    void closeLedger() throws Exception {
        ledger.close();
    }

    Path file() {
        return folder.resolve("bench.ledger");
    }
}
