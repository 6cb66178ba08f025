package org.benchwright.language.internal.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

import org.benchwright.language.Remark;
import org.benchwright.language.editing.ContentsRow;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Fix;
import org.benchwright.language.editing.Fold;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.editing.Place;
import org.benchwright.language.editing.Proposal;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.InsertTextFormat;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeKind;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** The services' plain values in the protocol's form. */
final class Answers {

    private Answers() {
    }

    static List<Diagnostic> diagnostics(List<Remark> remarks, Lines lines) {
        return remarks.stream().map(remark -> diagnostic(remark, lines)).toList();
    }

    static Diagnostic diagnostic(Remark remark, Lines lines) {
        DiagnosticSeverity severity = switch (remark.severity()) {
            case ERROR -> DiagnosticSeverity.Error;
            case WARNING -> DiagnosticSeverity.Warning;
            case INFO -> DiagnosticSeverity.Information;
        };
        return new Diagnostic(lines.range(remark.offset(), remark.length()), remark.words(), severity, "benchwright", remark.code().word());
    }

    static CompletionItem item(Proposal proposal, Lines lines) {
        CompletionItem item = new CompletionItem(proposal.label());
        item.setKind(switch (proposal.kind()) {
            case TEMPLATE -> CompletionItemKind.Snippet;
            case NAME -> CompletionItemKind.Variable;
            case UNIT -> CompletionItemKind.Unit;
            case KEYWORD -> CompletionItemKind.Keyword;
        });
        item.setDetail(proposal.detail());
        item.setSortText(proposal.kind().ordinal() + proposal.label());
        boolean snippet = !proposal.slots().isEmpty();
        item.setInsertTextFormat(snippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText);
        String text = snippet ? snippet(proposal) : proposal.text();
        item.setTextEdit(Either.forLeft(new TextEdit(lines.range(proposal.offset(), proposal.length()), text)));
        return item;
    }

    private static String snippet(Proposal proposal) {
        StringBuilder snippet = new StringBuilder();
        int end = 0;
        int number = 1;
        for (Proposal.Slot slot : proposal.slots()) {
            snippet.append(escaped(proposal.text().substring(end, slot.offset())));
            end = slot.offset() + slot.length();
            snippet.append("${").append(number++).append(':').append(escaped(proposal.text().substring(slot.offset(), end))).append('}');
        }
        return snippet.append(escaped(proposal.text().substring(end))).toString();
    }

    private static String escaped(String text) {
        return text.replace("\\", "\\\\").replace("$", "\\$").replace("}", "\\}");
    }

    static DocumentSymbol symbol(ContentsRow row, Lines lines) {
        SymbolKind kind = switch (row.kind()) {
            case FAMILY -> SymbolKind.Class;
            case PROCEDURE, STAGE, SOAK, MAKE_SAFE -> SymbolKind.Module;
            case GROUP -> SymbolKind.Namespace;
            case STEP -> SymbolKind.Method;
            case HAZARD, FAULT -> SymbolKind.Event;
            case LAMP, DISPLAY, MODE, ITEM, INSTRUMENT, PRECONDITION -> SymbolKind.Field;
        };
        String name = row.label().isBlank() ? row.name() : row.label();
        DocumentSymbol symbol = new DocumentSymbol(name.isBlank() ? row.kind().name()
                : name, kind, lines.range(row.offset(), row.end() - row.offset()),
                lines.range(row.offset(), row.length()), row.name());
        symbol.setChildren(row.children().stream().map(child -> symbol(child, lines)).toList());
        return symbol;
    }

    static FoldingRange folding(Fold fold, Lines lines) {
        FoldingRange range = new FoldingRange(lines.at(fold.offset()).getLine(), lines.at(fold.offset() + fold.length()).getLine());
        range.setKind(switch (fold.kind()) {
            case BLOCK -> FoldingRangeKind.Region;
            case COMMENT -> FoldingRangeKind.Comment;
            case IMPORTS -> FoldingRangeKind.Imports;
        });
        return range;
    }

    static Location location(Place place, FolderSession session) {
        return new Location(Addresses.of(place.file()), lines(session, place).range(place.offset(), place.length()));
    }

    private static Lines lines(FolderSession session, Place place) {
        return new Lines(session.text(place.file()).orElse(""));
    }

    static CodeAction action(Fix fix, Remark remark, FolderSession session) {
        CodeAction action = new CodeAction(fix.label());
        action.setKind(CodeActionKind.QuickFix);
        action.setDiagnostics(List.of(diagnostic(remark, new Lines(session.text(remark.file()).orElse("")))));
        action.setEdit(changes(fix.edits(), session));
        return action;
    }

    static WorkspaceEdit changes(List<Edit> edits, FolderSession session) {
        Map<String, List<TextEdit>> changes = new HashMap<>();
        Map<Path, Lines> lines = new HashMap<>();
        Function<Edit, Lines> linesOf = edit -> lines.computeIfAbsent(edit.place().file(), file -> lines(session, edit.place()));
        edits.forEach(edit -> changes.computeIfAbsent(Addresses.of(edit.place().file()), file -> new ArrayList<>())
                .add(textEdit(edit, linesOf.apply(edit))));
        return new WorkspaceEdit(changes);
    }

    static TextEdit textEdit(Edit edit, Lines lines) {
        return new TextEdit(lines.range(edit.place().offset(), edit.place().length()), edit.text());
    }
}
