package org.benchwright.language.server;

import java.io.InputStream;
import java.io.OutputStream;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.internal.FrameworkLog;
import org.benchwright.language.internal.server.ServerEnds;
import org.benchwright.language.internal.server.ServerFailures;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;

/** Serves one editor over two streams (Language Server Protocol 3.17). Nothing but the protocol is written to the output. */
public final class EditorServer {

    private EditorServer() {
    }

    /**
     * Serves until the editor says exit or closes its end.
     *
     * @param version   of this program, told to the editor
     * @param approvals gives what is approved now, the same object as long as nothing has changed; asked every few seconds, on one thread
     *                  at a time, and must not throw
     * @param in        what the editor sends
     * @param out       what it gets
     * @return true if the editor said shutdown before it went, as the protocol wants it
     * @throws InterruptedException if this thread is interrupted
     */
    public static boolean serve(String version, Supplier<ApprovedRevisions> approvals, InputStream in, OutputStream out) throws InterruptedException {
        FrameworkLog.quieten();
        ServerEnds server = new ServerEnds(version, approvals);
        ExecutorService threads = Executors.newCachedThreadPool(work -> {
            Thread thread = new Thread(work, "editor server");
            thread.setDaemon(true);
            return thread;
        });
        Launcher<LanguageClient> launcher = new LSPLauncher.Builder<LanguageClient>().setLocalService(server).setRemoteInterface(LanguageClient.class)
                .setInput(in).setOutput(out).setExecutorService(threads).validateMessages(true).wrapMessages(ServerFailures::withoutInside)
                .setExceptionHandler(ServerFailures::answer).create();
        server.connect(launcher.getRemoteProxy());
        Future<?> listening = launcher.startListening();
        server.whenLeft(() -> listening.cancel(true));
        try {
            listening.get();
        } catch (CancellationException left) {
            // The editor said exit; its end may still be open.
        } catch (ExecutionException broken) {
            throw new IllegalStateException("the protocol's own work failed", broken.getCause());
        } finally {
            server.close();
            threads.shutdownNow();
        }
        return server.wasShutDown();
    }
}
