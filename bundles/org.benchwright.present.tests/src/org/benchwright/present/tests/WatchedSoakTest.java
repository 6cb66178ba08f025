package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.core.Ticker;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.present.Bench;
import org.benchwright.present.HandingOver;
import org.benchwright.present.RecordSheet;
import org.benchwright.present.TimelineLine;
import org.benchwright.report.HandOver;
import org.benchwright.report.Page;
import org.benchwright.report.TestReport;
import org.benchwright.workshop.BenchEndpoints;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.WatchListener;
import org.benchwright.workshop.WatchRound;
import org.benchwright.workshop.tests.ChangedPlan;
import org.benchwright.workshop.tests.GoodTechnician;
import org.benchwright.workshop.tests.MovedTime;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people are shown of a soak that was watched until the unit stopped; the entries are those of a real watch. */
class WatchedSoakTest {

    private static final Pattern RUNS = Pattern.compile("SIMULATED, no unit: as it must be from (\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d:\\d\\d) to (\\S+ \\S+): for .+, (\\d+) samples, entries (\\d+) to (\\d+).*");

    @TempDir
    private Path folder;
    private final MovedTime time = new MovedTime();

    private static Plan plan() {
        return ChangedPlan.of(SamplePlan.acceptance()).watched(new SoakStage.Watch(Duration.ofMillis(40), 2, 50)).plan();
    }

    /** Watches until the unit stops; a run of equal samples ends after 200 ms, so that there are several. */
    private TestRun watched() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(folder.resolve("bench.ledger"))) {
            Sitting sitting = ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime())
                    .open(new CompiledProcedure(plan(), SamplePlan.TEXT), new SerialNumber("C16-004711"), new Actor("QN", Role.TECHNICIAN), true);
            new GoodTechnician(time).carryOnUntil(sitting, "endurance.look");
            Clock clock = Clock.offset(Clock.systemUTC(), Duration.between(Instant.now(), time.instant()));
            CountDownLatch stopped = new CountDownLatch(1);
            try (WatchRound round = ledger.watch(BenchEndpoints.read(folder.resolve("none")).with("C16-004711", "simulated stops after 2 s"), clock,
                    Ticker.system(), Duration.ofMillis(200), (kind, test, serial, words) -> {
                        if (kind == WatchListener.Kind.STOPPED) {
                            stopped.countDown();
                        }
                    })) {
                round.look();
                assertTrue(stopped.await(60, TimeUnit.SECONDS), "never stopped");
            }
            return ledger.test(sitting.test()).orElseThrow().run();
        }
    }

    private RecordSheet sheet() throws Exception {
        try (Bench bench = Bench.read(folder.resolve("bench.ledger"), new Bench.Clocks(time, time, time))) {
            return bench.record(bench.units().get(0).test()).orElseThrow();
        }
    }

    @Test
    void runsAreOneLineWithFromToAndCountAndTheCourseIsShownOnSheetAndPaper() throws Exception {
        TestRun run = watched();
        List<WatchFact.Held> held = run.events().stream().map(event -> event.body()).filter(WatchFact.Held.class::isInstance)
                .map(WatchFact.Held.class::cast).toList();
        assertTrue(held.size() > 2, "too few entries to be folded: " + held);
        RecordSheet sheet = sheet();
        List<TimelineLine> lines = sheet.story().stream().filter(line -> line.words().contains("as it must be")).toList();
        List<Long> samples = new ArrayList<>();
        long entries = 0;
        for (TimelineLine line : lines) {
            Matcher runs = RUNS.matcher(line.words());
            if (runs.matches()) {
                samples.add(Long.valueOf(runs.group(3)));
                assertEquals(Long.parseLong(runs.group(5)), line.sequence());
                assertTrue(runs.group(2).compareTo(runs.group(1)) >= 0, line.words());
                long from = Long.parseLong(runs.group(4));
                entries += run.events().stream().filter(e -> e.sequence() >= from && e.sequence() <= line.sequence()
                        && e.body() instanceof WatchFact.Held).count();
            } else {
                samples.add(held.stream().filter(f -> line.words().contains(f.samples() + " samples")).findFirst().orElseThrow().samples());
                entries++;
            }
        }
        assertTrue(lines.size() < held.size(), lines.toString());
        assertEquals(held.size(), entries, "each entry is in one line");
        assertEquals(held.stream().mapToLong(WatchFact.Held::samples).sum(), samples.stream().mapToLong(Long::longValue).sum());
        assertEquals(run.events().size(), sheet.story().stream().mapToLong(TimelineLine::sequence).max().orElseThrow());

        HandOver papers = HandingOver.of(folder.resolve("bench.ledger"), sheet.row().test(), time.instant());
        TestReport report = papers.report();
        assertEquals(List.of("technician QN"), report.heading().technicians(), "who carried it out: neither the bench nor the watch");
        assertEquals(run.events().size(), report.story().size(), "machines get every event");
        assertEquals(sheet.story().size(), report.shown().story().size());
        assertTrue(report.shown().story().stream().anyMatch(line -> line.words().matches(".*as it must be from \\S+T\\S+:\\d\\dZ to \\S+Z: .*")), "papers are read anywhere");
        Page.Section state = sheet.courses().get(0);
        assertEquals(report.shown().courses(), sheet.courses());
        assertTrue(state.sentences().stream().anyMatch(words -> words.contains("only where the intervals do not overlap")), state.toString());
        assertTrue(state.plot().orElseThrow().series().stream().anyMatch(series -> series.name().equals("the stop lies between")), state.toString());
        assertTrue(papers.html().contains("only where the intervals do not overlap") && papers.html().contains("<figure><svg"));
        assertTrue(papers.record().length > 10_000, "the plots are in it");
    }
}
