package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.server.EditorServer;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;

/**
 * An editor in conversation with the server, and what the server tells it unasked. What fails inside, on either side, is
 * kept.
 */
final class EditorTalk implements AutoCloseable {

    private static final long LIMIT_SECONDS = 60;

    private final BlockingQueue<PublishDiagnosticsParams> published = new LinkedBlockingQueue<>();
    private final BlockingQueue<String> messages = new LinkedBlockingQueue<>();
    private final List<String> failures = new CopyOnWriteArrayList<>();
    private final Logger log = Logger.getLogger("");
    private final Handler keeper = new Keeper();
    private final LanguageServer server;
    private final Thread serving;
    private final Socket editorEnd;
    private final Socket serverEnd;

    EditorTalk(ApprovedRevisions approved) throws Exception {
        // Pipes within one process break when a thread that wrote into them ends.
        try (ServerSocket door = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            editorEnd = new Socket(door.getInetAddress(), door.getLocalPort());
            serverEnd = door.accept();
        }
        log.addHandler(keeper);
        serving = new Thread(() -> {
            try {
                EditorServer.serve("0", () -> approved, serverEnd.getInputStream(), serverEnd.getOutputStream());
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            } catch (IOException broken) {
                failures.add(broken.toString());
            }
        }, "serving");
        serving.start();
        var editor = LSPLauncher.createClientLauncher(new Editor(), editorEnd.getInputStream(), editorEnd.getOutputStream());
        editor.startListening();
        server = editor.getRemoteProxy();
        InitializeParams begin = new InitializeParams();
        begin.setCapabilities(new ClientCapabilities());
        answer(server.initialize(begin));
    }

    LanguageServer server() {
        return server;
    }

    void opens(String uri, String text) {
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri, "benchwright", 1,
                text)));
    }

    <T> T answer(CompletableFuture<T> asked) throws Exception {
        return asked.get(LIMIT_SECONDS, TimeUnit.SECONDS);
    }

    /** The remarks that are told next of a file whose address ends so, and that are as wanted; others are passed over. */
    List<String> told(String ending, Predicate<List<String>> wanted) throws InterruptedException {
        for (PublishDiagnosticsParams next = next(); next != null; next = next()) {
            List<String> codes = next.getDiagnostics().stream().map(Diagnostic::getCode).map(code -> code.getLeft())
                    .toList();
            if (next.getUri().endsWith(ending) && wanted.test(codes)) {
                return codes;
            }
        }
        throw new AssertionError("nothing was told of " + ending + "; failures: " + failures);
    }

    private PublishDiagnosticsParams next() throws InterruptedException {
        return published.poll(LIMIT_SECONDS, TimeUnit.SECONDS);
    }

    /** What the server says next that is no remark. */
    String said() throws InterruptedException {
        return String.valueOf(messages.poll(LIMIT_SECONDS, TimeUnit.SECONDS));
    }

    List<String> failures() {
        return List.copyOf(failures);
    }

    void assertNothingFailed() {
        assertEquals(List.of(), failures());
    }

    @Override
    public void close() throws IOException {
        try {
            answer(server.shutdown());
            server.exit();
            serving.join(TimeUnit.SECONDS.toMillis(LIMIT_SECONDS));
        } catch (Exception failed) {
            throw new IOException(failed);
        } finally {
            log.removeHandler(keeper);
            editorEnd.close();
            serverEnd.close();
        }
    }

    private final class Keeper extends Handler {
        @Override
        public void publish(LogRecord said) {
            if (said.getLevel().intValue() >= Level.WARNING.intValue()) {
                failures.add(said.getMessage() + " " + said.getThrown());
            }
        }

        @Override
        public void flush() {
            // Nothing is held back.
        }

        @Override
        public void close() {
            // Nothing is open.
        }
    }

    private final class Editor implements LanguageClient {
        @Override
        public void publishDiagnostics(PublishDiagnosticsParams remarks) {
            published.add(remarks);
        }

        @Override
        public void telemetryEvent(Object event) {
            messages.add(String.valueOf(event));
        }

        @Override
        public void showMessage(MessageParams message) {
            messages.add(message.getMessage());
        }

        @Override
        public void logMessage(MessageParams message) {
            messages.add(message.getMessage());
        }

        @Override
        public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams message) {
            return CompletableFuture.completedFuture(null);
        }
    }
}
