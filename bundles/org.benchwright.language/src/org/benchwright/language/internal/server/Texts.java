package org.benchwright.language.internal.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiFunction;

import org.benchwright.core.Cancellation;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.editing.Renaming;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.TextDocumentService;

/** What an editor asks about a text. */
record Texts(Desk desk, Conversation conversation) implements TextDocumentService {

    /** A text that is asked about. */
    private record Open(Path file, FolderSession session, String text, Lines lines) {
        int offset(Position position) {
            return lines.offset(position);
        }
    }

    private <T> CompletableFuture<T> ask(TextDocumentIdentifier document, T nothing, BiFunction<Open, Path, T> question) {
        Optional<ResponseError> refused = conversation.refusal();
        if (refused.isPresent()) {
            return CompletableFuture.failedFuture(new ResponseErrorException(refused.get()));
        }
        return CompletableFuture.supplyAsync(() -> Addresses.file(document.getUri()).flatMap(this::open)
                .map(open -> question.apply(open, open.file())).orElse(nothing));
    }

    private Optional<Open> open(Path file) {
        FolderSession session = desk.session(file);
        return session.text(file).map(text -> new Open(file, session, text, new Lines(text)));
    }

    // ---- texts come and go

    /** The file that something is told of; what is told outside the conversation is passed over. */
    private Optional<Path> told(String address) {
        return conversation.isOpen() ? Addresses.file(address) : Optional.empty();
    }

    @Override
    public void didOpen(DidOpenTextDocumentParams parameters) {
        told(parameters.getTextDocument().getUri()).ifPresent(file -> desk.open(file, parameters.getTextDocument().getText()));
    }

    @Override
    public void didChange(DidChangeTextDocumentParams parameters) {
        // Each change is the whole text: the last one holds. An editor may send none, where only the version is another one.
        List<TextDocumentContentChangeEvent> changes = parameters.getContentChanges();
        Optional<String> text = changes.isEmpty() ? Optional.empty() : Optional.of(changes.get(changes.size() - 1).getText());
        text.ifPresent(now -> told(parameters.getTextDocument().getUri()).ifPresent(file -> desk.change(file, now)));
    }

    @Override
    public void didClose(DidCloseTextDocumentParams parameters) {
        told(parameters.getTextDocument().getUri()).ifPresent(desk::close);
    }

    @Override
    public void didSave(DidSaveTextDocumentParams parameters) {
        desk.lookAtDisk();
    }

    // ---- questions about a place

    @Override
    public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(CompletionParams parameters) {
        return ask(parameters.getTextDocument(), Either.forLeft(List.of()), (open, file) -> Either.forLeft(open.session()
                .proposals(file, open.offset(parameters.getPosition())).stream().map(each -> Answers.item(each, open.lines())).toList()));
    }

    @Override
    public CompletableFuture<Hover> hover(HoverParams parameters) {
        return ask(parameters.getTextDocument(), null, (open, file) -> open.session().hover(file, open.offset(parameters.getPosition()))
                .map(found -> new Hover(new MarkupContent(MarkupKind.PLAINTEXT, found.text()), open.lines().range(found.offset(), found.length())))
                .orElse(null));
    }

    @Override
    public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>> definition(DefinitionParams parameters) {
        return ask(parameters.getTextDocument(), Either.forLeft(List.of()), (open, file) -> Either.forLeft(open.session()
                .declaration(file, open.offset(parameters.getPosition())).map(place -> Answers.location(place, open.session())).stream().toList()));
    }

    @Override
    public CompletableFuture<List<? extends Location>> references(ReferenceParams parameters) {
        return ask(parameters.getTextDocument(), List.of(), (open, file) -> {
            int offset = open.offset(parameters.getPosition());
            List<Location> found = new ArrayList<>(open.session().references(file, offset).stream()
                    .map(place -> Answers.location(place, open.session())).toList());
            if (parameters.getContext().isIncludeDeclaration()) {
                open.session().declaration(file, offset).ifPresent(place -> found.add(0, Answers.location(place, open.session())));
            }
            return found;
        });
    }

    @Override
    public CompletableFuture<WorkspaceEdit> rename(RenameParams parameters) {
        return ask(parameters.getTextDocument(), null, (open, file) -> {
            Renaming renaming = open.session().rename(file, open.offset(parameters.getPosition()), parameters.getNewName());
            if (renaming instanceof Renaming.Refused refused) {
                throw new ResponseErrorException(new ResponseError(ResponseErrorCode.InvalidParams, refused.why(), null));
            }
            return Answers.changes(((Renaming.Possible) renaming).edits(), open.session());
        });
    }

    @Override
    public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams parameters) {
        return ask(parameters.getTextDocument(), List.of(), (open, file) -> {
            int from = open.offset(parameters.getRange().getStart());
            int to = open.offset(parameters.getRange().getEnd());
            List<Remark> remarks = open.session().analyse(file, Cancellation.never()).map(Analysis::remarks).orElse(List.of());
            return remarks.stream().filter(remark -> remark.offset() <= to && from <= remark.offset() + remark.length())
                    .flatMap(remark -> open.session().fixes(remark).stream().map(fix -> Answers.action(fix, remark, open.session())))
                    .map(Either::<Command, CodeAction>forRight).toList();
        });
    }

    // ---- questions about a text

    @Override
    public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(DocumentSymbolParams parameters) {
        return ask(parameters.getTextDocument(), List.of(), (open, file) -> open.session().analyse(file, Cancellation.never())
                .map(analysis -> analysis.contents().stream().map(row -> Answers.symbol(row, open.lines()))
                        .map(Either::<SymbolInformation, DocumentSymbol>forRight).toList()).orElse(List.of()));
    }

    @Override
    public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams parameters) {
        return ask(parameters.getTextDocument(), List.of(), (open, file) -> open.session().analyse(file, Cancellation.never())
                .map(analysis -> analysis.folds().stream().map(fold -> Answers.folding(fold, open.lines())).toList()).orElse(List.of()));
    }

    @Override
    public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams parameters) {
        return ask(parameters.getTextDocument(), new SemanticTokens(List.of()), (open, file) -> open.session().analyse(file, Cancellation.never())
                .map(analysis -> Colours.of(analysis.styles(), analysis.text(), new Lines(analysis.text())))
                .orElseGet(() -> new SemanticTokens(List.of())));
    }

    @Override
    public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams parameters) {
        return ask(parameters.getTextDocument(), List.of(), (open, file) -> open.session().format(file).stream()
                .map(edit -> Answers.textEdit(edit, open.lines())).toList());
    }
}
