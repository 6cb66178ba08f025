package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.RecordFault;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A bench folder of its own with people in its ledger, who seal tests and sign about them. */
abstract class WithSealedTests {

    @TempDir
    Path folder;
    final MovedTime time = new MovedTime();
    SealedTests tests;

    @BeforeEach
    void people() throws Exception {
        tests = new SealedTests(Files.createDirectory(folder.resolve("bench")), time);
    }

    void assertSound() throws Exception {
        LedgerReport report = tests.report();
        assertTrue(report.sound(), report.toString());
    }

    static List<String> reasons(List<RecordFault> faults) {
        return faults.stream().map(RecordFault::reason).toList();
    }
}
