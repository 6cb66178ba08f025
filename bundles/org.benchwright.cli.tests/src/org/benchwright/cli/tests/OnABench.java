package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** Tests of commands, each on a bench of its own in an empty folder. */
abstract class OnABench {

    @TempDir
    Path folder;
    CommandRunner bench;

    @BeforeEach
    void beginBench() throws IOException {
        bench = new CommandRunner(folder);
    }

    /** Nothing of what was recorded is missing or changed. */
    void ledgerIsSound() {
        assertEquals("The ledger is sound.", bench.run("verify", bench.ledger().toString()).done().lastLine());
    }

    /** Runs a command on the bench's ledger while this text stands in standard input. */
    CommandRunner.Ended bench(String typed, String... words) {
        return bench.typingOnLedger(typed, words);
    }
}
