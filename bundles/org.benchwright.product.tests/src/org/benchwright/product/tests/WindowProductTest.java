package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The product with the window, started on this system. Needs a display. */
class WindowProductTest {

    private static final int PATIENCE_SECONDS = 240;

    @TempDir
    private Path folder;

    @Test
    void theStartScriptOpensTheWindowOnTheLedgerThatIsNamed() throws Exception {
        Path ready = folder.resolve("ready");
        Path log = folder.resolve("window").resolve(".metadata").resolve(".log");
        ProcessBuilder builder = new ProcessBuilder(Product.home("org.benchwright.workbench", "linux/gtk/x86_64").resolve("benchwright").toString(),
                folder.resolve("bench.ledger").toString(), "-configuration", folder.resolve("configuration").toString())
                .redirectErrorStream(true).redirectOutput(folder.resolve("output").toFile());
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().put("JAVA_TOOL_OPTIONS", "-Dbenchwright.ready=" + ready);
        Process process = builder.start();
        try {
            for (int i = 0; i < PATIENCE_SECONDS * 10 && process.isAlive() && !Files.exists(ready); i++) {
                TimeUnit.MILLISECONDS.sleep(100);
            }
            assertTrue(Files.exists(ready), Files.readString(folder.resolve("output")));
            assertTrue(Files.isDirectory(log.getParent()), "views are kept beside that ledger");
            assertFalse(Files.exists(log) && Files.readString(log).contains("!ENTRY"), () -> text(log));
        } finally {
            process.destroy();
            assertTrue(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS), "it ends when it is told to");
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return e.toString();
        }
    }
}
