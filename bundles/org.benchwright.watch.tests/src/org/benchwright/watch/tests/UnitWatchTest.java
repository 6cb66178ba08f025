package org.benchwright.watch.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.function.Supplier;

import org.benchwright.core.PointAddress;
import org.benchwright.watch.CannotSeeException;
import org.benchwright.watch.Observed;
import org.benchwright.watch.PointReader;
import org.benchwright.watch.PointValues;
import org.benchwright.watch.UnitWatch;
import org.benchwright.watch.WatchRhythm;
import org.junit.jupiter.api.Test;

/** A watch whose reader or whose values are in no order: whatever goes wrong, silence is told, and the unit is seen again afterwards. */
class UnitWatchTest {

    private static final PointAddress STATE = new PointAddress.Node("ns=1;s=State");
    private static final PointAddress SUPPLY = new PointAddress.Node("ns=1;s=Supply");
    private static final WatchRhythm RHYTHM = new WatchRhythm(Duration.ofSeconds(10), 2, 3, Duration.ofMinutes(1));
    private static final Instant BEGAN = Instant.parse("2026-03-02T08:00:00Z");

    private final List<Observed> told = new ArrayList<>();
    private int closed;
    private Duration now = Duration.ZERO;
    private Supplier<CompletionStage<PointValues>> answer = () -> reads("240");
    private final UnitWatch watch = new UnitWatch(new PointReader() {
        @Override
        public CompletionStage<PointValues> read() {
            return answer.get();
        }

        @Override
        public void close() {
            closed++;
        }
    }, new OneUnit(List.of(STATE, SUPPLY)), RHYTHM, new Clock() {
        @Override
        public Instant instant() {
            return BEGAN.plus(now);
        }

        @Override
        public ZoneOffset getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }
    }, () -> now, told::addAll);

    private static PointValues good(String tenths) {
        return new PointValues(Map.of(STATE, BigDecimal.ONE, SUPPLY, new BigDecimal(tenths)));
    }

    private static CompletionStage<PointValues> reads(String tenths) {
        return CompletableFuture.completedFuture(good(tenths));
    }

    private void ticks(int times) {
        for (int i = 0; i < times; i++) {
            now = now.plus(RHYTHM.every());
            watch.tick();
        }
    }

    private List<String> silences() {
        return told.stream().filter(Observed.Silent.class::isInstance).map(one -> ((Observed.Silent) one).why()).toList();
    }

    /** What a register of 64 bits reads in the wrong order of bytes. */
    @Test
    void aNumberThatIsNoQuantityIsNotSeen() {
        ticks(2);
        assertTrue(watch.seeing());
        answer = () -> reads("4.9E-324");
        ticks(RHYTHM.silentAfter());
        assertFalse(watch.seeing());
        assertEquals(List.of("reading failed: A quantity has at most 100 digits on either side."), silences());
    }

    /** A failure is known a moment after the tick that asked; the tick after it must not be taken for one that comes too early. */
    @Test
    void oneLostAnswerIsOneMissedSample() {
        ticks(2);
        CompletableFuture<PointValues> late = new CompletableFuture<>();
        answer = () -> late;
        ticks(1);
        now = now.plusMillis(40);
        late.completeExceptionally(new CannotSeeException("no answer"));
        now = now.minusMillis(40);
        answer = () -> reads("240");
        ticks(1);
        assertEquals(Map.of("taken", 3L, "missed", 1L), watch.counts());
    }

    @Test
    void aUnitThatDoesNotAnswerIsAskedLessAndLess() {
        List<Integer> asked = new ArrayList<>();
        for (int tick = 1; tick <= 30; tick++) {
            int each = tick;
            answer = () -> {
                asked.add(each);
                return CompletableFuture.failedFuture(new CannotSeeException("no answer"));
            };
            ticks(1);
        }
        assertEquals(List.of(1, 2, 4, 8, 14, 20, 26), asked, "at last once a minute");
    }

    @Test
    void whatAnswersSlowerThanItIsAskedIsMissedAndNothingPilesUp() {
        ticks(2);
        List<CompletableFuture<PointValues>> asked = new ArrayList<>();
        answer = () -> {
            asked.add(new CompletableFuture<>());
            return asked.get(asked.size() - 1);
        };
        ticks(1 + RHYTHM.silentAfter());
        assertEquals(1, asked.size(), "one question at a time");
        assertEquals(List.of("it answers slower than it is asked"), silences());
        asked.get(0).complete(good("240"));
        assertTrue(watch.seeing());
        ticks(1);
        assertEquals(2, asked.size());
    }

    @Test
    void aWatchThatIsEndedHandsOverWhatItSawOnceAndHearsNoMore() {
        ticks(3);
        CompletableFuture<PointValues> late = new CompletableFuture<>();
        answer = () -> late;
        ticks(1);
        watch.end("the shift is over");
        assertEquals(List.of(Observed.Sees.class, Observed.Held.class, Observed.Silent.class), told.stream().map(Object::getClass).toList());
        assertEquals(List.of("the shift is over"), silences());
        late.complete(good("240"));
        ticks(1);
        watch.close();
        assertEquals(3, told.size(), told.toString());
        assertEquals(1, closed);
    }

    @Test
    void aReaderThatFailsAtOnceIsNotSeen() {
        ticks(2);
        answer = () -> {
            throw new IllegalStateException("no such place");
        };
        ticks(RHYTHM.silentAfter());
        assertEquals(List.of("reading failed: no such place"), silences());
        answer = () -> reads("240");
        ticks(10);
        assertTrue(watch.seeing());
    }
}
