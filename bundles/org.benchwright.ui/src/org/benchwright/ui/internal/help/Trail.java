package org.benchwright.ui.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The places that were read, in order, and the one that is read now.
 *
 * @param places  what was read
 * @param current which of them is read now; -1 as long as nothing is
 */
record Trail(List<Place> places, int current) {

    static final Trail EMPTY = new Trail(List.of(), -1);

    Trail {
        places = List.copyOf(places);
    }

    /** What is read now. */
    Optional<Place> now() {
        return current < 0 ? Optional.empty() : Optional.of(places.get(current));
    }

    /** Goes to a place; what could have been gone forward to is forgotten, and the same place twice is one. */
    Trail to(Place place) {
        if (now().filter(place::equals).isPresent()) {
            return this;
        }
        List<Place> longer = new ArrayList<>(places.subList(0, current + 1));
        longer.add(place);
        return new Trail(longer, current + 1);
    }

    /** Goes back or forward by so many places, as far as there are any. */
    Trail by(int steps) {
        return places.isEmpty() ? this : new Trail(places, Math.max(0, Math.min(places.size() - 1, current + steps)));
    }
}
