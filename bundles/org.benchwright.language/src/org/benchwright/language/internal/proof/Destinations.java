package org.benchwright.language.internal.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Move;

/** Everywhere that a way out can lead, the first time and once its bound is used up. */
final class Destinations {

    private final Spots spots;
    private final Spot from;
    private final WayOut way;
    private final List<Destination> found = new ArrayList<>();

    /**
     * A place or an end.
     *
     * @param place   the place; empty for an end
     * @param verdict the verdict; empty for a place, and where make safe is over
     * @param reason  why it ends
     * @param atMost  how often, where it is bounded
     * @param cold    true for wherever the test last began with everything off, which may be any step
     */
    record Destination(OptionalInt place, Optional<Verdict> verdict, String reason, OptionalInt atMost, boolean cold) {
    }

    private Destinations(Spots spots, Spot from, WayOut way) {
        this.spots = spots;
        this.from = from;
        this.way = way;
    }

    static List<Destination> of(Spots spots, Spot from, WayOut way) {
        Destinations all = new Destinations(spots, from, way);
        if (way.lead() instanceof Lead.Onward) {
            all.onward();
        } else if (way.lead() instanceof Lead.Moved moved) {
            all.move(moved.move());
        } else if (way.lead() instanceof Lead.PowerLost lost) {
            all.powerLost(lost.move());
        } else if (way.lead() instanceof Lead.Undecided undecided) {
            all.end(Verdict.UNDECIDED, undecided.reason());
        }
        return all.found;
    }

    private void place(int id, OptionalInt atMost) {
        found.add(new Destination(OptionalInt.of(id), Optional.empty(), "", atMost, false));
    }

    private void end(Verdict verdict, String reason) {
        found.add(new Destination(OptionalInt.empty(), Optional.of(verdict), reason, OptionalInt.empty(), false));
    }

    private void onward() {
        int next = spots.next(from);
        if (next >= 0) {
            place(next, OptionalInt.empty());
        } else if (spots.makingSafe()) {
            found.add(new Destination(OptionalInt.empty(), Optional.empty(), "", OptionalInt.empty(), false));
        } else if (next == Spots.NOTHING_SAID) {
            end(Verdict.UNDECIDED, ProofText.of("why.nothingSaid"));
        } else {
            end(spots.plan().end().verdict(), spots.plan().end().reason());
        }
    }

    private void move(Move move) {
        if (move instanceof Move.GoTo go) {
            OptionalInt atMost = go.bound().map(bound -> OptionalInt.of(bound.atMost())).orElseGet(OptionalInt::empty);
            spots.target(go).ifPresent(id -> place(id, atMost));
            go.bound().ifPresent(bound -> move(bound.instead()));
        } else if (move instanceof Move.BeginAgain again) {
            place(from.id(), OptionalInt.of(again.bound().atMost()));
            move(again.bound().instead());
        } else if (spots.makingSafe()) {
            onward(); // a release takes the place of an end, and is asked for until it is given
        } else if (move instanceof Move.Conclude conclude) {
            end(conclude.verdict(), conclude.reason().isEmpty() ? way.words() : conclude.reason());
        } else if (move instanceof Move.ReleaseBy release) {
            end(Verdict.UNDECIDED, ProofText.of("why.refused", release.statement()));
        }
    }

    private void powerLost(Move move) {
        if (move instanceof Move.BeginAgain again) {
            OptionalInt atMost = OptionalInt.of(again.bound().atMost());
            spots.all().stream().filter(spot -> spot.step().isPresent())
                    .forEach(spot -> found.add(new Destination(OptionalInt.of(spot.id()), Optional.empty(), "", atMost, true)));
            powerLost(again.bound().instead());
        } else if (move instanceof Move.Conclude conclude) {
            end(conclude.verdict(), conclude.reason().isEmpty() ? way.words() : conclude.reason());
        } else {
            end(Verdict.UNDECIDED, way.words());
        }
    }
}
