package org.benchwright.cli.tests;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.function.BooleanSupplier;

/** An editor's end of a talk with the server, as the letters that go through the pipe. */
final class EditorTalk implements AutoCloseable {

    private static final Duration LONG = Duration.ofMinutes(2);

    private final PipedOutputStream toServer = new PipedOutputStream();
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final CompletableFuture<Integer> ended = new CompletableFuture<>();

    EditorTalk(CommandRunner bench, String... command) throws IOException {
        PipedInputStream fromEditor = new PipedInputStream(toServer, 1 << 16);
        Thread server = new Thread(() -> ended.complete(bench.talking(fromEditor, out, err, command)), "server");
        server.setDaemon(true);
        server.start();
    }

    void say(String message) throws IOException {
        byte[] bytes = message.getBytes(StandardCharsets.UTF_8);
        toServer.write(("Content-Length: " + bytes.length + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
        toServer.write(bytes);
        toServer.flush();
    }

    /** Everything that the server has said so far. */
    String heard() {
        return out.toString(StandardCharsets.UTF_8);
    }

    /** Waits until the server has said something. */
    boolean hears(String words) throws InterruptedException {
        return waits(() -> heard().contains(words));
    }

    /** Waits until something is written for people. */
    boolean hearsTrouble() throws InterruptedException {
        return waits(() -> err.size() > 0);
    }

    private static boolean waits(BooleanSupplier until) throws InterruptedException {
        Instant end = Instant.now().plus(LONG);
        while (!until.getAsBoolean() && Instant.now().isBefore(end)) {
            Thread.sleep(20);
        }
        return until.getAsBoolean();
    }

    /** Says good-bye; the status with which the server ends. */
    int leave() throws IOException, InterruptedException, ExecutionException {
        say("{\"jsonrpc\":\"2.0\",\"id\":99,\"method\":\"shutdown\"}");
        hears("\"id\":99");
        say("{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}");
        return ended.get();
    }

    /** A text as JSON writes it. */
    static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n").replace("\t", "\\t") + '"';
    }

    @Override
    public void close() throws IOException {
        toServer.close();
    }
}
