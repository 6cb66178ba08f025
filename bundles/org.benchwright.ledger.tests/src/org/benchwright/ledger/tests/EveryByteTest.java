package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.benchwright.core.Digest;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.Verification;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.internal.verify.Cell;
import org.benchwright.ledger.internal.verify.DecodedRow;
import org.benchwright.ledger.internal.verify.EventInspector;
import org.benchwright.ledger.internal.verify.EventInspector.Before;
import org.benchwright.ledger.internal.verify.EventRow;
import org.benchwright.ledger.internal.verify.PackedRow;
import org.benchwright.ledger.internal.verify.StoredRow;
import org.benchwright.ledger.internal.verify.TestPoint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Changes every byte that is stored, one after the other; each change is found. */
class EveryByteTest {

    private static final int LINK = StoredRow.COLUMNS.indexOf("link");

    @TempDir
    Path folder;

    /** A stored row and what came before it in the untouched ledger. */
    private record Place(EventRow row, Before before) {
    }

    @Test
    void everyByteOfEveryCellOfAThousandEvents() throws Exception {
        List<Place> places = places(SampleLedger.build(folder, 6, 170));
        assertEquals(1019, places.size());
        long changes = places.parallelStream().mapToLong(EveryByteTest::changeAll).sum();
        long bytes = places.stream().flatMap(place -> place.row().cells().stream()).mapToLong(cell -> cell.bytes().length).sum();
        assertTrue(changes >= bytes, changes + " changes of " + bytes + " bytes");
    }

    private static long changeAll(Place place) {
        long count = 0;
        for (int column = 0; column < StoredRow.COLUMNS.size(); column++) {
            for (Cell changed : changes(place.row().cells().get(column))) {
                assertFound(place, column, changed);
                count++;
            }
        }
        return count;
    }

    private static void assertFound(Place place, int column, Cell changed) {
        List<Cell> cells = new ArrayList<>(place.row().cells());
        cells.set(column, changed);
        List<StoredRow> rows = new ArrayList<>(List.of(new EventRow(cells)));
        pack(cells).ifPresent(rows::add);
        for (StoredRow row : rows) {
            assertFalse(EventInspector.inspect(DecodedRow.of(row), place.before()).faults().isEmpty(),
                    () -> StoredRow.COLUMNS.get(column) + " of position " + place.before().position());
        }
    }

    /** The row as the database packs it, if it packs such a one. */
    private static Optional<PackedRow> pack(List<Cell> cells) {
        boolean usual = IntStream.range(0, cells.size()).allMatch(i -> cells.get(i).type().equals(StoredRow.TYPES.get(i)))
                && cells.get(LINK).bytes().length == Digest.LENGTH && cells.get(LINK + 1).bytes().length == Digest.LENGTH;
        if (!usual) {
            return Optional.empty();
        }
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        packed.writeBytes(cells.get(LINK).bytes());
        packed.write('\n');
        packed.writeBytes(cells.get(LINK + 1).bytes());
        for (Cell cell : cells.subList(0, LINK)) {
            packed.write('\n');
            packed.writeBytes(cell.bytes());
        }
        return PackedRow.of(packed.toByteArray(), cells.get(LINK + 2).bytes());
    }

    /** The cell with each of its bytes changed (of a number, bits of each weight), cut short, longer, of other types, and nothing. */
    private static List<Cell> changes(Cell cell) {
        List<Cell> changes = new ArrayList<>(List.of(new Cell("null", new byte[0]), new Cell("real", cell.bytes())));
        if (cell.whole().isPresent()) {
            for (int bit : new int[] {0, 1, 2, 7, 8, 15, 16, 31, 32, 62, 63}) {
                changes.add(Cell.whole(cell.whole().getAsLong() ^ 1L << bit));
            }
            return changes;
        }
        changes.add(new Cell(cell.type().equals("text") ? "blob" : "text", cell.bytes()));
        changes.add(new Cell(cell.type(), Arrays.copyOf(cell.bytes(), cell.bytes().length - 1)));
        changes.add(new Cell(cell.type(), Arrays.copyOf(cell.bytes(), cell.bytes().length + 1)));
        for (int i = 0; i < cell.bytes().length; i++) {
            byte[] bytes = cell.bytes().clone();
            bytes[i] ^= (byte) (1 << i % 8);
            changes.add(new Cell(cell.type(), bytes));
        }
        return changes;
    }

    /** Those changes that the strict tables of the ledger take, without numbers that other rows have. */
    private static List<Cell> sameType(Cell cell) {
        return changes(cell).stream().filter(changed -> changed.type().equals(cell.type())
                && (changed.whole().isEmpty() || Math.abs(changed.whole().getAsLong()) > 1000)).toList();
    }

    private static List<Place> places(Path ledger) throws Exception {
        List<Place> places = new ArrayList<>();
        Map<TestId, TestPoint> points = new HashMap<>();
        Optional<CompactRange> tree = Optional.of(CompactRange.empty());
        try (Tamper reader = Tamper.with(ledger);
                Statement statement = reader.connection().createStatement();
                ResultSet rows = statement.executeQuery(StoredRow.query())) {
            while (rows.next()) {
                PackedRow row = (PackedRow) StoredRow.read(rows);
                Map<TestId, TestPoint> known = Map.copyOf(points);
                Before before = new Before(places.size() + 1L, test -> known.getOrDefault(test, TestPoint.before(test)), tree);
                EventInspector.Result result = EventInspector.inspect(DecodedRow.of(row), before);
                assertEquals(List.of(), result.faults());
                points.put(result.test().orElseThrow(), result.point().orElseThrow());
                tree = result.tree();
                assertArrayEquals(pack(row.cells().cells()).orElseThrow().packed(), row.packed());
                places.add(new Place(row.cells(), before));
            }
        }
        return places;
    }

    @Test
    void someOfTheseChangesThroughTheFile() throws Exception {
        Path ledger = SampleLedger.build(folder, 3, 60);
        byte[] untouched = Files.readAllBytes(ledger);
        Random random = new Random(7);
        for (int i = 0; i < 120; i++) {
            long position = 1 + random.nextInt(179);
            String column = StoredRow.COLUMNS.get(i % StoredRow.COLUMNS.size());
            change(ledger, "event", "position", column, position, random);
            Verification verification = LedgerVerifier.verify(VerificationRequest.of(ledger));
            assertFalse(verification.clean(), column + " of position " + position);
            Files.write(ledger, untouched);
        }
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(ledger)).clean());
    }

    private static void change(Path ledger, String table, String key, String column, long row, Random random) throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.behindTheTriggers(work -> {
                Cell cell = cell(work, table, key, column, row);
                List<Cell> changes = sameType(cell);
                update(work, table, key, column, row, changes.get(random.nextInt(changes.size())));
            });
        }
    }

    @Test
    void everyByteOfDocumentsSignersAndCheckpointsThroughTheFile() throws Exception {
        Path ledger = SampleLedger.build(folder, 2, 3);
        byte[] untouched = Files.readAllBytes(ledger);
        int changes = 0;
        for (String[] table : new String[][] {{"document", "number", "digest", "kind", "size", "content", "link"},
            {"signer", "number", "fingerprint", "public_key", "first_seen", "signature"},
            {"checkpoint", "number", "size", "root", "documents", "documents_link", "instant", "signer", "signature"}}) {
            for (int column = 1; column < table.length; column++) {
                changes += changeAll(ledger, untouched, table[0], table[column]);
            }
        }
        assertTrue(changes > 500, changes + " changes");
    }

    private static int changeAll(Path ledger, byte[] untouched, String table, String column) throws Exception {
        List<Cell> changes;
        try (Tamper look = Tamper.with(ledger)) {
            changes = sameType(cell(look, table, "number", column, 1));
        }
        for (Cell changed : changes) {
            try (Tamper tamper = Tamper.with(ledger)) {
                tamper.behindTheTriggers(work -> update(work, table, "number", column, 1, changed));
            }
            assertFalse(LedgerVerifier.verify(VerificationRequest.of(ledger)).clean(), table + "." + column);
            Files.write(ledger, untouched);
        }
        return changes.size();
    }

    private static Cell cell(Tamper tamper, String table, String key, String column, long row) throws SQLException {
        String sql = "SELECT " + Cell.columns(column, 1 << 20) + " FROM " + table + " WHERE " + key + " = " + row;
        try (Statement statement = tamper.connection().createStatement(); ResultSet found = statement.executeQuery(sql)) {
            return Cell.read(found, 1).get(0);
        }
    }

    private static void update(Tamper tamper, String table, String key, String column, long row, Cell to) throws SQLException {
        String place = to.type().equals("text") ? "CAST(? AS TEXT)" : "?";
        String sql = "UPDATE " + table + " SET " + column + " = " + place + " WHERE " + key + " = " + row;
        try (PreparedStatement statement = tamper.connection().prepareStatement(sql)) {
            if (to.whole().isPresent()) {
                statement.setLong(1, to.whole().getAsLong());
            } else {
                statement.setBytes(1, to.bytes());
            }
            assertEquals(1, statement.executeUpdate());
        }
    }

    @Test
    void everyByteOfTheFileEitherMattersOrChangesNothing() throws Exception {
        Path ledger = SampleLedger.build(folder, 2, 3);
        byte[] untouched = Files.readAllBytes(ledger);
        String before = LedgerContent.of(ledger);
        int unread = 0;
        int found = 0;
        for (int i = 0; i < untouched.length; i += 173) {
            byte[] changed = untouched.clone();
            changed[i] ^= (byte) (1 << i % 8);
            Files.write(ledger, changed);
            try {
                Verification verification = LedgerVerifier.verify(VerificationRequest.of(ledger));
                if (verification.clean()) {
                    assertEquals(before, LedgerContent.of(ledger), "byte " + i);
                }
                found += verification.clean() ? 0 : 1;
            } catch (LedgerException cannotRead) {
                unread++;
            }
        }
        assertTrue(found > 20, found + " found, " + unread + " unreadable");
    }
}
