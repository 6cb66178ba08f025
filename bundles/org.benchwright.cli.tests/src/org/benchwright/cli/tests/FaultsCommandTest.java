package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.event.Observation;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.tests.GoodTechnician;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Codes that the family's notes don't tell are collected for the engineer. */
class FaultsCommandTest {

    @TempDir
    private Path folder;

    private void logged(CommandRunner bench, String serial, boolean rehearsal, Observation.FaultLine... lines) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(bench.ledger())) {
            Workshop workshop = ledger.workshop(new Station("bench2", "Benchwright 0.1.0"), bench.time().benchTime());
            workshop.attach(Files.write(folder.resolve("photo.jpg"), new byte[] {1}));
            Sitting sitting = workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber(serial),
                    new Actor("QN", Role.TECHNICIAN), rehearsal);
            new GoodTechnician(bench.time()).but("as_found.fault_log", new Observation.FaultLogEntered("fault_log", List.of(lines)))
                    .carryToTheEnd(sitting);
        }
    }

    @Test
    void unknownCodesAreCountedByTests() throws Exception {
        CommandRunner bench = new CommandRunner(folder).approved();
        assertEquals("No fault log has a code in it.", bench.run("faults", "--ledger", bench.ledger().toString()).lastLine());
        String known = SamplePlan.acceptance().family().faults().get(0).code();
        logged(bench, "C16-000001", false, new Observation.FaultLine("X99", "odd"), new Observation.FaultLine("X99", "again"),
                new Observation.FaultLine(known, ""));
        logged(bench, "C16-000002", false, new Observation.FaultLine("X99", ""), new Observation.FaultLine("Y1", ""));
        CommandRunner.Ended listed = bench.run("faults", "--ledger", bench.ledger().toString());
        assertEquals(0, listed.status(), listed.err());
        assertTrue(listed.said().startsWith("Codes in fault logs: 3. Without a note in their family: 2."), listed.out());
        assertFalse(listed.said().contains(" " + known + " "), listed.out());
        assertTrue(listed.said().contains("tests 2, first 2026-03-02, last 2026-03-05") || listed.said().contains("2 2026-03-02 2026-03-05"), listed.out());
        assertTrue(bench.run("faults", "--all", "--ledger", bench.ledger().toString()).out().contains(known));
    }
}
