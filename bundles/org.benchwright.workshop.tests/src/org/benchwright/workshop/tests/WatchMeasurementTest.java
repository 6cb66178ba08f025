package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;

import org.benchwright.core.Actor;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.core.Ticker;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.workshop.BenchEndpoints;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.WatchListener;
import org.benchwright.workshop.WatchRound;
import org.benchwright.workshop.Workshop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a watch costs, and whether it is in time: simulated units, a sample a second each, a real ledger. Small in every build;
 * {@code releng/measure-watch} does it with a thousand units for ten minutes and prints a report. Numbers are checked by the launcher's sizes only.
 */
class WatchMeasurementTest {

    private static final Actor QN = new Actor("QN", Role.TECHNICIAN);
    private static final int BAD_TO_STOP = 2;
    private static final Duration PERIOD = Duration.ofSeconds(1);
    private static final long ALLOWED_MILLIS = BAD_TO_STOP * PERIOD.toMillis() + 200;
    private static final double MOST_CORES = 0.5;
    /** More than so many times the memory at first isn't flat. */
    private static final double FLAT = 1.1;

    @TempDir
    private Path folder;
    private final List<String> report = new ArrayList<>();

    /** What one round came to. */
    private record Cost(int units, double seconds, double cores, long taken, long missed, long heapBefore, long heapAfter) {
    }

    @Test
    void aWatchMissesNoSampleAndRecordsEveryStopInTime() throws Exception {
        int units = Integer.getInteger("benchwright.watch.units", 12);
        int seconds = Integer.getInteger("benchwright.watch.seconds", 4);
        int stopping = Math.max(4, seconds / 5);
        say("Watch: simulated units, one sample a second each, stop after %d bad; %d processors, Java %s", BAD_TO_STOP,
                Runtime.getRuntime().availableProcessors(), System.getProperty("java.version"));
        Cost steady = steady(units, Duration.ofSeconds(seconds));
        say("steady: %d units for %.0f s: %d samples, %d missed; %.3f cores; heap after collection %.1f MB at first, %.1f MB at last", units,
                steady.seconds(), steady.taken(), steady.missed(), steady.cores(), steady.heapBefore() / 1e6, steady.heapAfter() / 1e6);
        long[] late = stops(units, Duration.ofSeconds(stopping));
        say("stops: %d of %d recorded; later than the stop by: median %d ms, 99 %% %d ms, most %d ms; allowed %d ms", late.length, units,
                late[late.length / 2], late[late.length * 99 / 100], late[late.length - 1], ALLOWED_MILLIS);
        for (int each = 10; each <= units; each *= 10) {
            Cost cost = steady(each, Duration.ofSeconds(Math.max(3, Math.min(60, seconds / 10))));
            say("%d units: %.3f cores, %.3f ms of processor time a unit and sample", each, cost.cores(), 1000 * cost.cores() * cost.seconds() / Math.max(1, cost.taken()));
        }
        report.add(result(steady, late));
        Optional.ofNullable(System.getProperty("benchwright.watch.report")).ifPresent(file -> write(Path.of(file)));
        assertTrue(steady.taken() >= (long) units * (seconds - 2), () -> report.toString());
        assertEquals(units, late.length, () -> report.toString());
    }

    private static String result(Cost steady, long[] late) {
        List<String> missed = new ArrayList<>();
        if (steady.missed() > 0) {
            missed.add(steady.missed() + " samples missed");
        }
        if (late[late.length - 1] > ALLOWED_MILLIS) {
            missed.add("a stop recorded " + late[late.length - 1] + " ms later, goal " + ALLOWED_MILLIS);
        }
        if (steady.cores() >= MOST_CORES) {
            missed.add(String.format(Locale.ROOT, "%.2f processors, goal %.1f", steady.cores(), MOST_CORES));
        }
        if (steady.heapAfter() > FLAT * steady.heapBefore()) {
            missed.add(String.format(Locale.ROOT, "%.1f MB at the end, %.1f at first", steady.heapAfter() / 1e6, steady.heapBefore() / 1e6));
        }
        return missed.isEmpty() ? "result: ok" : "result: missed, " + String.join("; ", missed);
    }

    private void say(String form, Object... values) {
        report.add(String.format(Locale.ROOT, form, values));
    }

    private void write(Path file) {
        try {
            Files.write(file, report);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    // ---- rounds

    private Cost steady(int units, Duration length) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(fresh())) {
            onSoak(ledger, units);
            BenchEndpoints endpoints = BenchEndpoints.read(folder.resolve("none"));
            for (int i = 0; i < units; i++) {
                endpoints = endpoints.with(serial(i), "simulated");
            }
            // Written down five times as often as a service does, so that the ledger's part shows.
            try (WatchRound round = ledger.watch(endpoints, Clock.systemUTC(), Ticker.system(), Duration.ofMinutes(2), (kind, test, serial, words) -> {
                assertTrue(kind == WatchListener.Kind.SEES || kind == WatchListener.Kind.SILENT, words);
            })) {
                assertEquals(units, round.look());
                Thread.sleep(2000);
                long heap = heap();
                Map<String, Long> before = round.counts();
                long cpu = cpu();
                long began = System.nanoTime();
                Thread.sleep(length.toMillis());
                double seconds = (System.nanoTime() - began) / 1e9;
                double cores = (cpu() - cpu) / 1e9 / seconds;
                Map<String, Long> after = round.counts();
                return new Cost(units, seconds, cores, after.get("taken") - before.get("taken"), after.get("missed") - before.get("missed"), heap, heap());
            }
        }
    }

    /** Every unit stops once, at a random instant; how much later it is in the ledger, in order of size. */
    private long[] stops(int units, Duration within) throws Exception {
        Random random = new Random(20260302);
        Map<String, Duration> stopsAfter = new HashMap<>();
        Map<String, Instant> told = new ConcurrentHashMap<>();
        Path file = fresh();
        try (BenchLedger ledger = BenchLedger.open(file)) {
            Map<String, String> tests = onSoak(ledger, units);
            BenchEndpoints endpoints = BenchEndpoints.read(folder.resolve("none"));
            for (int i = 0; i < units; i++) {
                Duration after = Duration.ofMillis(2000 + random.nextInt((int) within.toMillis()));
                stopsAfter.put(serial(i), after);
                endpoints = endpoints.with(serial(i), "simulated stops after " + after.toMillis() + " ms");
            }
            try (WatchRound round = ledger.watch(endpoints, Clock.systemUTC(), Ticker.system(), Duration.ofMinutes(10), (kind, test, serial, words) -> {
                if (kind == WatchListener.Kind.STOPPED) {
                    told.put(serial, Instant.now());
                }
            })) {
                assertEquals(units, round.look());
                Instant until = Instant.now().plus(within).plusSeconds(60);
                while (told.size() < units && Instant.now().isBefore(until)) {
                    Thread.sleep(50);
                }
            }
            List<Long> late = new ArrayList<>();
            for (Map.Entry<String, Instant> stop : told.entrySet()) {
                WatchFact.Changed changed = (WatchFact.Changed) ledger.test(tests.get(stop.getKey())).orElseThrow().run().events().stream()
                        .map(event -> event.body()).filter(WatchFact.Changed.class::isInstance).findFirst().orElseThrow();
                Instant began = changed.firstBad().received().minus(changed.firstBad().offset());
                late.add(Duration.between(began.plus(stopsAfter.get(stop.getKey())), stop.getValue()).toMillis());
            }
            long[] sorted = late.stream().mapToLong(Long::longValue).toArray();
            Arrays.sort(sorted);
            return sorted;
        }
    }

    private Path fresh() throws Exception {
        return Files.createTempDirectory(folder, "bench").resolve("bench.ledger");
    }

    private static String serial(int number) {
        return String.format(Locale.ROOT, "C16-%06d", number);
    }

    /** Rehearsals that have arrived at a soak: their tests' ids by serial number. */
    private static Map<String, String> onSoak(BenchLedger ledger, int units) throws Exception {
        Plan p = SamplePlan.acceptance();
        SoakStage s = (SoakStage) p.stages().stream().filter(SoakStage.class::isInstance).findFirst().orElseThrow();
        SoakStage watched = new SoakStage(s.name(), s.title(), s.hazards(), s.lasting(), s.keep(), s.conditions(), s.lookEvery(), s.lookTolerance(), s.gap(),
                s.stopped(), s.stoppedOutside(), Optional.of(new SoakStage.Watch(PERIOD, BAD_TO_STOP, 3)));
        Plan plan = new Plan(p.format(), p.name(), p.title(), p.revision(), p.purpose(), p.retestOf(), p.provesBenchFor(), p.family(), p.claim(), p.hazards(),
                p.protectedItems(), p.instruments(), List.of(), p.preconditionUnmet(), List.of(watched, p.stages().get(3)), p.makeSafe(), p.end());
        Workshop workshop = ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), BenchTime.real());
        List<Observation.ConditionReading> readings = List.of(new Observation.ConditionReading("ambient", "22 degC", Quantity.of("22", "degC")),
                new Observation.ConditionReading("supply", "24.0 V", Quantity.of("24.0", "V")));
        Map<String, String> tests = new HashMap<>();
        for (int i = 0; i < units; i++) {
            Sitting sitting = workshop.open(new CompiledProcedure(plan, SamplePlan.TEXT), new SerialNumber(serial(i)), QN, true);
            sitting.record(new Observation.Looked(watched.name(), Observation.Sight.YES, "", readings));
            tests.put(serial(i), sitting.test());
        }
        return tests;
    }

    private static long cpu() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }

    private static long heap() throws InterruptedException {
        for (int i = 0; i < 3; i++) {
            System.gc();
            Thread.sleep(50);
        }
        return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
    }
}
