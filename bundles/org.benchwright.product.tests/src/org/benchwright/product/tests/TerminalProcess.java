package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** The finished terminal face with a test in it, as a process of its own, answered line by line. */
final class TerminalProcess implements AutoCloseable {

    private static final int PATIENCE_SECONDS = 240;
    private static final Path PROCEDURE = Path.of("..", "..", "procedures", "tarn-c16-acceptance.procedure").toAbsolutePath().normalize();

    private final Path output;
    private final Process process;
    private final Writer keys;

    private TerminalProcess(Path output, Process process) {
        this.output = output;
        this.process = process;
        this.keys = process.outputWriter();
    }

    /** Starts a rehearsal of a C16, or takes the unfinished one up. */
    static TerminalProcess test(Path folder, Path ledger, String serial) throws IOException {
        Path output = folder.resolve("terminal-output");
        Process process = new ProcessBuilder(new Product(folder).command("test", PROCEDURE.toString(), "--serial", serial, "--ledger",
                ledger.toString(), "--technician", "KM", "--rehearse"))
                .directory(folder.toFile()).redirectErrorStream(true).redirectOutput(output.toFile()).start();
        return new TerminalProcess(output, process);
    }

    /** Types a line. */
    void line(String text) throws IOException {
        keys.write(text + "\n");
        keys.flush();
    }

    /** Waits until this was printed; returns everything that was. */
    String awaitPrinted(String text) throws IOException, InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        String printed = printed();
        while (!printed.contains(text)) {
            assertTrue(System.nanoTime() < end, "\"" + text + "\" is not in:\n" + printed);
            TimeUnit.MILLISECONDS.sleep(50);
            printed = printed();
        }
        return printed;
    }

    private String printed() throws IOException {
        return Files.readString(output).replaceAll("\\s+", " ");
    }

    /** Waits for its end; returns its status. */
    int awaitEnd() throws InterruptedException {
        assertTrue(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS), "the terminal ends");
        return process.exitValue();
    }

    @Override
    public void close() throws IOException {
        process.destroyForcibly();
        keys.close();
    }
}
