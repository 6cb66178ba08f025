package org.benchwright.ui.internal.author;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.language.editing.Meaning;
import org.benchwright.language.editing.Style;

/**
 * The meanings of a text's passages, kept up with typing: what is typed within or right behind a word takes that word's meaning until the
 * language has looked again.
 */
final class StyleRuns {

    private List<Style> runs = List.of();

    /**
     * Takes what the language found.
     *
     * @return the first and the last offset between which something is different now; empty where nothing is
     */
    int[] replace(List<Style> found) {
        int same = 0;
        int most = Math.min(runs.size(), found.size());
        while (same < most && runs.get(same).equals(found.get(same))) {
            same++;
        }
        int sameAtEnd = 0;
        while (sameAtEnd < most - same && runs.get(runs.size() - 1 - sameAtEnd).equals(found.get(found.size() - 1 - sameAtEnd))) {
            sameAtEnd++;
        }
        List<Style> gone = runs.subList(same, runs.size() - sameAtEnd);
        List<Style> come = found.subList(same, found.size() - sameAtEnd);
        runs = found;
        if (gone.isEmpty() && come.isEmpty()) {
            return new int[0];
        }
        int begin = Math.min(gone.isEmpty() ? Integer.MAX_VALUE : gone.get(0).offset(), come.isEmpty() ? Integer.MAX_VALUE : come.get(0).offset());
        int end = Math.max(gone.isEmpty() ? 0 : gone.get(gone.size() - 1).end(), come.isEmpty() ? 0 : come.get(come.size() - 1).end());
        return new int[] {begin, end};
    }

    /** Moves the runs with an edit of the text. */
    void edited(int offset, int removed, String inserted) {
        boolean joins = !inserted.isEmpty() && inserted.chars().noneMatch(Character::isWhitespace);
        List<Style> moved = new ArrayList<>(runs.size());
        for (Style run : runs) {
            int begin = moved(run.offset(), offset, removed, inserted.length(), false);
            boolean within = run.offset() < offset && (run.end() > offset || run.end() == offset && joins && run.meaning() != Meaning.PLAIN);
            int end = within ? Math.max(offset, run.end() - removed) + inserted.length()
                    : moved(run.end(), offset, removed, inserted.length(), true);
            if (run.offset() < offset && run.end() > offset && run.end() < offset + removed) {
                end = offset + inserted.length();
            }
            if (end > begin) {
                moved.add(new Style(begin, end - begin, run.meaning()));
            }
        }
        runs = withoutOverlaps(moved);
    }

    private static int moved(int place, int offset, int removed, int inserted, boolean isEnd) {
        if (place < offset || place == offset && isEnd) {
            return place;
        }
        return place >= offset + removed ? place - removed + inserted : offset + inserted;
    }

    private static List<Style> withoutOverlaps(List<Style> runs) {
        List<Style> apart = new ArrayList<>(runs.size());
        int end = 0;
        for (Style run : runs) {
            int begin = Math.max(end, run.offset());
            if (run.end() > begin) {
                apart.add(new Style(begin, run.end() - begin, run.meaning()));
                end = run.end();
            }
        }
        return apart;
    }

    /** The runs that reach into a passage. */
    List<Style> within(int begin, int end) {
        int low = 0;
        int high = runs.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (runs.get(middle).end() <= begin) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        int last = low;
        while (last < runs.size() && runs.get(last).offset() < end) {
            last++;
        }
        return runs.subList(low, last);
    }
}
