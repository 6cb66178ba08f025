package org.benchwright.language.internal.proof;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.language.internal.proof.Walk.Hop;
import org.benchwright.language.internal.proof.Walk.State;
import org.benchwright.language.proof.FlowWay.Kind;
import org.benchwright.language.proof.TimeSpan;
import org.benchwright.language.proof.Times;
import org.benchwright.language.proof.Times.Range;
import org.benchwright.language.proof.Times.StageTime;

/** Shortest, typical and longest times over all paths. */
final class TimeReckoning {

    private TimeReckoning() {
    }

    static Times of(Plan plan, Walk walk, Exploration explored, Walk safeWalk, Exploration safe) {
        List<StageTime> stages = Stream.concat(plan.stages().stream(), Stream.of(plan.makeSafe())).map(TimeReckoning::stage).toList();
        List<String> without = Stream.concat(plan.stages().stream(), Stream.of(plan.makeSafe())).filter(WorkStage.class::isInstance)
                .flatMap(stage -> ((WorkStage) stage).steps().stream()).filter(step -> step.takes().isEmpty()).map(Step::name).toList();
        if (!explored.isComplete() || !safe.isComplete()) {
            return new Times(Optional.empty(), Optional.empty(), Map.of(), stages, without);
        }
        Range makingSafe = ranges(safeWalk, safe).get(Optional.<Verdict>empty());
        Map<Verdict, Range> byVerdict = new EnumMap<>(Verdict.class);
        ranges(walk, explored).forEach((verdict, range) -> byVerdict.put(verdict.orElseThrow(),
                new Range(range.shortest().plus(makingSafe.shortest()), range.longest().plus(makingSafe.longest()))));
        Straight straight = straight(walk, explored);
        return new Times(Optional.of(straight.time().plus(straight(safeWalk, safe).time())), straight.verdict(), byVerdict, stages, without);
    }

    private static StageTime stage(Stage stage) {
        if (stage instanceof SoakStage soak) {
            return new StageTime(soak.title(), StepTimes.of(soak), Optional.empty(), StepTimes.looks(soak.lasting(), soak.lookEvery()));
        }
        WorkStage work = (WorkStage) stage;
        TimeSpan all = work.steps().stream().map(StepTimes::of).reduce(TimeSpan.NONE, TimeSpan::plus);
        return new StageTime(work.title(), all, work.atMost(), 0);
    }

    // ---- all paths

    /** By verdict; without one where making safe is over. */
    private static Map<Optional<Verdict>, Range> ranges(Walk walk, Exploration explored) {
        Map<State, Map<Optional<Verdict>, Range>> known = new HashMap<>();
        for (State state : explored.order()) {
            Map<Optional<Verdict>, Range> mine = new HashMap<>();
            for (Hop hop : explored.from(state)) {
                Range here = range(walk.spots().at(state.place()), hop);
                if (hop.to().isEmpty()) {
                    mine.merge(hop.verdict(), here, Range::with);
                } else {
                    known.get(hop.to().get()).forEach((verdict, on) -> mine.merge(verdict,
                            new Range(here.shortest().plus(on.shortest()), here.longest().plus(on.longest())), Range::with));
                }
            }
            known.put(state, mine);
        }
        return known.get(walk.start());
    }

    private static Range range(Spot spot, Hop hop) {
        TimeSpan whole = whole(spot, hop);
        boolean stopped = spot.soak().isPresent() && hop.way().kind() != Kind.NEXT && hop.way().kind() != Kind.UNWITNESSED;
        return new Range(stopped ? new TimeSpan(Duration.ZERO, whole.attended()) : whole, whole);
    }

    private static TimeSpan whole(Spot spot, Hop hop) {
        if (!hop.way().begun()) {
            return TimeSpan.NONE;
        }
        return spot.soak().map(StepTimes::of).or(() -> spot.step().map(StepTimes::of)).orElse(TimeSpan.NONE);
    }

    // ---- the straight path

    private record Straight(TimeSpan time, Optional<Verdict> verdict) {
    }

    private static Straight straight(Walk walk, Exploration explored) {
        List<TimeSpan> times = new ArrayList<>();
        State state = walk.start();
        while (true) {
            List<Hop> hops = explored.from(state);
            // The last way out is the one on which everything before it conformed.
            Hop hop = hops.get(hops.size() - 1);
            times.add(whole(walk.spots().at(state.place()), hop));
            if (hop.to().isEmpty()) {
                return new Straight(times.stream().reduce(TimeSpan.NONE, TimeSpan::plus), hop.verdict());
            }
            state = hop.to().get();
        }
    }
}
