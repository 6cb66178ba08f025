package org.benchwright.language.internal.proof;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

import org.benchwright.core.Durations;
import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.language.editing.Passage;
import org.benchwright.language.editing.Place;
import org.benchwright.language.internal.proof.Destinations.Destination;
import org.benchwright.language.proof.FlowDiagram;
import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.FlowPlace.Mark;
import org.benchwright.language.proof.FlowWay;
import org.benchwright.language.proof.FlowWay.Kind;

/** Makes a diagram of a plan's flow. */
final class Drawing {

    private final Set<Integer> reached;
    private final Map<String, Passage> texts;
    private final List<Liveness> live;
    private final List<FlowPlace> places = new ArrayList<>();
    /** The reasons of each way. */
    private final Map<Way, List<String>> ways = new LinkedHashMap<>();

    /** A way is bounded as its reasons are; those with other bounds are another way. */
    private record Way(int from, int to, Kind kind, OptionalInt atMost) {
    }

    private Drawing(Set<Integer> reached, Map<String, Passage> texts, List<Liveness> live) {
        this.reached = reached;
        this.texts = texts;
        this.live = live;
    }

    /**
     * Draws.
     *
     * @param reached the places that a test can come to
     * @param texts   where steps and stages stand, by {@link Provables#key}
     */
    static FlowDiagram of(Spots spots, Spots safe, Set<Integer> reached, Map<String, Passage> texts) {
        Drawing drawing = new Drawing(reached, texts, Liveness.of(spots, safe));
        drawing.draw(spots, FlowPlace.Kind.BEGIN, drawing.live.get(0));
        Optional<FlowPlace> straightEnd = drawing.straightEnd();
        int makeSafe = drawing.places.size();
        drawing.draw(safe, FlowPlace.Kind.MAKE_SAFE, drawing.live.get(1));
        straightEnd.ifPresent(end -> drawing.ways.put(new Way(end.id(), makeSafe, Kind.EVERY_END, OptionalInt.empty()), List.of()));
        List<FlowWay> drawn = new ArrayList<>();
        drawing.ways.forEach((way, reasons) -> drawn.add(new FlowWay(way.from(), way.to(), way.kind(), reasons, way.atMost())));
        return new FlowDiagram(drawing.places, drawn);
    }

    /** The end that comes last of those to which nothing but the order of the text leads; making safe is drawn behind it. */
    private Optional<FlowPlace> straightEnd() {
        return ways.keySet().stream().filter(way -> way.kind() == Kind.NEXT).map(way -> places.get(way.to())).filter(FlowPlace::isEnd)
                .reduce((one, other) -> other.kind() == FlowPlace.Kind.ACCEPTED || one.kind() != FlowPlace.Kind.ACCEPTED ? other : one);
    }

    private void draw(Spots spots, FlowPlace.Kind begin, Liveness here) {
        int first = places.size();
        for (Spot spot : spots.all()) {
            places.add(spot.id() == 0 ? beginning(spots, begin) : place(spots, spot, here));
        }
        for (Spot spot : spots.all()) {
            Ends ends = new Ends(spot, here);
            for (WayOut way : spots.waysOut(spot, Map.of())) {
                // Where a test begins cold again is drawn once, at the nearest step before that begins with everything off.
                Optional<Integer> cold = way.lead() instanceof Lead.PowerLost ? coldBefore(spots, spot, here) : Optional.empty();
                for (Destination to : Destinations.of(spots, spot, way)) {
                    if (!to.cold() || cold.filter(id -> to.place().getAsInt() == id).isPresent()) {
                        draw(first, spot, way, to, ends);
                    }
                }
            }
        }
    }

    private void draw(int first, Spot spot, WayOut way, Destination to, Ends ends) {
        int target = to.place().isPresent() ? first + to.place().getAsInt() : ends.of(to);
        List<String> reasons = ways.computeIfAbsent(new Way(first + spot.id(), target, way.kind(), to.atMost()), drawn -> new ArrayList<>());
        if (!way.words().isEmpty() && !reasons.contains(way.words())) {
            reasons.add(way.words());
        }
    }

    private static Optional<Integer> coldBefore(Spots spots, Spot soak, Liveness live) {
        for (int id = soak.id() - 1; id > 0; id--) {
            Spot spot = spots.at(id);
            if (spot.step().isPresent() && (!live.at(spot) || spot.switchesOnFirst()) && spot.stage().filter(Spots::onDemand).isEmpty()) {
                return Optional.of(id);
            }
        }
        return Optional.empty();
    }

    // ---- places

    private FlowPlace beginning(Spots spots, FlowPlace.Kind kind) {
        boolean safe = spots.makingSafe();
        String words = safe ? ProofText.of("flow.beforeEveryEnd") : ProofText.of("flow.preconditions", spots.plan().preconditions().size());
        String title = safe ? spots.plan().makeSafe().title() : spots.plan().title();
        return new FlowPlace(places.size(), kind, title, "", words, Set.of(), safe ? text(spots.plan().makeSafe(), Optional.empty())
                : Optional.empty());
    }

    private FlowPlace place(Spots spots, Spot spot, Liveness here) {
        FlowPlace.Kind kind = spots.makingSafe() ? FlowPlace.Kind.SAFE_STEP : spot.soak().isPresent() ? FlowPlace.Kind.SOAK : FlowPlace.Kind.STEP;
        Set<Mark> marks = EnumSet.noneOf(Mark.class);
        mark(marks, Mark.UNREACHABLE, !spots.makingSafe() && !reached.contains(spot.id()));
        mark(marks, Mark.ON_DEMAND, spot.stage().filter(Spots::onDemand).isPresent());
        mark(marks, Mark.LIVE, here.at(spot) && !spot.switchesOnFirst());
        mark(marks, Mark.CONDITIONAL, spot.step().filter(Drawing::isConditional).isPresent());
        String words = spot.step().map(Step::instruction).or(() -> spot.soak().map(soak -> ProofText.of("flow.soak",
                Durations.words(soak.lasting()), soak.keep().source()))).orElse("");
        return new FlowPlace(places.size(), kind, spot.shown(), spot.stage().map(Stage::title).orElse(""), words, marks,
                text(spot.stage().orElseThrow(), spot.step()));
    }

    private Optional<Place> text(Stage stage, Optional<Step> step) {
        return Optional.ofNullable(texts.get(Provables.key(stage, step))).map(Passage::name);
    }

    private static void mark(Set<Mark> marks, Mark mark, boolean holds) {
        if (holds) {
            marks.add(mark);
        }
    }

    private static boolean isConditional(Step step) {
        return step.actions().get(0) instanceof Action.Branch branch && branch.to().isEmpty();
    }

    /** The ends beside one place: one for each verdict. */
    private final class Ends {

        private final Spot beside;
        private final Liveness here;
        private final Map<Optional<Verdict>, Integer> known = new HashMap<>();

        Ends(Spot beside, Liveness here) {
            this.beside = beside;
            this.here = here;
        }

        int of(Destination to) {
            return known.computeIfAbsent(to.verdict(), verdict -> {
                int id = places.size();
                places.add(end(id, to));
                return id;
            });
        }

        private FlowPlace end(int id, Destination to) {
            Set<Mark> marks = to.verdict().isEmpty() && here.atEnd() ? Set.of(Mark.ENDS_LIVE) : Set.of();
            String name = to.verdict().map(Verdict::word).orElseGet(() -> ProofText.of("flow.over"));
            Optional<Place> text = beside.stage().flatMap(stage -> text(stage, beside.step()));
            return new FlowPlace(id, kind(to.verdict()), name, "", to.reason(), marks, text);
        }

        private static FlowPlace.Kind kind(Optional<Verdict> verdict) {
            return verdict.map(each -> switch (each) {
                case ACCEPTED -> FlowPlace.Kind.ACCEPTED;
                case REJECTED -> FlowPlace.Kind.REJECTED;
                case UNDECIDED -> FlowPlace.Kind.UNDECIDED;
            }).orElse(FlowPlace.Kind.OVER);
        }
    }
}
