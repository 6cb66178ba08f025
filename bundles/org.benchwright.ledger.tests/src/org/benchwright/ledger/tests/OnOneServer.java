package org.benchwright.ledger.tests;

import java.nio.file.Files;

import org.junit.jupiter.api.BeforeEach;

/** Benches that share a new ledger in each test. */
abstract class OnOneServer extends WithServer {

    SharedBenches benches;

    @BeforeEach
    void install() throws Exception {
        benches = SharedBenches.on(server, Files.createTempDirectory(folder, "benches"));
    }
}
