package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The finished window, started by its start script as a process and worked with by keyboard. Needs a display. */
final class WindowProcess implements AutoCloseable {

    private static final int PATIENCE_SECONDS = 240;
    private static final Path PROCEDURES = Path.of("..", "..", "procedures").toAbsolutePath().normalize();
    private static final String UNIT_TITLE = ": .* - Benchwright";
    private static final Pattern RECORDED = Pattern.compile("(\\S+): entry (\\d+) recorded - Benchwright");

    private final Path folder;
    private final Process process;

    private WindowProcess(Path folder, Process process) {
        this.folder = folder;
        this.process = process;
    }

    /**
     * Opens the window on a ledger, at the Bench, and waits until it can be worked with. New tests are offered as rehearsals.
     *
     * @param folder where it keeps its configuration
     */
    static WindowProcess open(Path folder, Path ledger) throws IOException, InterruptedException {
        Path ready = folder.resolve("ready");
        Files.deleteIfExists(ready);
        ProcessBuilder builder = new ProcessBuilder(
                Product.home("org.benchwright.workbench", "linux/gtk/x86_64").resolve("benchwright").toString(),
                "-configuration", folder.resolve("window-configuration").toString(), "-perspective", "org.benchwright.ui.bench")
                .redirectErrorStream(true).redirectOutput(folder.resolve("window-output").toFile());
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().put("JAVA_TOOL_OPTIONS", String.join(" ", List.of("-Dbenchwright.ready=" + ready,
                "-Dbenchwright.ledger=" + ledger, "-Dbenchwright.procedures=" + PROCEDURES, "-Dbenchwright.demo=true")));
        WindowProcess window = new WindowProcess(folder, builder.start());
        window.awaitReady(ready);
        return window;
    }

    private void awaitReady(Path ready) throws IOException, InterruptedException {
        for (int i = 0; i < PATIENCE_SECONDS * 20 && process.isAlive() && !Files.exists(ready); i++) {
            TimeUnit.MILLISECONDS.sleep(50);
        }
        assertTrue(Files.exists(ready), Files.readString(folder.resolve("window-output")));
    }

    /** Opens a test of the procedure that is offered; returns the number of the last entry on record. */
    long newTest(String serial) throws IOException, InterruptedException {
        Keyboard.press("ctrl+n");
        Keyboard.awaitTitle("New test");
        Keyboard.type(serial);
        Keyboard.press("Tab", "ctrl+a");
        Keyboard.type("QN");
        Keyboard.press("Return");
        Keyboard.awaitNoTitle("New test");
        return awaitRecorded(serial, 0);
    }

    /** Takes up the unit that is on the bench; returns the number of the last entry on record. */
    long takeUp(String serial) throws IOException, InterruptedException {
        Keyboard.awaitTitle(serial + ": (not open here|taken up elsewhere) - Benchwright");
        answer("QN");
        return awaitRecorded(serial, 0);
    }

    /** Types an answer, and Enter. */
    void answer(String text) throws IOException, InterruptedException {
        Keyboard.focus(UNIT_TITLE);
        Keyboard.type(text);
        Keyboard.press("Return");
    }

    /** Waits until the window says that an entry behind this one is recorded; returns its number. */
    long awaitRecorded(String serial, long behind) throws IOException, InterruptedException {
        long recorded = behind;
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        while (recorded <= behind) {
            assertTrue(System.nanoTime() < end, () -> "nothing recorded behind " + behind);
            for (String title : Keyboard.titles()) {
                Matcher told = RECORDED.matcher(title);
                recorded = told.matches() && told.group(1).equals(serial) ? Long.parseLong(told.group(2)) : recorded;
            }
        }
        return recorded;
    }

    /** Ends the process as a cut cable would. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** Closes the window by its key, and waits until the process has ended; returns its status. */
    int quit() throws IOException, InterruptedException {
        Keyboard.focus(UNIT_TITLE);
        Keyboard.press("ctrl+q");
        assertTrue(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS), "the window closes");
        return process.exitValue();
    }

    @Override
    public void close() throws IOException {
        process.destroyForcibly();
    }
}
