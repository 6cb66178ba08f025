package org.benchwright.watch.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.PointAddress;
import org.benchwright.core.Quantity;
import org.benchwright.testkit.PropertyTest;
import org.benchwright.watch.Judgement;
import org.benchwright.watch.Observation;
import org.benchwright.watch.Observed;
import org.benchwright.watch.Sample;
import org.benchwright.watch.WatchRhythm;
import org.junit.jupiter.api.Test;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** Every 10 s; two bad samples are a stop, three missed ones silence; a run is written down every minute. */
class ObservationTest implements PropertyTest {

    private static final Instant BEGAN = Instant.parse("2026-03-02T08:00:00Z");
    private static final WatchRhythm RHYTHM = new WatchRhythm(Duration.ofSeconds(10), 2, 3, Duration.ofMinutes(1));

    private final Observation observation = new Observation(RHYTHM, new OneUnit(List.of(new PointAddress.ServerState())));
    private final List<Observed> all = new ArrayList<>();

    private static Sample at(int seconds) {
        return new Sample(BEGAN.plusSeconds(seconds), Duration.ofSeconds(seconds), Optional.empty());
    }

    private void good(int... seconds) {
        for (int second : seconds) {
            all.addAll(observation.sample(at(second), new Judgement(true, "run", Map.of())));
        }
    }

    private void bad(int... seconds) {
        for (int second : seconds) {
            all.addAll(observation.sample(at(second), new Judgement(false, "not run", Map.of())));
        }
    }

    private void volts(int second, String volts) {
        volts(second, volts, true);
    }

    private void volts(int second, String volts, boolean good) {
        all.addAll(observation.sample(at(second), new Judgement(good, "", Map.of("supply", Quantity.of(volts, "V")))));
    }

    private static Observed held(int from, int to, long samples, String low, String high) {
        return new Observed.Held(at(from), at(to), samples, 0, Map.of("supply", new Observed.Range(Quantity.of(low, "V"), Quantity.of(high, "V"))));
    }

    private void missed(int times) {
        for (int i = 0; i < times; i++) {
            all.addAll(observation.missed("no answer"));
        }
    }

    private static Observed held(int from, int to, long samples, long missed) {
        return new Observed.Held(at(from), at(to), samples, missed, Map.of());
    }

    @Test
    void equalSamplesAreOneRunThatIsWrittenDownNowAndThen() {
        good(0, 10, 20, 30, 40, 50, 60, 70);
        assertEquals(List.of(new Observed.Sees(at(0)), held(0, 60, 7, 0)), all);
        all.addAll(observation.end("ended"));
        assertEquals(List.of(held(60, 70, 2, 0), new Observed.Silent(Optional.of(at(70)), "ended")), all.subList(2, 4));
    }

    @Test
    void aStopLiesBetweenTheLastGoodSampleAndTheFirstOfTheBadOnes() {
        good(0, 10, 20);
        bad(30, 40, 50);
        assertEquals(List.of(new Observed.Sees(at(0)), held(0, 20, 3, 0), new Observed.Changed(Optional.of(at(20)), at(30), 2, true, "not run")),
                all);
        assertTrue(observation.stopped());
    }

    @Test
    void tooFewBadSamplesAreToldAndNoStop() {
        good(0, 10);
        bad(20);
        good(30, 40);
        all.addAll(observation.end("ended"));
        assertEquals(List.of(new Observed.Sees(at(0)), held(0, 10, 2, 0), new Observed.Changed(Optional.of(at(10)), at(20), 1, false, "not run"),
                held(30, 40, 2, 0), new Observed.Silent(Optional.of(at(40)), "ended")), all);
    }

    @Test
    void aFewMissedSamplesAreBorneAndCounted() {
        good(0, 10);
        missed(2);
        good(40, 50, 60);
        assertEquals(List.of(new Observed.Sees(at(0)), held(0, 60, 5, 2)), all);
    }

    @Test
    void silenceIsToldAtOnceAndOnce() {
        good(0, 10);
        missed(7);
        assertEquals(List.of(new Observed.Sees(at(0)), held(0, 10, 2, 0), new Observed.Silent(Optional.of(at(10)), "no answer")), all);
        assertFalse(observation.seeing());
        good(90, 100);
        assertEquals(new Observed.Sees(at(90)), all.get(3));
    }

    @Test
    void aUnitThatIsNeverSeenIsToldToo() {
        missed(3);
        assertEquals(List.of(new Observed.Silent(Optional.empty(), "no answer")), all);
        bad(40, 50);
        assertEquals(new Observed.Changed(Optional.empty(), at(40), 2, true, "not run"), all.get(1));
    }

    @Test
    void badSamplesOnBothSidesOfSilenceAreNoStop() {
        good(0);
        bad(10);
        missed(3);
        bad(50);
        assertFalse(observation.stopped());
        bad(60);
        assertTrue(observation.stopped());
        assertEquals(new Observed.Changed(Optional.empty(), at(50), 2, true, "not run"), all.get(all.size() - 1));
    }

    @Test
    void aConditionCrossesItsLimitsBetweenTwoSamples() {
        volts(0, "24.0");
        volts(10, "23.2");
        volts(20, "23.3");
        volts(30, "23.9");
        all.addAll(observation.end("ended"));
        assertEquals(new Observed.Crossed("supply", false, Optional.of(at(0)), at(10), Quantity.of("23.2", "V")), all.get(1));
        assertEquals(new Observed.Crossed("supply", true, Optional.of(at(20)), at(30), Quantity.of("23.9", "V")), all.get(2));
        assertEquals(held(0, 30, 4, "23.2", "24.0"), all.get(3));
    }

    private List<Observed> runs() {
        return all.stream().filter(Observed.Held.class::isInstance).toList();
    }

    @Test
    void whatABadSampleReadsIsInNoRun() {
        volts(0, "24.0");
        volts(10, "24.1");
        volts(20, "18.0", false);
        volts(30, "24.2");
        volts(40, "24.3");
        all.addAll(observation.end("ended"));
        assertEquals(List.of(held(0, 10, 2, "24.0", "24.1"), held(30, 40, 2, "24.2", "24.3")), runs());
    }

    @Test
    void aRunHasTheReadingsOfBothItsEnds() {
        for (int second = 0; second < 60; second += 10) {
            volts(second, "24.0");
        }
        volts(60, "24.4");
        volts(70, "24.1");
        all.addAll(observation.end("ended"));
        assertEquals(List.of(held(0, 60, 7, "24.0", "24.4"), held(60, 70, 2, "24.1", "24.4")), runs());
    }

    @Test
    void noRunSpansAStepOfTheWallClock() {
        good(0, 10, 20);
        Sample later = new Sample(BEGAN.plusSeconds(3630), Duration.ofSeconds(30), Optional.empty());
        Sample next = new Sample(BEGAN.plusSeconds(3640), Duration.ofSeconds(40), Optional.empty());
        all.addAll(observation.sample(later, new Judgement(true, "run", Map.of())));
        all.addAll(observation.sample(next, new Judgement(true, "run", Map.of())));
        all.addAll(observation.end("ended"));
        assertEquals(List.of(held(0, 20, 3, 0), new Observed.Held(later, next, 2, 0, Map.of())), all.subList(1, 3));
    }

    /** 0 is a missed sample, 1 a bad one, all else good ones. */
    @Property
    boolean whateverComesRunsNeverOverlapNorHoldSilence(@ForAll @Size(min = 1, max = 200) List<@IntRange(min = 0, max = 9) Integer> series) {
        Observation any = new Observation(RHYTHM, new OneUnit(List.of(new PointAddress.ServerState())));
        List<Observed> told = new ArrayList<>();
        boolean[] good = new boolean[series.size()];
        int stop = -1;
        for (int i = 0; i < series.size(); i++) {
            int what = series.get(i);
            good[i] = what > 1;
            told.addAll(what == 0 ? any.missed("no answer")
                    : any.sample(at(10 * i), new Judgement(what > 1, "", Map.of())));
            if (stop < 0 && any.stopped()) {
                stop = i;
            }
        }
        told.addAll(any.end("ended"));
        Duration before = Duration.ZERO;
        for (Observed one : told) {
            if (one instanceof Observed.Held run) {
                int from = (int) run.from().offset().toSeconds() / 10;
                int to = (int) run.to().offset().toSeconds() / 10;
                long seen = 0;
                int missedInRow = 0;
                for (int i = from; i <= to; i++) {
                    missedInRow = series.get(i) == 0 ? missedInRow + 1 : 0;
                    seen += good[i] ? 1 : 0;
                    if (missedInRow >= RHYTHM.silentAfter() || series.get(i) == 1) {
                        return false;
                    }
                }
                if (run.from().offset().compareTo(before) < 0 || seen != run.samples() || run.samples() + run.missed() != to - from + 1) {
                    return false;
                }
                before = run.to().offset();
            }
        }
        return stop == firstStop(series);
    }

    /** The second bad sample in a row; missed ones between do not separate them unless they are silence. */
    private static int firstStop(List<Integer> series) {
        int bad = 0;
        int missed = 0;
        for (int i = 0; i < series.size(); i++) {
            int what = series.get(i);
            missed = what == 0 ? missed + 1 : 0;
            if (what > 1 || missed >= RHYTHM.silentAfter()) {
                bad = 0;
            } else if (what == 1) {
                bad++;
            }
            if (bad == RHYTHM.stopAfterBad()) {
                return i;
            }
        }
        return -1;
    }
}
