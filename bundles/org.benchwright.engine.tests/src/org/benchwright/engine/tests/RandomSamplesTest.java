package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.Map;
import java.util.stream.Stream;

import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.WorkStage;
import org.junit.jupiter.api.Test;

/** Laws over random samples mean nothing unless the samples reach everything: every action, demand, fact, derived event and end. */
class RandomSamplesTest {

    private static final int SAMPLES = 1_500;
    /** Left to examples: what one technician at one unit never tells. */
    private static final Set<Class<?>> BESIDE = Set.of(Fact.HazardKnown.class, Fact.Identified.class, Fact.Placed.class, Fact.Questioned.class,
            Fact.TakenOver.class, Observation.Tapped.class);

    private final Map<String, Integer> seen = new TreeMap<>();
    private final Set<DepartureKind> departures = EnumSet.noneOf(DepartureKind.class);
    private final Set<Verdict> verdicts = EnumSet.noneOf(Verdict.class);

    @Test
    void theyReachEverything() {
        Random random = new Random(20_260_302);
        for (int i = 0; i < SAMPLES; i++) {
            RandomPlan.Sample sample = RandomSamples.plan(tape(random, 200));
            actions(sample.plan()).forEach(a -> count(a.getClass()));
            Walk end = RandomSamples.walk(sample, tape(random, 120), walk -> count(walk.demand().getClass()));
            end.run().events().stream().map(TestEvent::body).forEach(body -> count(body.getClass()));
            departures.addAll(end.departures());
            end.run().verdict().ifPresent(verdicts::add);
        }
        Set<String> never = new TreeSet<>();
        Stream.of(Action.class, Demand.class, Fact.class, Derived.class).flatMap(RandomSamplesTest::kinds)
                .filter(kind -> !BESIDE.contains(kind)).map(Class::getName).filter(name -> !seen.containsKey(name)).forEach(never::add);
        assertEquals(Set.of(), never);
        // Instruments past due and plates that tell nothing are left to examples: the walks name the same instrument and unit always.
        assertEquals(EnumSet.complementOf(EnumSet.of(DepartureKind.INSTRUMENT_PAST_DUE, DepartureKind.SERIAL_NOT_READ)), departures);
        assertEquals(EnumSet.allOf(Verdict.class), verdicts);
    }

    private static Stream<Class<?>> kinds(Class<?> kind) {
        return kind.isSealed() ? Stream.of(kind.getPermittedSubclasses()).flatMap(RandomSamplesTest::kinds) : Stream.of(kind);
    }

    private void count(Class<?> kind) {
        seen.merge(kind.getName(), 1, Integer::sum);
    }

    private static Stream<Action> actions(Plan plan) {
        return plan.stages().stream().filter(WorkStage.class::isInstance).flatMap(s -> ((WorkStage) s).steps().stream())
                .flatMap(step -> step.actions().stream());
    }

    private static List<Integer> tape(Random random, int length) {
        List<Integer> tape = new ArrayList<>();
        for (int i = 0; i < length; i++) {
            tape.add(random.nextInt(10_000));
        }
        return tape;
    }
}
