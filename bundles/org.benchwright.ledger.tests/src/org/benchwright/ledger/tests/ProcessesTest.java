package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.VerificationRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several writers at once, and writers that are killed. */
class ProcessesTest {

    private static final TestId TEST = new TestId("T-22222-22222");

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void make() throws LedgerException {
        file = folder.resolve("bench.ledger");
        SqliteLedger.open(file).close();
    }

    @Test
    void twoConnectionsNeverOverwriteEachOther() throws Exception {
        ExecutorService writers = Executors.newFixedThreadPool(2);
        try {
            List<Future<Integer>> running = new ArrayList<>();
            for (int writer = 0; writer < 2; writer++) {
                running.add(writers.submit(writer(40)));
            }
            int conflicts = 0;
            for (Future<Integer> one : running) {
                conflicts += one.get();
            }
            try (Ledger ledger = SqliteLedger.openReadOnly(file)) {
                assertEquals(80, ledger.lastSequence(TEST), conflicts + " conflicts");
            }
        } finally {
            writers.shutdownNow();
        }
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(file)).clean());
    }

    private Callable<Integer> writer(int appends) {
        return () -> {
            int conflicts = 0;
            try (Ledger ledger = SqliteLedger.open(file)) {
                SampleLedger sample = new SampleLedger(ledger, BenchKeyStore.openOrCreate(folder));
                for (int done = 0; done < appends;) {
                    long last = ledger.lastSequence(TEST);
                    try {
                        ledger.append(TEST, last, List.of(sample.observation(TEST, done)));
                        done++;
                    } catch (SequenceConflictException faster) {
                        conflicts++;
                    }
                }
            }
            return conflicts;
        };
    }

    @Test
    void manyStartsAtOnceMakeOneLedger() throws Exception {
        ExecutorService starts = Executors.newFixedThreadPool(6);
        try {
            for (int round = 0; round < 30; round++) {
                Path fresh = folder.resolve("round" + round).resolve("bench.ledger");
                Callable<Long> start = () -> {
                    try (Ledger ledger = SqliteLedger.open(fresh)) {
                        return ledger.lastSequence(TEST);
                    }
                };
                for (Future<Long> one : starts.invokeAll(Collections.nCopies(6, start))) {
                    assertEquals(0L, one.get());
                }
            }
        } finally {
            starts.shutdownNow();
        }
    }

    @Test
    void severalProcessesMakeOneLedgerAtOnceAndAppendInTurn() throws Exception {
        Path fresh = folder.resolve("fresh").resolve("bench.ledger");
        List<Process> processes = new ArrayList<>();
        for (String name : List.of("window", "terminal", "watch")) {
            processes.add(ChildJvm.start(AppendingProcess.class, fresh.toString(), TEST.value(), name, "20"));
        }
        Set<String> acknowledged = new TreeSet<>();
        for (Process process : processes) {
            acknowledged.addAll(acknowledged(process));
            assertTrue(process.waitFor(5, TimeUnit.MINUTES));
            assertEquals(0, process.exitValue());
        }
        assertEquals(60, acknowledged.size(), "each pair of numbers was given once");
        try (Ledger ledger = SqliteLedger.openReadOnly(fresh)) {
            assertEquals(120, ledger.entries(TEST).size());
        }
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(fresh)).clean());
    }

    @Test
    void aKilledWriterLosesNothingThatWasAcknowledged() throws Exception {
        Random random = new Random(11);
        long before = 0;
        for (int round = 0; round < 5; round++) {
            Process process = ChildJvm.start(AppendingProcess.class, file.toString(), TEST.value(), "round " + round, "1000000");
            long last = killAfter(process, 1 + random.nextInt(25));
            try (Ledger ledger = SqliteLedger.open(file)) {
                List<LedgerEntry> entries = ledger.entries(TEST);
                assertTrue(entries.size() >= last && last > before, last + " acknowledged, " + entries.size() + " kept");
                assertEquals(0, entries.size() % 2, "pairs are appended whole or not at all");
                before = entries.size();
            }
            assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(file)).faults());
        }
    }

    /** Reads until {@code lines} appends were acknowledged, then kills without warning; the last number that was acknowledged. */
    private static long killAfter(Process process, int lines) throws Exception {
        try (BufferedReader output = process.inputReader()) {
            assertEquals("ready", output.readLine());
            String last = "";
            for (int i = 0; i < lines; i++) {
                last = output.readLine();
            }
            // Through the handle: the process itself would close the stream that is still to be read.
            process.toHandle().destroyForcibly();
            // What was acknowledged until the kill took effect counts too; a line that the kill cut in two does not.
            for (String line = output.readLine(); line != null; line = output.readLine()) {
                last = line.matches("\\d+ \\d+") && Long.parseLong(line.split(" ")[1]) > Long.parseLong(last.split(" ")[1]) ? line : last;
            }
            assertTrue(process.waitFor(5, TimeUnit.MINUTES));
            return Long.parseLong(last.split(" ")[1]);
        }
    }

    private static List<String> acknowledged(Process process) throws Exception {
        try (BufferedReader output = process.inputReader()) {
            return output.lines().filter(line -> !line.equals("ready")).toList();
        }
    }
}
