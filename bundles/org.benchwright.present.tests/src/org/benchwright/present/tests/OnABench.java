package org.benchwright.present.tests;

import java.nio.file.Files;
import java.nio.file.Path;

import org.benchwright.engine.plan.Plan;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.MovedTime;
import org.benchwright.workshop.tests.SamplePhoto;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** Tests of what is shown and entered at a bench, each with a ledger and a clock of its own, and a photo to attach. */
abstract class OnABench {

    @TempDir
    Path folder;
    final MovedTime time = new MovedTime();
    final Bench.Clocks clocks = new Bench.Clocks(time, time, time);
    Bench bench;

    @BeforeEach
    void openBench() throws Exception {
        bench = Bench.open(ledger(), clocks);
        Files.write(folder.resolve("plate.jpg"), SamplePhoto.of("plate"));
    }

    @AfterEach
    void closeBench() throws CannotStoreException {
        bench.close();
    }

    Path ledger() {
        return folder.resolve("bench.ledger");
    }

    /** Real tests can be opened by this plan. */
    void approve(Plan plan) throws Exception {
        Approved.in(ledger(), time.benchTime(), plan, SamplePlan.TEXT);
    }

    static Bench.Work work(String serial, String technician, boolean rehearsal) {
        return new Bench.Work(serial, technician, "bench 2", "Benchwright 0.1.0", rehearsal);
    }
}
