package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Reading;
import org.benchwright.present.Bench;
import org.benchwright.present.Bench.Clocks;
import org.benchwright.present.Bench.Work;
import org.benchwright.present.TestDialogue;
import org.benchwright.ui.internal.author.ApprovedInLedger;
import org.benchwright.ui.internal.desk.ProcedureReading;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.core.runtime.ILogListener;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Platform;
import org.eclipse.core.runtime.jobs.Job;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** What the editor knows of approvals: new only when revisions are, and not asked for at every letter where it can't be had. */
@ExtendWith(QuietLog.class)
class ApprovedInLedgerTest {

    @TempDir
    private Path folder;

    /** Asks, and waits until what that begins is over. */
    private static ApprovedRevisions asked(ApprovedInLedger approved) {
        approved.now();
        Screen.waitFor("the reading", () -> Stream.of(Job.getJobManager().find(null)).noneMatch(job -> job.getName().equals("Reading revisions")));
        return approved.now();
    }

    @Test
    void eventsOfTestsChangeNothingAndAnApprovalDoes() throws Exception {
        Path file = folder.resolve("bench.ledger");
        Reading.Ready ready = new ProcedureReading().read(Technician.procedures().resolve(Technician.C16), new FamilyChoice.AsWritten());
        try (BenchLedger ledger = BenchLedger.open(file)) {
            Approved.people(ledger, BenchTime.real());
        }
        AtomicInteger told = new AtomicInteger();
        try (ApprovedInLedger approved = new ApprovedInLedger(file, told::incrementAndGet)) {
            ApprovedRevisions before = asked(approved);
            assertEquals(1, told.get(), "it is known for the first time");
            try (Bench bench = Bench.open(file, Clocks.system())) {
                Work work = new Work("C16-520001", "QN", "bench 1", "a test", true);
                TestDialogue test = bench.begin(ready.plan(), ready.text(), work);
                test.answer("yes, KG-2026-311", Path.of(""));
                assertSame(before, asked(approved), "or every event would have the whole folder looked at again");
            }
            assertEquals(1, told.get());
            try (BenchLedger ledger = BenchLedger.open(file)) {
                Approved.approve(ledger, BenchTime.real(), ready.plan(), ready.text());
            }
            ApprovedRevisions after = asked(approved);
            assertNotSame(before, after);
            assertTrue(after.find(ready.plan().name(), ready.plan().family().name(), ready.plan().revision()).isPresent());
            assertEquals(2, told.get());
        }
    }

    @Test
    void aLedgerThatCannotBeReadIsToldOnceUntilItChanges() throws Exception {
        Path file = Files.writeString(folder.resolve("bench.ledger"), "no ledger");
        List<IStatus> warnings = new CopyOnWriteArrayList<>();
        ILogListener listener = (status, plugin) -> {
            if (status.getPlugin().equals("org.benchwright.ui") && status.getSeverity() == IStatus.WARNING) {
                warnings.add(status);
            }
        };
        Platform.addLogListener(listener);
        try (ApprovedInLedger approved = new ApprovedInLedger(file, () -> { })) {
            for (int letter = 0; letter < 5; letter++) {
                asked(approved);
            }
            assertEquals(1, warnings.size(), warnings.toString());
        } finally {
            Platform.removeLogListener(listener);
        }
    }
}
