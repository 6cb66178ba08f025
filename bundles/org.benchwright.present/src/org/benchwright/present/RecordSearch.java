package org.benchwright.present;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A search over the rows of records. What each row can be found by is put together once, when it is added: a hundred thousand rows are then
 * gone through between two letters that are typed. Immutable.
 */
public final class RecordSearch {

    private static final RecordSearch NONE = new RecordSearch(List.of());

    private final List<Entry> entries;

    private RecordSearch(List<Entry> entries) {
        this.entries = entries;
    }

    /**
     * A row.
     *
     * @param row   the row
     * @param words all that it can be found by, in small letters
     */
    private record Entry(RecordRow row, String words) {
        static Entry of(RecordRow row) {
            Stream<String> own = Stream.of(row.test(), row.serial(), row.family(), row.procedure(), row.technician(), row.state());
            return new Entry(row, Stream.concat(own, row.findable().stream()).collect(Collectors.joining("\n")).toLowerCase(Locale.ROOT));
        }
    }

    /** A search over nothing. */
    public static RecordSearch none() {
        return NONE;
    }

    /** A search over these rows behind those of this one. */
    public RecordSearch and(List<RecordRow> more) {
        List<Entry> all = new ArrayList<>(entries.size() + more.size());
        all.addAll(entries);
        more.forEach(row -> all.add(Entry.of(row)));
        return new RecordSearch(all);
    }

    /** How many rows there are. */
    public int size() {
        return entries.size();
    }

    /**
     * What was found.
     *
     * @param rows  the first rows
     * @param count how many there are, those included
     */
    public record Found(List<RecordRow> rows, int count) {
        public Found {
            rows = List.copyOf(rows);
        }
    }

    /** The rows in which every word of the search text occurs, in their order, letter case ignored; an empty text finds every row. */
    public List<RecordRow> found(String search) {
        return found(search, entries.size()).rows();
    }

    /** The same, but no more rows than {@code atMost}. */
    public Found found(String search, int atMost) {
        String text = search.strip().toLowerCase(Locale.ROOT);
        List<String> words = text.isEmpty() ? List.of() : Arrays.asList(text.split("\\s+"));
        List<RecordRow> rows = new ArrayList<>();
        int count = 0;
        for (Entry entry : entries) {
            if (words.stream().allMatch(entry.words()::contains) && ++count <= atMost) {
                rows.add(entry.row());
            }
        }
        return new Found(rows, count);
    }
}
