package org.benchwright.cli.tests;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;

import org.benchwright.cli.Surroundings;
import org.benchwright.cli.internal.Commands;
import org.benchwright.cli.internal.Screen;
import org.benchwright.cli.internal.Screens;
import org.benchwright.cli.internal.TerminalScreen;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.ExternalTerminal;

/** Talks with a command that runs in another thread: waits until it says something, then types. */
final class Conversation implements AutoCloseable {

    private static final long PATIENCE_SECONDS = 240;

    private final CommandRunner bench;
    private final PipedOutputStream keyboard = new PipedOutputStream();
    private final Heard heard = new Heard();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final CompletableFuture<Integer> status;
    private int read;

    /** What was printed so far; whoever waits for more is woken. */
    private static final class Heard extends OutputStream {
        private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

        @Override
        public synchronized void write(int b) {
            bytes.write(b);
            notifyAll();
        }

        @Override
        public synchronized void write(byte[] more, int from, int length) {
            bytes.write(more, from, length);
            notifyAll();
        }

        synchronized String text() {
            // Control sequences of the terminal and line breaks are no words.
            return bytes.toString(StandardCharsets.UTF_8).replaceAll("\u001b\\[[0-9;?]*[A-Za-z]|\u001b[=>]", "").replaceAll("[\\s\\x00]+", " ");
        }

        synchronized void await(long millis) throws InterruptedException {
            wait(millis);
        }
    }

    private Conversation(CommandRunner bench, Function<Conversation, Function<Surroundings, Screen>> screens, String... arguments)
            throws IOException {
        this.bench = bench;
        PipedInputStream in = new PipedInputStream(keyboard, 1 << 16);
        Surroundings around = new Surroundings(in, heard, err, false, Map.of("USER", "QN", "HOSTNAME", "bench2"), bench.folder(),
                Optional.empty(), bench.clocks(), ZoneOffset.UTC, "0.1.0");
        Commands commands = new Commands(around, SampleProcedure.SOURCE, screens.apply(this));
        this.status = CompletableFuture.supplyAsync(() -> commands.run(arguments));
    }

    /** By lines of standard input and output. */
    static Conversation byLines(CommandRunner bench, String... arguments) throws IOException {
        return new Conversation(bench, c -> Screens::answering, arguments);
    }

    /** At a terminal of 80 columns that is made of these streams. */
    static Conversation atTerminal(CommandRunner bench, String... arguments) throws IOException {
        return new Conversation(bench, c -> around -> new TerminalScreen(terminal(around), around.err()), arguments);
    }

    private static Terminal terminal(Surroundings around) {
        try {
            return new ExternalTerminal("test", "ansi", around.in(), around.out(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** Waits until these words were printed, line breaks aside. */
    Conversation hears(String words) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        int found = heard.text().indexOf(words, read);
        while (found < 0) {
            if (status.isDone() || System.nanoTime() > end) {
                throw new AssertionError("\"" + words + "\" was not said after: " + heard.text().substring(read) + " | " + err + " | " + status);
            }
            heard.await(20);
            found = heard.text().indexOf(words, read);
        }
        read = found + words.length();
        return this;
    }

    /** Types a line. */
    Conversation types(String line) throws IOException {
        return presses(line + "\n");
    }

    /** Presses keys, no Enter behind them. */
    Conversation presses(String keys) throws IOException {
        keyboard.write(keys.getBytes(StandardCharsets.UTF_8));
        keyboard.flush();
        return this;
    }

    /** The input ends. */
    Conversation hangsUp() throws IOException {
        keyboard.close();
        return this;
    }

    /** The exit status, once the command has ended. */
    int ends() throws InterruptedException, ExecutionException {
        try {
            return status.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException e) {
            throw new AssertionError("it does not end after: " + heard.text().substring(read) + " | " + err, e);
        }
    }

    String everything() {
        return heard.text();
    }

    String errors() {
        return err.toString(StandardCharsets.UTF_8);
    }

    CommandRunner bench() {
        return bench;
    }

    @Override
    public void close() throws IOException {
        keyboard.close();
    }
}
