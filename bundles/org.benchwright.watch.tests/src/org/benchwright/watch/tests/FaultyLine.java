package org.benchwright.watch.tests;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;

/** A line between the watch and a peer that can be bad in several ways. On loopback. */
final class FaultyLine implements AutoCloseable {

    /** What the line does with bytes. */
    enum Fault {
        /** Passes them on. */
        NONE,
        /** Takes them, and nothing ever comes back: the other end is gone, and nobody said so. */
        HALF_OPEN,
        /** Answers come a byte every 300 ms. */
        SLOW,
        /** Breaks the connection at the first byte. */
        RESET,
        /** Sends back what nobody said. */
        GARBAGE
    }

    private final ServerSocket listening;
    private final int target;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private final List<ByteArrayOutputStream> asked = new CopyOnWriteArrayList<>();
    private volatile Fault fault = Fault.NONE;

    FaultyLine(int target) throws IOException {
        this.target = target;
        this.listening = new ServerSocket();
        listening.setReuseAddress(true);
        listening.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0));
        daemon(this::accept);
    }

    int port() {
        return listening.getLocalPort();
    }

    /** What is connected stays, and is as bad from now on. */
    void become(Fault now) {
        fault = now;
    }

    /** All that was asked over the line, one array of bytes for each connection. */
    List<byte[]> asked() {
        return asked.stream().map(ByteArrayOutputStream::toByteArray).toList();
    }

    private static void daemon(Runnable work) {
        Thread thread = new Thread(work, "faulty line");
        thread.setDaemon(true);
        thread.start();
    }

    private void accept() {
        try {
            while (true) {
                Socket near = listening.accept();
                Socket far = new Socket(InetAddress.getLoopbackAddress(), target);
                near.setTcpNoDelay(true);
                open.add(near);
                open.add(far);
                ByteArrayOutputStream heard = new ByteArrayOutputStream();
                asked.add(heard);
                daemon(() -> pass(near, far, false, heard));
                daemon(() -> pass(far, near, true, OutputStream.nullOutputStream()));
            }
        } catch (IOException closed) {
            // The line is taken down.
        }
    }

    private void pass(Socket from, Socket to, boolean answers, OutputStream heard) {
        Random random = new Random(7);
        byte[] bytes = new byte[4096];
        try (from; to) {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            for (int count = in.read(bytes); count >= 0; count = in.read(bytes)) {
                heard.write(bytes, 0, count);
                switch (fault) {
                    case NONE -> out.write(bytes, 0, count);
                    case HALF_OPEN -> { }
                    case RESET -> {
                        (answers ? to : from).setSoLinger(true, 0);
                        return;
                    }
                    case GARBAGE -> {
                        if (answers) {
                            byte[] other = new byte[count + 40];
                            random.nextBytes(other);
                            out.write(other);
                        } else {
                            out.write(bytes, 0, count);
                        }
                    }
                    case SLOW -> {
                        for (int i = 0; i < count; i++) {
                            Thread.sleep(answers ? 300 : 0);
                            out.write(bytes, i, 1);
                            out.flush();
                        }
                    }
                }
            }
        } catch (IOException | InterruptedException over) {
            // One end is gone; the other follows.
        }
    }

    @Override
    public void close() throws IOException {
        listening.close();
        for (Socket socket : open) {
            socket.close();
        }
    }
}
