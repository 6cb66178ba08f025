package org.benchwright.watch.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.function.BooleanSupplier;

import org.benchwright.core.PointAddress;
import org.benchwright.core.PointAddress.NumberForm;
import org.benchwright.core.PointAddress.Register;
import org.benchwright.core.PointAddress.Table;
import org.benchwright.core.Ticker;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.Observed;
import org.benchwright.watch.PointReader;
import org.benchwright.watch.PointValues;
import org.benchwright.watch.UnitWatch;
import org.benchwright.watch.WatchRhythm;
import org.benchwright.watch.WatchSources;
import org.benchwright.watch.tests.FaultyLine.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Watches units by two servers that somebody else wrote, while the line between goes bad in random ways and the unit behind it starts and
 * stops. Whatever the line does: a value that is taken was the unit's while it was read, a line's fault is never taken for a stop,
 * silence is told, the unit is seen again once the line is good, a stop is then found, and nothing is ever written. Few rounds in every
 * build; {@code releng/campaign --line} does as many as it is told.
 */
class LineCampaignTest {

    private static final long SEED = Long.getLong("benchwright.line.seed", 20_261_128L);
    private static final int ROUNDS = Integer.getInteger("benchwright.line.rounds", 3);
    /** Every so many rounds the unit speaks OPC UA, whose server and connections take longer to come up. */
    private static final int OPC_UA_EACH = 3;
    private static final int MOST_PHASES = 6;
    private static final int MOST_PHASE_MILLIS = 700;
    private static final Duration PATIENCE = Duration.ofMinutes(4);
    private static final WatchRhythm RHYTHM = new WatchRhythm(Duration.ofMillis(50), 2, 3, Duration.ofMillis(400));
    private static final Register RUNS = new Register(Table.DISCRETE_INPUT, 3, NumberForm.BIT, false, false);
    private static final PointAddress STATE = new PointAddress.Node("ns=1;s=Unit.State");

    @TempDir
    private Path folder;
    private final Random random = new Random(SEED);
    private final List<Turn> turns = new ArrayList<>();
    private final List<Observed> told = new ArrayList<>();
    private final List<Taken> taken = new ArrayList<>();
    private final List<String> course = new ArrayList<>();
    private int faults;
    private int stops;
    private long samples;
    private long slowestStop;

    /** From a moment on, of the monotonic clock, the unit is good or bad. Until the change is acknowledged it may be either. */
    private record Turn(long asked, long acknowledged, boolean good) {
    }

    /** A value that a read came back with, and when the read began and ended. */
    private record Taken(long began, long ended, boolean good) {
    }

    /** A server of either kind, with its point. */
    private record Unit(Peer peer, PointAddress point, boolean opcUa) {

        void turn(boolean good) throws Exception {
            if (opcUa) {
                peer.set("state", good ? 1 : 0);
            } else {
                peer.set("input", 3, good ? 1 : 0);
            }
        }

        Endpoint behind(FaultyLine line) {
            return opcUa ? new Endpoint.OpcUa("opc.tcp://127.0.0.1:" + line.port(), Endpoint.Security.NONE, false)
                    : new Endpoint.Modbus("127.0.0.1", line.port(), 1);
        }

        Duration timeout() {
            return opcUa ? Duration.ofSeconds(1) : Duration.ofMillis(150);
        }
    }

    @Test
    void whateverTheLineDoesOnlyWhatWasSeenIsTold() throws Exception {
        Unit modbus = new Unit(Peer.modbus(0), RUNS, false);
        Unit opcUa = new Unit(Peer.opcUa(0, folder), STATE, true);
        try {
            for (int round = 1; round <= ROUNDS; round++) {
                carryOut(round, round % OPC_UA_EACH == 0 ? opcUa : modbus);
            }
        } finally {
            modbus.peer().close();
            opcUa.peer().close();
        }
        assertEquals(0, modbus.peer().writes() + opcUa.peer().writes(), "requests that would change something");
        assertEquals(ROUNDS, stops, "each round ends with a stop that is found");
        Optional.ofNullable(System.getProperty("benchwright.line.report")).ifPresent(this::report);
    }

    private void carryOut(int round, Unit unit) throws Exception {
        turns.clear();
        told.clear();
        taken.clear();
        course.clear();
        turn(unit, true);
        ScheduledExecutorService timer = Executors.newSingleThreadScheduledExecutor();
        try (FaultyLine line = new FaultyLine(unit.peer().port());
                WatchSources sources = new WatchSources(folder, Clock.systemUTC(), Ticker.system())) {
            OneUnit judge = new OneUnit(List.of(unit.point()));
            PointReader reader = noting(sources.open(unit.behind(line), judge, unit.timeout()));
            try (UnitWatch watch = new UnitWatch(reader, judge, RHYTHM, Clock.systemUTC(), Ticker.system(), this::take)) {
                watch.start(timer, Duration.ZERO);
                await("it is seen", watch::seeing);
                disturb(line);
                line.become(Fault.NONE);
                await("it is seen again", watch::seeing);
                assertTrue(all().stream().noneMatch(LineCampaignTest::isStop), () -> "a fault of the line was taken for a stop: " + all());
                long began = System.nanoTime();
                turn(unit, false);
                await("the stop", watch::stopped);
                slowestStop = Math.max(slowestStop, System.nanoTime() - began);
                stops++;
            }
        } catch (AssertionError e) {
            throw new AssertionError("round " + round + " of seed " + SEED + ": " + e.getMessage() + "; faults " + course + "; told " + all(), e);
        } finally {
            timer.shutdownNow();
        }
        assertTrueToTheUnit();
        assertInOrder();
    }

    /** Random faults of random length; every third at least until silence is told. */
    private void disturb(FaultyLine line) throws Exception {
        int phases = 1 + random.nextInt(MOST_PHASES);
        for (int i = 0; i < phases; i++) {
            Fault fault = Fault.values()[random.nextInt(Fault.values().length)];
            long silences = silences();
            line.become(fault);
            course.add(fault + " " + System.nanoTime() / 1_000_000);
            Thread.sleep(50 + random.nextInt(MOST_PHASE_MILLIS));
            if (fault != Fault.NONE) {
                faults++;
                if (random.nextInt(3) == 0) {
                    // It may have been silent before, and nobody says so twice.
                    await("silence on a line that is " + fault, () -> silences() > silences || endsSilent());
                }
            }
        }
    }

    private void turn(Unit unit, boolean good) throws Exception {
        long asked = System.nanoTime();
        unit.turn(good);
        turns.add(new Turn(asked, System.nanoTime(), good));
    }

    private PointReader noting(PointReader reader) {
        return new PointReader() {
            @Override
            public CompletionStage<PointValues> read() {
                long began = System.nanoTime();
                return reader.read().whenComplete((values, failure) -> {
                    if (failure == null) {
                        noted(new Taken(began, System.nanoTime(), values.values().values().iterator().next().signum() != 0));
                    }
                });
            }

            @Override
            public void close() {
                reader.close();
            }
        };
    }

    private synchronized void noted(Taken value) {
        taken.add(value);
        samples++;
    }

    private synchronized void take(List<Observed> observed) {
        told.addAll(observed);
    }

    private synchronized List<Observed> all() {
        return List.copyOf(told);
    }

    private long silences() {
        return all().stream().filter(Observed.Silent.class::isInstance).count();
    }

    private boolean endsSilent() {
        List<Observed> all = all();
        return !all.isEmpty() && all.get(all.size() - 1) instanceof Observed.Silent;
    }

    private static boolean isStop(Observed observed) {
        return observed instanceof Observed.Changed changed && changed.stop();
    }

    /** A late answer to an earlier question, or what nobody said, would be a value that the unit did not have while it was asked. */
    private synchronized void assertTrueToTheUnit() {
        for (Taken value : taken) {
            boolean possible = false;
            for (int i = 0; i < turns.size(); i++) {
                boolean begunBefore = turns.get(i).asked() <= value.ended();
                boolean stillSo = i + 1 == turns.size() || turns.get(i + 1).acknowledged() >= value.began();
                possible |= begunBefore && stillSo && turns.get(i).good() == value.good();
            }
            assertTrue(possible, () -> "a value that the unit did not have: " + value + " of " + turns);
        }
    }

    /** After silence nothing is held before it is seen again, and no run reaches across. */
    private void assertInOrder() {
        boolean seen = false;
        Duration silentSince = Duration.ZERO;
        for (Observed each : all()) {
            if (each instanceof Observed.Sees sees) {
                seen = true;
                silentSince = sees.at().offset();
            } else if (each instanceof Observed.Silent) {
                seen = false;
            } else if (each instanceof Observed.Held held) {
                assertTrue(seen, () -> "held while it was not seen: " + all());
                assertFalse(held.from().offset().compareTo(silentSince) < 0, "a run reaches across a silence: " + all());
                assertTrue(held.missed() < held.samples() * RHYTHM.silentAfter(), "missed in a row as many as are a silence: " + held);
            }
        }
    }

    private static void await(String what, BooleanSupplier condition) throws InterruptedException {
        long until = System.nanoTime() + PATIENCE.toNanos();
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < until, "waited too long: " + what);
            Thread.sleep(5);
        }
    }

    private void report(String file) {
        try {
            Files.writeString(Path.of(file), ("seed %d: %d rounds, %d faults of the line, %d values taken, each the unit's own; %d stops found, "
                    + "the latest %d ms after it; no request to write%n").formatted(SEED, ROUNDS, faults, samples, stops, slowestStop / 1_000_000));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
