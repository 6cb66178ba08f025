package org.benchwright.ledger.internal.verify;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchwright.ledger.internal.Event;
import org.benchwright.ledger.internal.EventCodec;

/** One row of the table of events as it was found, {@link #COLUMNS} in order. */
public record EventRow(List<Cell> cells) {

    /** The columns; those from {@code test_id} to {@code kind} must say what the canonical bytes say. */
    public static final List<String> COLUMNS = List.of("position", "test_id", "sequence", "instant", "sitting", "elapsed", "actor", "role", "kind",
            "link", "subtree", "canonical");

    /** As many cells as there are columns. */
    public EventRow {
        cells = List.copyOf(cells);
        if (cells.size() != COLUMNS.size()) {
            throw new IllegalArgumentException("an event row has " + COLUMNS.size() + " cells");
        }
    }

    /** All rows in ledger order. */
    public static String query() {
        String columns = Stream.concat(COLUMNS.stream().limit(COLUMNS.size() - 1L).map(column -> Cell.columns(column, Cell.SHORT)),
                Stream.of(Cell.columns("canonical", EventCodec.LONGEST))).collect(Collectors.joining(", "));
        return "SELECT " + columns + " FROM event ORDER BY position";
    }

    /** The cell of a column. */
    public Cell cell(String column) {
        return cells.get(COLUMNS.indexOf(column));
    }

    /** What the columns beside the canonical bytes of {@code event} must hold, from {@code test_id} to {@code kind}. */
    static List<Cell> columnsOf(Event event) {
        return List.of(Cell.text(event.test().value()), Cell.whole(event.sequence()), Cell.text(event.instant().toString()),
                Cell.whole(event.sitting()), Cell.text(event.offset().toString()), Cell.text(event.actor().id()),
                Cell.text(event.actor().role().word()), Cell.text(event.kind()));
    }
}
