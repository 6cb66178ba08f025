package org.benchwright.ledger.internal.verify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.PlainEvents;
import org.benchwright.ledger.internal.PlainEvents.Part;

/**
 * A row whose cells all have their usual types and lengths, as two pieces: what stands beside the canonical bytes is packed by the database, for
 * asking for a cell takes longer than looking at it. Link and subtree come first, 32 bytes each, then the other columns, a line each.
 */
public final class PackedRow implements StoredRow {

    private static final int LINK = COLUMNS.indexOf("link");
    private static final int SUBTREE_BEGIN = Digest.LENGTH + 1;
    private static final int LINES_BEGIN = 2 * SUBTREE_BEGIN;

    private final byte[] packed;
    private final byte[] canonical;
    /** Where each line begins, and where one after the last would. */
    private final int[] lines;

    private PackedRow(byte[] packed, byte[] canonical, int[] lines) {
        this.packed = packed;
        this.canonical = canonical;
        this.lines = lines;
    }

    /** What the database packs. */
    static String packing() {
        List<String> columns = new ArrayList<>(List.of("link", "subtree"));
        columns.addAll(COLUMNS.subList(0, LINK));
        return "concat_ws(x'0A', " + String.join(", ", columns) + ")";
    }

    /** The row, unless it can't be told where a column ends: one that holds the end of a line is read by itself. */
    public static Optional<PackedRow> of(byte[] packed, byte[] canonical) {
        int[] lines = new int[LINK + 1];
        int line = 0;
        lines[line++] = LINES_BEGIN;
        for (int i = LINES_BEGIN; i < packed.length; i++) {
            if (packed[i] == '\n') {
                if (line == LINK) {
                    return Optional.empty();
                }
                lines[line++] = i + 1;
            }
        }
        if (line < LINK || packed[Digest.LENGTH] != '\n' || packed[LINES_BEGIN - 1] != '\n') {
            return Optional.empty();
        }
        lines[LINK] = packed.length + 1;
        return Optional.of(new PackedRow(packed, canonical, lines));
    }

    /** Whether the columns say what {@code events} read last. */
    boolean agrees(PlainEvents events) {
        for (Part part : Part.values()) {
            // The first line is the place, of which the bytes say nothing.
            int line = part.ordinal() + 1;
            if (!events.says(part, packed, lines[line], lines[line + 1] - 1)) {
                return false;
            }
        }
        return true;
    }

    Cell position() {
        return new Cell(TYPES.get(0), Arrays.copyOfRange(packed, lines[0], lines[1] - 1));
    }

    Digest link() {
        return Digest.ofResult(Arrays.copyOfRange(packed, 0, Digest.LENGTH));
    }

    Digest subtree() {
        return Digest.ofResult(Arrays.copyOfRange(packed, SUBTREE_BEGIN, SUBTREE_BEGIN + Digest.LENGTH));
    }

    /** What stands beside the bytes. */
    public byte[] packed() {
        return packed.clone();
    }

    byte[] canonical() {
        return canonical;
    }

    @Override
    public int length() {
        return canonical.length;
    }

    /** The same, cell by cell. */
    public EventRow cells() {
        List<Cell> cells = new ArrayList<>(COLUMNS.size());
        for (int i = 0; i < LINK; i++) {
            cells.add(new Cell(TYPES.get(i), Arrays.copyOfRange(packed, lines[i], lines[i + 1] - 1)));
        }
        cells.add(Cell.blob(link().bytes()));
        cells.add(Cell.blob(subtree().bytes()));
        cells.add(Cell.blob(canonical));
        return new EventRow(cells);
    }
}
