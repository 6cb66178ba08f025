package org.benchwright.ledger.tests;

import java.nio.file.Files;
import java.nio.file.Path;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** Benches that share a new ledger in each test, on a server that all tests of a class have in common. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class OnOneServer {

    @TempDir
    Path folder;

    PostgresServer server;
    SharedBenches benches;

    @BeforeAll
    void start() throws Exception {
        server = PostgresServer.start();
    }

    @AfterAll
    void stop() throws Exception {
        server.close();
    }

    @BeforeEach
    void install() throws Exception {
        benches = SharedBenches.on(server, Files.createTempDirectory(folder, "benches"));
    }
}
