package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;

import org.benchwright.core.PointAddress;
import org.benchwright.core.PointAddress.NumberForm;
import org.benchwright.core.PointAddress.Table;
import org.benchwright.core.SerialNumber;
import org.benchwright.core.Ticker;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.SoakAttempt;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.WatchStanding;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.engine.plan.WatchMap;
import org.benchwright.engine.plan.WatchPoint;
import org.benchwright.workshop.BenchEndpoints;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.StoreException;
import org.benchwright.workshop.WatchListener;
import org.benchwright.workshop.WatchRound;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A watch over the units of a real ledger, sampled every 40 ms; it and the people meet in the ledger only. */
class WatchRoundTest extends AtTheBench {

    private static final String SERIAL = "C16-004711";
    private static final Duration PATIENCE = Duration.ofMinutes(2);

    /** What the watch told. */
    private record Told(WatchListener.Kind kind, String serial, String words) {
    }

    private final List<Told> told = new CopyOnWriteArrayList<>();
    private Clock clock;

    private static Plan plan() {
        Plan p = SamplePlan.acceptance();
        PointAddress input = new PointAddress.Register(Table.DISCRETE_INPUT, 3, NumberForm.BIT, false, false);
        PointAddress volts = new PointAddress.Register(Table.INPUT_REGISTER, 30, NumberForm.SIGNED_16, false, false);
        WatchMap map = new WatchMap(WatchMap.Protocol.MODBUS, List.of(new WatchPoint(new WatchPoint.InMode("run", BigDecimal.ONE), input),
                new WatchPoint(new WatchPoint.Reads("supply", new BigDecimal("0.1"), BigDecimal.ZERO, UnitOfMeasure.of("V")), volts)));
        UnitFamily f = p.family();
        UnitFamily family = new UnitFamily(f.name(), f.title(), f.supply(), f.serialMask(), f.lamps(), f.modes(), f.faults(), f.stopStays(),
                f.nominal(), f.stopUntil(), Optional.of(map));
        List<Stage> stages = p.stages().stream().map(stage -> stage instanceof SoakStage soak ? (Stage) quick(soak) : stage).toList();
        return new Plan(p.format(), p.name(), p.title(), p.revision(), p.purpose(), p.retestOf(), p.provesBenchFor(), family, p.claim(), p.hazards(),
                p.protectedItems(), p.instruments(), p.preconditions(), p.preconditionUnmet(), stages, p.makeSafe(), p.end());
    }

    private static SoakStage quick(SoakStage s) {
        return new SoakStage(s.name(), s.title(), s.hazards(), s.lasting(), s.keep(), s.conditions(), s.lookEvery(), s.lookTolerance(), s.gap(),
                s.stopped(), s.stoppedOutside(), Optional.of(new SoakStage.Watch(Duration.ofMillis(40), 2, 3)));
    }

    private Sitting onSoak() throws Exception {
        Sitting sitting = workshop.open(new CompiledProcedure(plan(), SamplePlan.TEXT), new SerialNumber(SERIAL), QN, true);
        workshop.attach(plate());
        new GoodTechnician(time).carryOnUntil(sitting, "endurance.look");
        // From now on time passes by itself, from where the technician's clock stands.
        clock = Clock.offset(Clock.systemUTC(), Duration.between(Instant.now(), time.instant()));
        return sitting;
    }

    private WatchRound watch(String endpoint) throws Exception {
        BenchEndpoints endpoints = BenchEndpoints.read(folder.resolve("none")).with(SERIAL, endpoint);
        return ledger.watch(endpoints, clock, Ticker.system(), Duration.ofMillis(200),
                (kind, test, serial, words) -> told.add(new Told(kind, serial, words)));
    }

    private TestRun run(Sitting sitting) throws Exception {
        return ledger.test(sitting.test()).orElseThrow().run();
    }

    private static void await(BooleanSupplier condition, Object about) throws InterruptedException {
        Instant until = Instant.now().plus(PATIENCE);
        while (!condition.getAsBoolean()) {
            assertTrue(Instant.now().isBefore(until), () -> "waited in vain: " + about);
            Thread.sleep(10);
        }
    }

    private boolean heard(WatchListener.Kind kind) {
        return told.stream().anyMatch(one -> one.kind() == kind);
    }

    private static long count(TestRun run, Class<?> kind) {
        return run.events().stream().map(TestEvent::body).filter(kind::isInstance).count();
    }

    @Test
    void aStopOpensTheFaultStageAndIsDerivedAgain() throws Exception {
        Sitting sitting = onSoak();
        // Long enough for several runs on a machine that is slow to write one down.
        try (WatchRound round = watch("simulated stops after 3 s")) {
            assertEquals(1, round.look());
            await(() -> heard(WatchListener.Kind.STOPPED), told);
            assertEquals(0, round.look());
        }
        TestRun run = run(sitting);
        assertEquals("log.fault_log", run.demand().key());
        assertTrue(count(run, WatchFact.Held.class) >= 2, "runs are written down now and then");
        WatchFact.Changed stop = (WatchFact.Changed) run.events().stream().map(TestEvent::body).filter(WatchFact.Changed.class::isInstance)
                .findFirst().orElseThrow();
        assertTrue(stop.by().simulated());
        Duration between = stop.firstBad().offset().minus(stop.lastGood().orElseThrow().offset());
        assertFalse(between.isNegative() || between.isZero());
        assertEquals("not mode run: reads 0", stop.shows());
        assertTrue(SoakAttempt.of(run).get(0).stoppedBy().isPresent());
        assertEquals(List.of(), BenchLedger.verify(folder.resolve("bench.ledger")).decisions());
    }

    @Test
    void aRestartLosesNoEvidenceAndTheGapIsToldAsSilence() throws Exception {
        Sitting sitting = onSoak();
        try (WatchRound first = watch("simulated")) {
            first.look();
            await(() -> heard(WatchListener.Kind.SEES), told);
            Thread.sleep(1000);
        }
        TestRun after = run(sitting);
        assertFalse(WatchStanding.of(after).orElseThrow().seeing());
        assertTrue(after.witnessed().toMillis() >= 200, "what was seen until the end is on record: " + after.witnessed());
        told.clear();
        try (WatchRound second = watch("simulated")) {
            second.look();
            await(() -> heard(WatchListener.Kind.SEES), told);
        }
        assertEquals(2, run(sitting).lastWatch());
        assertTrue(SoakAttempt.of(run(sitting)).get(0).watching().orElseThrow().notSeen().toMillis() > 0);
        assertEquals(List.of(), BenchLedger.verify(folder.resolve("bench.ledger")).decisions());
    }

    @Test
    void silenceIsToldAndThenTheUnitIsSeenAgain() throws Exception {
        Sitting sitting = onSoak();
        try (WatchRound round = watch("simulated silent from 600 ms for 2 s")) {
            round.look();
            await(() -> told.stream().filter(one -> one.kind() == WatchListener.Kind.SEES).count() == 2, told);
        }
        assertEquals(List.of(WatchListener.Kind.SEES, WatchListener.Kind.SILENT, WatchListener.Kind.SEES, WatchListener.Kind.SILENT),
                told.stream().map(Told::kind).toList());
        assertEquals("the simulated unit is silent", told.get(1).words());
        assertEquals(1, run(sitting).lastWatch());
    }

    @Test
    void whoeverWorksAtTheTestIsNotDisturbed() throws Exception {
        Sitting sitting = onSoak();
        try (WatchRound round = watch("simulated")) {
            round.look();
            await(() -> heard(WatchListener.Kind.SEES), told);
            for (int i = 0; i < 30; i++) {
                sitting.record(new Fact.Noted("note " + i));
                Thread.sleep(30);
            }
        }
        TestRun run = run(sitting);
        assertEquals(30, count(run, Fact.Noted.class));
        assertTrue(count(run, WatchFact.Held.class) >= 2);
        assertEquals(0, count(run, Derived.DepartureNoted.class));
    }

    @Test
    void aClockThatIsSetBackRecordsNothingUntilItHasCaughtUpAndIsSaidOnce() throws Exception {
        Sitting sitting = onSoak();
        AtomicReference<Duration> back = new AtomicReference<>(Duration.ZERO);
        // The soak began some time ago.
        Clock steady = Clock.offset(clock, Duration.ofSeconds(10));
        clock = new Clock() {
            @Override
            public Instant instant() {
                return steady.instant().minus(back.get());
            }

            @Override
            public ZoneId getZone() {
                return steady.getZone();
            }

            @Override
            public Clock withZone(ZoneId zone) {
                throw new UnsupportedOperationException();
            }
        };
        try (WatchRound round = watch("simulated")) {
            round.look();
            await(() -> heard(WatchListener.Kind.SEES), told);
            Thread.sleep(400);
            back.set(Duration.ofSeconds(3));
            await(() -> heard(WatchListener.Kind.TROUBLE), told);
            // What is tried anew meanwhile is refused for the same reason; once the clock has caught up it is taken.
            for (int i = 0; i < 300 && told.stream().filter(one -> one.kind() == WatchListener.Kind.SEES).count() < 2; i++) {
                round.look();
                Thread.sleep(50);
            }
        }
        assertEquals(2, told.stream().filter(one -> one.kind() == WatchListener.Kind.SEES).count(), told.toString());
        // Within a run of samples the step shows as times that do not fit, between two runs as a clock that was set back.
        List<String> trouble = told.stream().filter(one -> one.kind() == WatchListener.Kind.TROUBLE).map(Told::words).toList();
        assertFalse(trouble.isEmpty(), told.toString());
        assertEquals(trouble.stream().distinct().toList(), trouble, "each is said once");
        assertTrue(run(sitting).lastWatch() >= 2);
        assertEquals(List.of(), BenchLedger.verify(folder.resolve("bench.ledger")).decisions());
    }

    @Test
    void aSoakThatAPersonEndsIsWatchedNoLonger() throws Exception {
        Sitting sitting = onSoak();
        try (WatchRound round = watch("simulated")) {
            round.look();
            await(() -> heard(WatchListener.Kind.SEES), told);
            sitting.record(new Fact.Abandoned("bench needed"));
            await(() -> {
                try {
                    return round.look() == 0;
                } catch (StoreException e) {
                    throw new AssertionError(e);
                }
            }, told);
        }
        assertFalse(heard(WatchListener.Kind.TROUBLE), told.toString());
    }

    @Test
    void whatCannotBeWatchedIsSaidOnce() throws Exception {
        onSoak();
        BenchEndpoints none = BenchEndpoints.read(folder.resolve("none"));
        try (WatchRound round = ledger.watch(none, clock, Ticker.system(), Duration.ofSeconds(1),
                (kind, test, serial, words) -> told.add(new Told(kind, serial, words)))) {
            assertEquals(0, round.look());
            assertEquals(0, round.look());
        }
        assertEquals(List.of(new Told(WatchListener.Kind.TROUBLE, SERIAL,
                "Nobody said where unit C16-004711 is reached. Write it into the file watch.units in the bench folder.")), told);
    }

    @ParameterizedTest
    @CsvSource({"C16-1 modbus 192.0.2.7, watch.units:1: write a serial number", "C16-1 = telnet 192.0.2.7, watch.units:1: \"telnet 192.0.2.7\" does not say",
            "C16-1 = modbus 192.0.2.7:99999, watch.units:1: modbus 192.0.2.7:99999: 99999 is not between 1 and 65535",
            "C16-1 = modbus $(reboot), watch.units:1: \"modbus $(reboot)\" does not say"})
    void aFileThatIsNotUnderstoodIsRefusedWithItsLine(String line, String words) throws Exception {
        Path file = Files.writeString(folder.resolve("watch.units"), line + "\n");
        RefusedException refused = assertThrows(RefusedException.class, () -> BenchEndpoints.read(file));
        assertTrue(refused.getMessage().contains(words), refused.getMessage());
    }

    @Test
    void aByteOrderMarkIsNoPartOfTheFirstLine() throws Exception {
        assertDoesNotThrow(() -> BenchEndpoints.read(Files.writeString(folder.resolve("watch.units"), "\uFEFF# units of this bench\nC16-1 = simulated\n")));
    }
}
