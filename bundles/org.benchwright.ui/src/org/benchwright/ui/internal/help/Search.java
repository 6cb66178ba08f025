package org.benchwright.ui.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All places on a page where something stands. */
final class Search {

    private final List<Passage.Found> all = new ArrayList<>();

    /**
     * A search.
     *
     * @param passages the words of the page
     * @param sought   what is looked for, in any letter case; nothing is nowhere
     */
    Search(List<Passage> passages, String sought) {
        for (Passage passage : passages) {
            Optional<Passage.Found> found = passage.find(sought, 0);
            while (found.isPresent()) {
                all.add(found.get());
                found = passage.find(sought, found.get().within() + sought.length());
            }
        }
    }

    /** The first of all. */
    Hit first() {
        return hit(0);
    }

    /** The first that begins behind a place; the first of all, where none does. */
    Hit behind(int place) {
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).start() > place) {
                return hit(i);
            }
        }
        return hit(0);
    }

    /** The last that begins before a place; the last of all, where none does. */
    Hit before(int place) {
        for (int i = all.size() - 1; i >= 0; i--) {
            if (all.get(i).start() < place) {
                return hit(i);
            }
        }
        return hit(all.size() - 1);
    }

    private Hit hit(int index) {
        return all.isEmpty() ? new Hit(Optional.empty(), 0, 0) : new Hit(Optional.of(all.get(index)), index + 1, all.size());
    }

    /**
     * One of them.
     *
     * @param found  where
     * @param number which it is, from 1; 0 if there is none
     * @param of     how many there are
     */
    record Hit(Optional<Passage.Found> found, int number, int of) {
    }
}
