package org.benchwright.ledger.tests;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** A network between a bench and the server that can be cut: connections are dropped in the middle of what they carry, or just fall silent. */
final class CuttingProxy implements AutoCloseable {

    private final ServerSocket listening = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    private final int port;
    private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
    private volatile boolean silent;

    CuttingProxy(int port) throws IOException {
        this.port = port;
        thread(this::accept);
    }

    int port() {
        return listening.getLocalPort();
    }

    /** Drops all connections. */
    void cut() {
        sockets.forEach(CuttingProxy::close);
        sockets.clear();
    }

    /** From now on nothing is carried any more, and nobody is told; until {@code false}, which drops what had fallen silent. */
    void silence(boolean on) {
        silent = on;
        if (!on) {
            cut();
        }
    }

    private void accept() {
        while (!listening.isClosed()) {
            try {
                Socket bench = listening.accept();
                Socket server = new Socket(InetAddress.getLoopbackAddress(), port);
                sockets.add(bench);
                sockets.add(server);
                thread(() -> carry(bench, server));
                thread(() -> carry(server, bench));
            } catch (IOException closedOrNoServer) {
                continue;
            }
        }
    }

    private void carry(Socket from, Socket to) {
        byte[] buffer = new byte[4096];
        try (InputStream in = from.getInputStream(); OutputStream out = to.getOutputStream()) {
            for (int count = in.read(buffer); count >= 0; count = in.read(buffer)) {
                while (silent) {
                    Thread.sleep(10);
                }
                out.write(buffer, 0, count);
            }
        } catch (IOException cut) {
            // As it should be.
        } catch (InterruptedException stop) {
            Thread.currentThread().interrupt();
        } finally {
            close(from);
            close(to);
        }
    }

    private static void thread(Runnable work) {
        Thread thread = new Thread(work);
        thread.setDaemon(true);
        thread.start();
    }

    private static void close(Socket socket) {
        try {
            socket.close();
        } catch (IOException alreadyGone) {
            return;
        }
    }

    @Override
    public void close() throws IOException {
        listening.close();
        cut();
    }
}
