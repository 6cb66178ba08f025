package org.benchwright.watch.tests;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/** A server that somebody else wrote, as a process: it plays the unit. It ends with its standard input. */
final class Peer implements AutoCloseable {

    private static final Path PEERS = Path.of("peers").toAbsolutePath();
    private static final Path MADE = Path.of("target", "peers").toAbsolutePath();
    private static final long PATIENCE_S = 240;

    private final Process process;
    private final Writer in;
    private final BlockingQueue<String> lines = new LinkedBlockingQueue<>();
    private final AtomicInteger writes = new AtomicInteger();
    private final int port;

    private Peer(List<String> command) throws Exception {
        process = new ProcessBuilder(command).redirectErrorStream(true).start();
        in = process.outputWriter(StandardCharsets.UTF_8);
        Thread reading = new Thread(this::collect, "peer");
        reading.setDaemon(true);
        reading.start();
        port = Integer.parseInt(line().replace("port ", ""));
    }

    private void collect() {
        try (BufferedReader out = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                if (line.startsWith("WRITE")) {
                    writes.incrementAndGet();
                } else if (line.matches("ok|(port )?\\d+")) {
                    lines.add(line);
                }
            }
            lines.add("ended");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String line() throws InterruptedException {
        String line = lines.poll(PATIENCE_S, TimeUnit.SECONDS);
        if (line == null) {
            throw new AssertionError("the peer says nothing");
        }
        return line;
    }

    /** A Modbus server by libmodbus, compiled here. */
    static Peer modbus(int port) throws Exception {
        Path made = Files.createDirectories(MADE).resolve("modbus-peer");
        synchronized (Peer.class) {
            if (!Files.exists(made)) {
                run(PEERS, "gcc", "-O1", "-Wall", "-I/usr/include/modbus", "-o", made.toString(), "modbus-peer.c", "-lmodbus");
            }
        }
        return new Peer(List.of(made.toString(), String.valueOf(port)));
    }

    /** An OPC UA server by node-opcua, its packages fetched as the lock file says. */
    static Peer opcUa(int port, Path folder, String... more) throws Exception {
        Path made = Files.createDirectories(MADE.resolve("opcua"));
        synchronized (Peer.class) {
            if (!Files.exists(made.resolve("complete"))) {
                for (String file : List.of("package.json", "package-lock.json")) {
                    Files.copy(PEERS.resolve("opcua").resolve(file), made.resolve(file), StandardCopyOption.REPLACE_EXISTING);
                }
                run(made, "npm", "ci", "--no-audit", "--no-fund", "--ignore-scripts", "--omit=optional");
                Files.writeString(made.resolve("complete"), "");
            }
            Files.copy(PEERS.resolve("opcua").resolve("server.js"), made.resolve("server.js"), StandardCopyOption.REPLACE_EXISTING);
        }
        List<String> command = new ArrayList<>(List.of("node", made.resolve("server.js").toString(), String.valueOf(port), folder.toString()));
        command.addAll(List.of(more));
        return new Peer(command);
    }

    private static void run(Path folder, String... command) throws Exception {
        Path log = Files.createTempFile(MADE, "made", ".log");
        Process making = new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true).redirectOutput(log.toFile()).start();
        if (!making.waitFor(10, TimeUnit.MINUTES) || making.exitValue() != 0) {
            making.destroyForcibly();
            throw new AssertionError(String.join(" ", command) + " failed: " + Files.readString(log));
        }
    }

    int port() {
        return port;
    }

    /** Sets what it reads; when this returns it does. */
    void set(String what, Object... values) throws Exception {
        StringBuilder line = new StringBuilder(what);
        for (Object value : values) {
            line.append(' ').append(value);
        }
        in.write(line.append('\n').toString());
        in.flush();
        if (!line().equals("ok")) {
            throw new AssertionError("the peer has ended");
        }
    }

    /** How many sessions an OPC UA server has open. */
    int sessions() throws Exception {
        in.write("sessions\n");
        in.flush();
        return Integer.parseInt(line());
    }

    /** How many requests came that would have changed something. */
    int writes() {
        return writes.get();
    }

    @Override
    public void close() {
        process.destroyForcibly();
        try {
            process.waitFor(PATIENCE_S, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
