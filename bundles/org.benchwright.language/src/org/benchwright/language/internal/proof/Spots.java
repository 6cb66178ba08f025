package org.benchwright.language.internal.proof;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;

import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.language.proof.FlowWay;

/** The places of a plan, or those of its make safe, and what comes after each. Built once, then only read, by any thread. */
final class Spots {

    /** Behind the last place. */
    static final int END = -1;
    /** Behind a stage on demand: nothing is said about what comes next. */
    static final int NOTHING_SAID = -2;

    private final Plan plan;
    private final boolean makingSafe;
    private final List<Spot> all = new ArrayList<>();
    private final Map<String, Integer> byName = new HashMap<>();
    private final Map<String, Integer> firstOf = new HashMap<>();
    /** A walk asks for the same ways thousands of times, and each of them has words. */
    private final Map<Asked, List<WayOut>> ways = new ConcurrentHashMap<>();

    private record Asked(int place, Map<String, Boolean> known) {
    }

    private Spots(Plan plan, boolean makingSafe, List<? extends Stage> stages) {
        this.plan = plan;
        this.makingSafe = makingSafe;
        all.add(new Spot(0, Optional.empty(), Optional.empty()));
        for (Stage stage : stages) {
            firstOf.putIfAbsent(stage.name(), all.size());
            if (stage instanceof WorkStage work) {
                work.steps().forEach(step -> add(stage, Optional.of(step)));
            } else {
                add(stage, Optional.empty());
            }
        }
    }

    /** The places from the beginning to a verdict. */
    static Spots of(Plan plan) {
        return new Spots(plan, false, plan.stages());
    }

    /** The places of making safe. */
    static Spots ofMakeSafe(Plan plan) {
        return new Spots(plan, true, List.of(plan.makeSafe()));
    }

    private void add(Stage stage, Optional<Step> step) {
        Spot spot = new Spot(all.size(), Optional.of(stage), step);
        byName.put(spot.name(), spot.id());
        all.add(spot);
    }

    Plan plan() {
        return plan;
    }

    boolean makingSafe() {
        return makingSafe;
    }

    List<Spot> all() {
        return all;
    }

    Spot at(int id) {
        return all.get(id);
    }

    /** The ways out of a place with these answers known. */
    List<WayOut> waysOut(Spot spot, Map<String, Boolean> known) {
        return ways.computeIfAbsent(new Asked(spot.id(), Map.copyOf(known)), asked -> List.copyOf(findWaysOut(spot, known)));
    }

    private List<WayOut> findWaysOut(Spot spot, Map<String, Boolean> known) {
        if (spot.id() == 0) {
            return makingSafe ? List.of(new WayOut(FlowWay.Kind.NEXT, "", "", new Lead.Onward(), Optional.empty(), Map.of(), false))
                    : WaysOut.ofBeginning(plan);
        }
        return spot.soak().map(soak -> WaysOut.of(soak, plan.family().stopStays()))
                .orElseGet(() -> WaysOut.of(spot.step().orElseThrow(), known, makingSafe));
    }

    /** The place that comes next in the order of the text, {@link #END} or {@link #NOTHING_SAID}. */
    int next(Spot spot) {
        int after = spot.id() + 1;
        if (after < all.size() && spot.stage().isPresent() && all.get(after).stage().equals(spot.stage())) {
            return after;
        }
        if (spot.stage().filter(Spots::onDemand).isPresent()) {
            return NOTHING_SAID;
        }
        while (after < all.size() && onDemand(all.get(after).stage().orElseThrow())) {
            after++;
        }
        return after < all.size() ? after : END;
    }

    static boolean onDemand(Stage stage) {
        return stage instanceof WorkStage work && work.onDemand();
    }

    /** The place that a move leads to; empty where there is none of that name. */
    OptionalInt target(Move.GoTo go) {
        Integer id = go.step().isEmpty() ? firstOf.get(go.stage()) : byName.get(go.stage() + "." + go.step());
        return id == null ? OptionalInt.empty() : OptionalInt.of(id);
    }

    /** Whether a lost supply can lead back to wherever the test last began with everything off. */
    boolean canBeginCold() {
        return !makingSafe && plan.stages().stream().filter(SoakStage.class::isInstance).map(SoakStage.class::cast)
                .anyMatch(soak -> soak.gap().filter(gap -> gap.instead() instanceof Move.BeginAgain).isPresent());
    }

    /** For each place those that can be reached from it, itself included. */
    List<BitSet> reachable() {
        List<BitSet> direct = all.stream().map(this::targets).toList();
        List<BitSet> reach = new ArrayList<>();
        direct.forEach(each -> reach.add((BitSet) each.clone()));
        for (int id = 0; id < all.size(); id++) {
            reach.get(id).set(id);
        }
        // Mostly forward: going backwards through the places settles nearly everything in the first round.
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int id = all.size() - 1; id >= 0; id--) {
                BitSet mine = reach.get(id);
                int before = mine.cardinality();
                direct.get(id).stream().forEach(to -> mine.or(reach.get(to)));
                changed |= mine.cardinality() != before;
            }
        }
        return reach;
    }

    /** Every place that some way out leads to, however often it was taken. */
    private BitSet targets(Spot spot) {
        BitSet targets = new BitSet();
        for (WayOut way : waysOut(spot, Map.of())) {
            Destinations.of(this, spot, way).forEach(each -> each.place().ifPresent(targets::set));
        }
        return targets;
    }
}
