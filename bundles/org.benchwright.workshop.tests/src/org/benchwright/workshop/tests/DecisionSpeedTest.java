package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.internal.DecisionCheck;
import org.benchwright.workshop.internal.ProjectionCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How many events a second the third line of verification derives again, in one thread; what it derives must be sound. How fast is for
 * {@code releng/speed}, which asks for more by {@code benchwright.speed.events} and {@code .decisions}.
 */
class DecisionSpeedTest {

    private static final int TESTS = 20;
    /** Events a second. */
    private static final double LEAST = 100_000;

    @TempDir
    Path folder;

    private Path build() throws Exception {
        Path file = folder.resolve("bench.ledger");
        MovedTime time = new MovedTime();
        CompiledProcedure procedure = new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT);
        try (BenchLedger ledger = BenchLedger.open(file)) {
            Approved.people(ledger, time.benchTime());
            Approved.approve(ledger, time.benchTime(), procedure.plan(), procedure.text());
            Workshop workshop = ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime());
            workshop.attach(Files.write(folder.resolve("plate.jpg"), new byte[] {1}));
            for (int i = 0; i < TESTS; i++) {
                new GoodTechnician(time).carryToTheEnd(workshop.open(procedure, new SerialNumber(String.format(Locale.ROOT, "C16-%06d", i)),
                        new Actor("QN", Role.TECHNICIAN), false));
            }
        }
        return file;
    }

    @Test
    void everyDecisionOfManyTestsIsDerivedAgain() throws Exception {
        long wanted = Integer.getInteger("benchwright.speed.events", 1000);
        try (Ledger ledger = SqliteLedger.openReadOnly(build())) {
            List<List<LedgerEntry>> tests = new ArrayList<>();
            for (TestId test : ledger.tests()) {
                tests.add(ledger.entries(test));
            }
            derive(ledger, tests, wanted / 2);
            ThreadMXBean processor = ManagementFactory.getThreadMXBean();
            long worked = processor.getCurrentThreadCpuTime();
            long begin = System.nanoTime();
            long events = derive(ledger, tests, wanted);
            double rate = events / ((System.nanoTime() - begin) / 1e9);
            double rateOfWork = events / ((processor.getCurrentThreadCpuTime() - worked) / 1e9);
            String file = System.getProperty("benchwright.speed.decisions", "");
            if (!file.isEmpty()) {
                String result = rate >= LEAST ? "ok" : String.format(Locale.ROOT, "missed, %.0f decided events/s, goal %.0f", rate, LEAST);
                Files.writeString(Path.of(file), String.format(Locale.ROOT,
                        "decisions: %d events of tests of %d events derived again, %.0f/s (%.0f/s of processor time)%nresult: %s%n", events,
                        tests.get(0).size(), rate, rateOfWork, result));
            }
            assertTrue(rate > 0 && rateOfWork > 0);
        }
    }

    private static long derive(Ledger ledger, List<List<LedgerEntry>> tests, long wanted) throws Exception {
        long events = 0;
        while (events < wanted) {
            DecisionCheck check = new DecisionCheck(ledger, ProjectionCheck.none(), Optional.empty(), false);
            for (List<LedgerEntry> entries : tests) {
                assertEquals(List.of(), check.check(entries.get(0).test(), entries));
                events += entries.size();
            }
        }
        return events;
    }
}
