package org.benchwright.language.internal.proof;

import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;
import java.util.Map;

/** At which places the supply may be on as they begin, whichever way led there; from {@code false} everywhere to the least fixpoint. */
final class Liveness {

    private final BitSet live = new BitSet();
    private boolean end;

    /** @param live whether the supply may be on at the beginning */
    Liveness(Spots spots, boolean live) {
        Deque<Integer> open = new ArrayDeque<>();
        BitSet seen = new BitSet();
        open.add(0);
        seen.set(0);
        this.live.set(0, live);
        while (!open.isEmpty()) {
            Spot spot = spots.at(open.remove());
            for (WayOut way : spots.waysOut(spot, Map.of())) {
                boolean on = way.switched().orElse(this.live.get(spot.id()));
                for (Destinations.Destination to : Destinations.of(spots, spot, way)) {
                    take(to, on, seen, open);
                }
            }
        }
    }

    private void take(Destinations.Destination to, boolean on, BitSet seen, Deque<Integer> open) {
        if (to.place().isEmpty()) {
            end |= on;
            return;
        }
        int id = to.place().getAsInt();
        boolean arrives = on && !to.cold();
        if (!seen.get(id) && !to.cold() || arrives && !live.get(id)) {
            seen.set(id);
            live.set(id, live.get(id) || arrives);
            open.add(id);
        }
    }

    /** Whether the supply may be on as a place begins. */
    boolean at(Spot spot) {
        return live.get(spot.id());
    }

    /** Whether it may be on at an end. */
    boolean atEnd() {
        return end;
    }

    /** Of places to a verdict and from there through making safe. */
    static List<Liveness> of(Spots spots, Spots safe) {
        Liveness before = new Liveness(spots, false);
        return List.of(before, new Liveness(safe, before.atEnd()));
    }
}
