package org.benchwright.present;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.present.internal.FaultLines;
import org.benchwright.present.internal.HouseWords;

/**
 * Explains the lines of a fault log while they are typed or pasted.
 *
 * @param notes what the family's notes tell
 */
public record FaultNotes(List<FaultExplanation> notes) {

    public FaultNotes {
        notes = List.copyOf(notes);
    }

    /**
     * A line of a fault log, as a row of a table.
     *
     * @param code  the code
     * @param text  what stands beside it, may be empty
     * @param words what the family's notes tell of it, or that they don't
     * @param known whether they do
     */
    public record Row(String code, String text, String words, boolean known) {
    }

    /** What the family's notes tell of a code, or that they don't; nothing of no code, and that the log is empty where that is said. */
    public Row explain(String code, String text) {
        if (code.isBlank() || FaultLines.isNone(code) && text.isBlank()) {
            return new Row(code, text, code.isBlank() ? "" : HouseWords.FAULT_LOG_EMPTY.text(), true);
        }
        return note(code).map(note -> new Row(code, text, words(note), true)).orElseGet(() -> new Row(code, text, HouseWords.FAULT_NOT_IN_NOTES.text(), false));
    }

    /**
     * The rows of what was typed or pasted. Where a line of a table was pasted whose first cell is no code of the family, and exactly one other cell
     * is, that one is the code, and the others stand beside it in their order.
     *
     * @param typed lines; columns of a table are separated by tabs
     */
    public List<Row> rows(String typed) {
        if (FaultLines.isNone(typed)) {
            return List.of(explain(typed.strip(), ""));
        }
        String ordered = typed.lines().map(this::codeFirst).collect(Collectors.joining("\n"));
        return FaultLines.of(ordered).stream().map(line -> explain(line.code(), line.text().replace('\t', ' '))).toList();
    }

    /** How rows are handed in as an answer: a line each, those without anything left out. */
    public static String answer(List<Row> rows) {
        return rows.stream().map(row -> (row.code().strip() + " " + row.text().strip()).strip()).filter(line -> !line.isEmpty()).collect(Collectors.joining("\n"));
    }

    private String codeFirst(String line) {
        List<String> cells = Stream.of(line.split("\t")).map(String::strip).filter(cell -> !cell.isEmpty()).toList();
        List<String> codes = cells.stream().filter(cell -> note(cell).isPresent()).toList();
        boolean elsewhere = cells.size() > 1 && codes.size() == 1 && !codes.get(0).equals(cells.get(0));
        return elsewhere ? Stream.concat(codes.stream(), cells.stream().filter(cell -> !cell.equals(codes.get(0)))).collect(Collectors.joining("\t")) : line;
    }

    private Optional<FaultExplanation> note(String code) {
        return notes.stream().filter(note -> note.code().equals(code)).findFirst();
    }

    private static String words(FaultExplanation note) {
        String next = note.next().isEmpty() ? note.means() : note.next();
        return next.isEmpty() ? note.title() : HouseWords.FAULT_NOTE_NEXT.text(note.title(), next);
    }
}
