package org.benchwright.ledger.internal.verify;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.InstantText;

/**
 * What is stored at one place of a table, whatever it is: SQLite's storage class, and the bytes (of a number, those of its decimal text).
 *
 * @param type  null, integer, real, text or blob
 * @param bytes the content; not copied, a cell is read once and looked at
 */
public record Cell(String type, byte[] bytes) {

    /** Most bytes that are read of an ordinary cell; a longer one is wrong anyway. */
    public static final int SHORT = 4096;

    /** The cell that holds nothing. */
    static final Cell NOTHING = new Cell("null", new byte[0]);

    /** The cell that holds a whole number. */
    public static Cell whole(long value) {
        return new Cell("integer", Long.toString(value).getBytes(StandardCharsets.US_ASCII));
    }

    /** The cell that holds bytes. */
    public static Cell blob(byte[] value) {
        return new Cell("blob", value);
    }

    /** The two result columns from which {@link #read} makes a cell; at most {@code longest} bytes and one more. */
    public static String columns(String column, long longest) {
        return "typeof(" + column + "), substr(CAST(" + column + " AS BLOB), 1, " + (longest + 1) + ")";
    }

    /** Reads {@code count} cells of the current row. */
    public static List<Cell> read(ResultSet row, int count) throws SQLException {
        List<Cell> cells = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            byte[] bytes = row.getBytes(2 * i + 2);
            cells.add(new Cell(row.getString(2 * i + 1), bytes == null ? new byte[0] : bytes));
        }
        return cells;
    }

    /** Whether this is that text. */
    public boolean isText(String value) {
        return type.equals("text") && (isAscii(value) || Arrays.equals(bytes, value.getBytes(StandardCharsets.UTF_8)));
    }

    /** Whether this is that number. */
    public boolean isWhole(long value) {
        return isWhole(Long.toString(value));
    }

    /** Whether this is the number that is written so. */
    boolean isWhole(String value) {
        return type.equals("integer") && isAscii(value);
    }

    /** Whether the bytes are those letters, all of them ASCII. */
    private boolean isAscii(String value) {
        if (value.length() != bytes.length) {
            return false;
        }
        for (int i = 0; i < bytes.length; i++) {
            if (bytes[i] != value.charAt(i) || bytes[i] < 0) {
                return false;
            }
        }
        return true;
    }

    /** Whether this is those bytes. */
    public boolean isBlob(byte[] value) {
        return equals(blob(value));
    }

    /** Whether nothing is stored. */
    public boolean isNothing() {
        return type.equals("null");
    }

    /** The text, when it is one. Bytes that are no UTF-8 become replacement characters, which nothing that is looked for has. */
    public Optional<String> text() {
        return type.equals("text") ? Optional.of(new String(bytes, StandardCharsets.UTF_8)) : Optional.empty();
    }

    /** The number, when it is a whole one. */
    public OptionalLong whole() {
        return type.equals("integer") ? OptionalLong.of(Long.parseLong(new String(bytes, StandardCharsets.US_ASCII)))
                : OptionalLong.empty();
    }

    /** The instant, when it is written exactly as the ledger writes it. */
    public Optional<Instant> instant() {
        return text().flatMap(InstantText::read);
    }

    /** The digest, when it can be one. */
    public Optional<Digest> digest() {
        return type.equals("blob") && bytes.length == 32 ? Optional.of(Digest.ofResult(bytes)) : Optional.empty();
    }

    /** The bytes, when it is a blob. */
    public Optional<byte[]> blob() {
        return type.equals("blob") ? Optional.of(bytes) : Optional.empty();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Cell that && type.equals(that.type) && Arrays.equals(bytes, that.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }
}
