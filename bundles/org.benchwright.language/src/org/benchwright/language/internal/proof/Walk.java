package org.benchwright.language.internal.proof;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;

/**
 * A test on its way through a plan, as the engine goes it: what was taken how often, what was answered for good, whether the supply is on
 * and where the test last began with everything off.
 */
final class Walk {

    private final Spots spots;
    private final boolean cold;
    private final List<BitSet> reachable;
    /** From which place a count is asked for, by its name. */
    private final Map<String, Integer> counted = new HashMap<>();
    /** From which places an answer is asked for, by its key. */
    private final Map<String, Set<Integer>> asked = new HashMap<>();

    /**
     * Where a test is and what matters about how it came there: of counts and answers only those that can still matter.
     *
     * @param place   the place
     * @param taken   how often bounded ways were taken
     * @param answers answers that hold for the whole test
     * @param live    whether the supply is on; false where it can't matter
     * @param cold    where the test last began with everything off; 0 where it can't matter
     */
    record State(int place, Map<String, Integer> taken, Map<String, Boolean> answers, boolean live, int cold) {
        State {
            taken = Map.copyOf(taken);
            answers = Map.copyOf(answers);
        }
    }

    /**
     * One hop of a test.
     *
     * @param way     by which way out
     * @param to      where it is then; empty where it has ended
     * @param verdict how it has ended; empty where it goes on, and where make safe is over
     * @param reason  why it has ended
     */
    record Hop(WayOut way, Optional<State> to, Optional<Verdict> verdict, String reason) {
    }

    Walk(Spots spots) {
        this.spots = spots;
        cold = spots.canBeginCold();
        reachable = spots.reachable();
        spots.all().forEach(this::note);
    }

    Spots spots() {
        return spots;
    }

    State start() {
        return new State(0, Map.of(), Map.of(), false, 0);
    }

    /** Takes down what is counted and what is asked at a place. */
    private void note(Spot spot) {
        spot.step().stream().flatMap(step -> step.actions().stream()).filter(Action.Branch.class::isInstance)
                .flatMap(branch -> ((Action.Branch) branch).remembered().stream())
                .forEach(key -> asked.computeIfAbsent(key, each -> new HashSet<>()).add(spot.id()));
        spots.waysOut(spot, Map.of()).forEach(way -> {
            if (way.lead() instanceof Lead.Moved moved) {
                note(spot, way, moved.move());
            } else if (way.lead() instanceof Lead.PowerLost) {
                counted.put(again(spot), spot.id());
            }
        });
    }

    private void note(Spot spot, WayOut way, Move move) {
        if (move instanceof Move.GoTo go && go.bound().isPresent()) {
            counted.put(key(spot, way, go), spot.id());
            note(spot, way, go.bound().get().instead());
        } else if (move instanceof Move.BeginAgain again) {
            counted.put(again(spot), spot.id());
            note(spot, way, again.bound().instead());
        }
    }

    private static String key(Spot spot, WayOut way, Move.GoTo go) {
        return spot.name() + "." + way.check() + " to " + go.stage() + "." + go.step();
    }

    private static String again(Spot spot) {
        return spot.name() + " again";
    }

    /** Every hop from here, each of them possible. */
    List<Hop> hops(State state) {
        List<Hop> hops = new ArrayList<>();
        Spot spot = spots.at(state.place());
        for (WayOut way : spots.waysOut(spot, state.answers())) {
            hops.add(new Going(state, spot, way).hop());
        }
        return hops;
    }

    /** One way out being taken. */
    private final class Going {

        private final Spot spot;
        private final WayOut way;
        private final Map<String, Integer> taken;
        private final Map<String, Boolean> answers;
        private final int coldPlace;
        private boolean live;

        Going(State state, Spot spot, WayOut way) {
            this.spot = spot;
            this.way = way;
            taken = new HashMap<>(state.taken());
            answers = new HashMap<>(state.answers());
            answers.putAll(way.answered());
            live = way.switched().orElse(state.live());
            coldPlace = state.cold();
        }

        Hop hop() {
            if (way.lead() instanceof Lead.Moved moved) {
                return move(moved.move());
            } else if (way.lead() instanceof Lead.PowerLost lost) {
                return powerLost(lost.move());
            } else if (way.lead() instanceof Lead.Undecided undecided) {
                return ended(Verdict.UNDECIDED, undecided.reason());
            }
            return onward();
        }

        private Hop move(Move move) {
            if (move instanceof Move.GoTo go) {
                return goTo(go);
            } else if (move instanceof Move.BeginAgain again) {
                return count(again(spot), again.bound().atMost()) ? arrive(spot.id()) : move(again.bound().instead());
            } else if (spots.makingSafe()) {
                return onward();
            } else if (move instanceof Move.Conclude conclude) {
                return ended(conclude.verdict(), conclude.reason().isEmpty() ? way.words() : conclude.reason());
            }
            return ended(Verdict.UNDECIDED, ProofText.of("why.refused", ((Move.ReleaseBy) move).statement()));
        }

        private Hop goTo(Move.GoTo go) {
            String key = key(spot, way, go);
            if (go.bound().isPresent() && !count(key, go.bound().get().atMost())) {
                return move(go.bound().get().instead());
            }
            if (go.bound().isEmpty() && counted.containsKey(key)) {
                taken.merge(key, 1, Integer::sum);
            }
            OptionalInt target = spots.target(go);
            return target.isPresent() ? arrive(target.getAsInt()) : ended(Verdict.UNDECIDED, ProofText.of("why.nothingSaid"));
        }

        private boolean count(String key, int atMost) {
            if (taken.getOrDefault(key, 0) >= atMost) {
                return false;
            }
            taken.merge(key, 1, Integer::sum);
            return true;
        }

        private Hop powerLost(Move move) {
            if (move instanceof Move.BeginAgain again) {
                if (!count(again(spot), again.bound().atMost())) {
                    return powerLost(again.bound().instead());
                }
                live = false;
                return arrive(coldPlace);
            }
            boolean says = move instanceof Move.Conclude;
            return says ? move(move) : ended(Verdict.UNDECIDED, way.words());
        }

        private Hop onward() {
            int next = spots.next(spot);
            if (next >= 0) {
                return arrive(next);
            } else if (spots.makingSafe()) {
                return new Hop(way, Optional.empty(), Optional.empty(), "");
            } else if (next == Spots.NOTHING_SAID) {
                return ended(Verdict.UNDECIDED, ProofText.of("why.nothingSaid"));
            }
            return ended(spots.plan().end().verdict(), spots.plan().end().reason());
        }

        private Hop ended(Verdict verdict, String reason) {
            return new Hop(way, Optional.empty(), Optional.of(verdict), reason);
        }

        private Hop arrive(int place) {
            BitSet ahead = reachable.get(place);
            taken.keySet().removeIf(key -> !counted.containsKey(key) || !ahead.get(counted.get(key)));
            answers.keySet().removeIf(key -> asked.getOrDefault(key, Set.of()).stream().noneMatch(ahead::get));
            Spot there = spots.at(place);
            boolean on = live && !there.switchesOnFirst();
            int begun = !on && there.step().isPresent() ? place : coldPlace;
            State to = new State(place, taken, answers, cold && on, cold ? begun : 0);
            return new Hop(way, Optional.of(to), Optional.empty(), "");
        }
    }
}
