package org.benchwright.language.internal.server;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;

import org.benchwright.language.ApprovedRevisions;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionOptions;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;

/** Beginning and end of a connection with an editor. */
public final class ServerEnds implements LanguageServer {

    private final String version;
    private final Desk desk;
    private final Texts texts;
    private Runnable left = () -> { };
    private final Conversation conversation = new Conversation();

    /**
     * @param version   of this program
     * @param approvals gives what is approved now, the same object as long as nothing has changed
     */
    public ServerEnds(String version, Supplier<ApprovedRevisions> approvals) {
        this.version = version;
        desk = new Desk(approvals);
        texts = new Texts(desk, conversation);
    }

    /** The editor at the other end. */
    public void connect(LanguageClient editor) {
        desk.connect(editor);
    }

    /** What to do when the editor says exit. */
    public void whenLeft(Runnable action) {
        left = action;
    }

    /** Ends the work that goes on beside the answers. */
    public void close() {
        desk.close();
    }

    /** Whether the editor said shutdown. */
    public boolean wasShutDown() {
        return conversation.isOver();
    }

    @Override
    public CompletableFuture<InitializeResult> initialize(InitializeParams parameters) {
        conversation.begin();
        ServerCapabilities able = new ServerCapabilities();
        able.setTextDocumentSync(TextDocumentSyncKind.Full);
        able.setCompletionProvider(new CompletionOptions(false, List.of(" ")));
        able.setHoverProvider(true);
        able.setDefinitionProvider(true);
        able.setReferencesProvider(true);
        able.setRenameProvider(true);
        able.setDocumentSymbolProvider(true);
        able.setFoldingRangeProvider(true);
        able.setDocumentFormattingProvider(true);
        able.setCodeActionProvider(new CodeActionOptions(List.of(CodeActionKind.QuickFix)));
        able.setSemanticTokensProvider(new SemanticTokensWithRegistrationOptions(Colours.legend(), true));
        return CompletableFuture.completedFuture(new InitializeResult(able, new ServerInfo("Benchwright", version)));
    }

    @Override
    public CompletableFuture<Object> shutdown() {
        conversation.end();
        return CompletableFuture.completedFuture(null);
    }

    @Override
    public void exit() {
        left.run();
    }

    @Override
    public TextDocumentService getTextDocumentService() {
        return texts;
    }

    @Override
    public WorkspaceService getWorkspaceService() {
        return new FileEvents(desk);
    }
}
