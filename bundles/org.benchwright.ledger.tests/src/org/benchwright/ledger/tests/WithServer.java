package org.benchwright.ledger.tests;

import java.nio.file.Path;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** A server that all tests of a class have in common. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
public abstract class WithServer {

    @TempDir
    protected Path folder;

    protected PostgresServer server;

    @BeforeAll
    protected void start() throws Exception {
        server = PostgresServer.start();
    }

    @AfterAll
    protected void stop() throws Exception {
        server.close();
    }
}
