package org.benchwright.ui.internal.help;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Words of the page that belong together, though they may stand in several lines of a cell.
 *
 * @param words what they say
 * @param at    where each of their characters stands in the text of the page
 */
record Passage(String words, List<Integer> at) {

    Passage {
        at = List.copyOf(at);
    }

    /** Where it begins in the text of the page. */
    int start() {
        return at.get(0);
    }

    /** The first place from a character on where something stands, in any letter case. */
    Optional<Found> find(String sought, int from) {
        int place = words.toLowerCase(Locale.ROOT).indexOf(sought.toLowerCase(Locale.ROOT), from);
        if (place < 0 || sought.isEmpty()) {
            return Optional.empty();
        }
        int last = place + 1;
        while (last < place + sought.length() && at.get(last) == at.get(last - 1) + 1) {
            last++;
        }
        return Optional.of(new Found(place, at.get(place), last - place));
    }

    /**
     * What was found.
     *
     * @param within where it begins within the passage
     * @param start  where it begins in the text of the page
     * @param length how much of it stands together there
     */
    record Found(int within, int start, int length) {
    }
}
