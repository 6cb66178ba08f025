package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.internal.PlanFaults;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** What holds for every plan and every way of carrying it out. */
class RunLawsTest extends WithRandomWalks {

    private static final int TRIES = 300;

    @Property(tries = TRIES)
    void randomPlansAreSound(@ForAll("plans") List<Integer> plan) {
        assertEquals(List.of(), PlanFaults.of(RandomSamples.plan(plan).plan()));
    }

    @Property(tries = TRIES)
    void thereIsExactlyOneDemandUntilTheEndWhichComes(@ForAll("plans") List<Integer> plan, @ForAll("answers") List<Integer> answers) {
        Walk end = RandomSamples.walk(RandomSamples.plan(plan), answers, walk -> {
            assertNotNull(walk.demand().key());
            assertEquals(walk.run().ended(), walk.demand() instanceof Demand.Nothing);
        });
        assertTrue(end.run().ended());
    }

    @Property(tries = TRIES)
    void everyEndIsMadeSafeAndLeavesNothingLive(@ForAll("plans") List<Integer> plan, @ForAll("answers") List<Integer> answers) {
        Walk end = RandomSamples.walk(RandomSamples.plan(plan), answers, walk -> { });
        List<EventBody> bodies = end.run().events().stream().map(TestEvent::body).toList();
        EventBody last = bodies.get(bodies.size() - 1);
        assertTrue(end.run().rehearsal() ? last instanceof Derived.RehearsalEnded : last instanceof Derived.Concluded, last.toString());
        assertEquals(new Derived.MadeSafe(), bodies.get(bodies.size() - 2));
        assertEquals(1, end.count(Derived.MadeSafe.class));
        assertEquals(Set.of(), end.run().live());
        assertEverythingWasIsolatedAtTheEnd(end, bodies);
    }

    /** Each item that was ever switched on was last confirmed off. */
    private static void assertEverythingWasIsolatedAtTheEnd(Walk end, List<EventBody> bodies) {
        for (String item : List.of("supply", "load")) {
            Optional<Fact.Switched> last = bodies.stream().filter(b -> b instanceof Fact.Switched w && w.item().equals(item))
                    .map(Fact.Switched.class::cast).reduce((a, b) -> b);
            assertFalse(last.isPresent() && last.get().live(), item + " was left on");
        }
    }

    @Property(tries = TRIES)
    void foldingTheEventsGivesTheSameTest(@ForAll("plans") List<Integer> plan, @ForAll("answers") List<Integer> answers) {
        RandomPlan.Sample sample = RandomSamples.plan(plan);
        RandomSamples.walk(sample, answers, walk -> {
            TestRun folded = fold(sample, walk.run().events());
            assertEquals(walk.demand(), folded.demand());
            assertEquals(walk.run().live(), folded.live());
            assertEquals(walk.run().witnessed(), folded.witnessed());
            assertEquals(walk.run().verdict(), folded.verdict());
            assertEquals(walk.run().strikeable(), folded.strikeable());
            assertEquals(walk.run().reason(), folded.reason());
        });
    }

    private static TestRun fold(RandomPlan.Sample sample, List<TestEvent> events) {
        try {
            return TestRun.fold(sample.plan(), events);
        } catch (DoesNotFollowException e) {
            throw new AssertionError("event " + e.sequence() + ": " + e.getMessage(), e);
        }
    }

    @Property(tries = TRIES)
    void recordingAFactAgainGivesTheSameEvents(@ForAll("plans") List<Integer> plan, @ForAll("answers") List<Integer> answers) {
        RandomSamples.walk(RandomSamples.plan(plan), answers, walk -> {
            if (!walk.run().ended()) {
                assertEquals(recorded(walk), recorded(walk));
            }
        });
    }

    private static List<TestEvent> recorded(Walk walk) {
        try {
            return walk.run().record(new Fact.Abandoned("bench needed"), Walk.TECHNICIAN, walk.moment());
        } catch (RefusedException makingSafe) {
            return noted(walk);
        }
    }

    private static List<TestEvent> noted(Walk walk) {
        try {
            return walk.run().record(new Fact.Noted("x"), Walk.TECHNICIAN, walk.moment());
        } catch (RefusedException e) {
            throw new AssertionError(e);
        }
    }

    /** Cut anywhere, also among what one fact made: nobody needs to know where the power went. */
    @Property(tries = TRIES)
    void everyPrefixCanBeTakenUpAgainAndCarriedToItsEnd(@ForAll("plans") List<Integer> plan, @ForAll("answers") List<Integer> answers,
            @ForAll @IntRange(min = 0, max = 10_000) int cut, @ForAll boolean powerKept) throws Exception {
        RandomPlan.Sample sample = RandomSamples.plan(plan);
        List<TestEvent> whole = RandomSamples.walk(sample, answers, walk -> { }).run().events();
        List<TestEvent> prefix = whole.subList(0, 1 + cut % (whole.size() - 1));
        TestRun run = TestRun.fold(sample.plan(), prefix);
        assertNotNull(run.demand().key());
        if (run.demand() instanceof Demand.Nothing) {
            return;
        }
        Moment last = run.lastMoment();
        Duration gap = Duration.ofMinutes(1);
        Moment now = new Moment(last.instant().plus(gap), last.sitting() + 1, Duration.ZERO);
        List<TestEvent> made = run.record(new Fact.Interrupted(gap), Walk.BENCH, now);
        TestRun resumed = run.with(made);
        List<TestEvent> all = new ArrayList<>(prefix);
        all.addAll(made);
        assertEquals(resumed.demand(), TestRun.fold(sample.plan(), all).demand());
        for (int facts = 0; !resumed.ended(); facts++) {
            assertTrue(facts < RandomSamples.MOST_FACTS, "no end; asked for " + resumed.demand().key());
            Duration wait = Answers.waiting(resumed.demand(), now).orElse(Duration.ZERO);
            now = new Moment(now.instant().plus(wait), now.sitting(), now.offset().plus(wait));
            if (resumed.benchProofOwed(now.instant()).isPresent()) {
                resumed = resumed.with(resumed.record(Answers.proof(now.instant(), Duration.ZERO, Duration.ZERO), Walk.BENCH, now));
            }
            Fact fact = resumed.demand() instanceof Demand.TellPower ? new Fact.PowerAnswered(powerKept) : Answers.good(resumed.demand());
            resumed = resumed.with(resumed.record(fact, Walk.TECHNICIAN, now));
        }
    }

    @Property(tries = TRIES)
    void nothingThatAssumesALiveUnitIsReachedWithItSwitchedOff(@ForAll("plans") List<Integer> plan,
            @ForAll("answers") List<Integer> answers) {
        RandomPlan.Sample sample = RandomSamples.plan(plan);
        RandomSamples.walk(sample, answers, walk -> {
            TestEvent last = walk.run().events().get(walk.run().events().size() - 1);
            if (walk.demand() instanceof Demand.Look look) {
                assertLive(sample, walk, look.soak().name());
            } else if (last.body() instanceof Derived.StepOpened opened && sample.assumed().containsKey(opened.step())) {
                Set<String> atOpening = sample.assumed().get(opened.step());
                assertTrue(walk.run().live().containsAll(atOpening), opened + " with only " + walk.run().live() + " live");
            }
        });
    }

    private static void assertLive(RandomPlan.Sample sample, Walk walk, String place) {
        assertTrue(walk.run().live().containsAll(sample.assumed().get(place)), place + " with only " + walk.run().live() + " live");
    }

    /** Until then only switching off, preconditions and hazards are asked for. */
    @Property(tries = TRIES)
    void afterALossOfPowerEverythingIsSwitchedOffBeforeAnyStepIsOpened(@ForAll("plans") List<Integer> plan,
            @ForAll("answers") List<Integer> answers) {
        RandomPlan.Sample sample = RandomSamples.plan(plan);
        Walk end = RandomSamples.walk(sample, answers, walk -> { });
        boolean lost = false;
        List<TestEvent> soFar = new ArrayList<>();
        for (TestEvent event : end.run().events()) {
            if (event.body() instanceof Derived.StepOpened opened && lost) {
                Set<String> live = fold(sample, soFar).live();
                assertTrue(live.isEmpty() || opened.stage().equals("make_safe"), opened + " with " + live + " live");
                lost = false;
            } else if (event.body() instanceof Fact.PowerAnswered p) {
                lost = !p.kept();
            }
            soFar.add(event);
        }
    }

    @Property(tries = TRIES)
    void aChangedDerivedEventIsRefused(@ForAll("plans") List<Integer> plan, @ForAll("answers") List<Integer> answers,
            @ForAll @IntRange(min = 0, max = 10_000) int which, @ForAll @IntRange(min = 0, max = 3) int how) {
        RandomPlan.Sample sample = RandomSamples.plan(plan);
        List<TestEvent> events = new ArrayList<>(RandomSamples.walk(sample, answers, walk -> { }).run().events());
        List<TestEvent> derived = events.stream().filter(e -> e.body() instanceof Derived).toList();
        TestEvent chosen = derived.get(which % derived.size());
        TestEvent forged = switch (how) {
            case 0 -> new TestEvent(chosen.sequence(), chosen.moment(), chosen.actor(), Forgeries.of((Derived) chosen.body()));
            case 1 -> new TestEvent(chosen.sequence(), chosen.moment(), Walk.OTHER_TECHNICIAN, chosen.body());
            case 2 -> new TestEvent(chosen.sequence(), new Moment(chosen.moment().instant(), chosen.moment().sitting(),
                    chosen.moment().offset().plusMillis(1)), chosen.actor(), chosen.body());
            default -> new TestEvent(chosen.sequence(), chosen.moment(), chosen.actor(), new Derived.Concluded(Verdict.ACCEPTED, "forged"));
        };
        events.set((int) chosen.sequence() - 1, forged);
        DoesNotFollowException fault = assertThrows(DoesNotFollowException.class, () -> TestRun.fold(sample.plan(), events));
        assertEquals(chosen.sequence(), fault.sequence());
    }
}
