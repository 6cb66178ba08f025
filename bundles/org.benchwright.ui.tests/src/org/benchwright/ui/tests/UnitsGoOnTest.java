package org.benchwright.ui.tests;

import java.util.concurrent.atomic.AtomicInteger;

import org.benchwright.present.Bench;
import org.benchwright.present.Bench.Clocks;
import org.benchwright.present.Bench.Work;
import org.benchwright.present.TestDialogue;
import org.benchwright.ui.internal.desk.DeskListener;
import org.benchwright.ui.internal.desk.DeskListener.Change;
import org.benchwright.ui.internal.desk.OpenTest;
import org.junit.jupiter.api.Test;


/** A list that stands still would pass for a quiet bench. An error is logged here on purpose, so that this has no {@link QuietLog}. */
class UnitsGoOnTest {

    @Test
    void theUnitsAreFollowedWhateverOneWhoListensDoes() throws Exception {
        OpenTest here = Technician.open(Technician.C16, "C16-200008", true);
        AtomicInteger failures = new AtomicInteger();
        DeskListener failing = (change, test) -> {
            if (change == Change.UNITS && failures.getAndIncrement() == 0) {
                throw new IllegalStateException("for the test");
            }
        };
        try (Bench terminal = Bench.open(Technician.desk().ledger(), Clocks.system())) {
            Screen.waitFor("the unit", () -> has("QN", here));
            Technician.desk().add(failing);
            TestDialogue there = terminal.takeUp(here.id(), new Work("C16-200008", "KM", "terminal", "another face", true));
            Screen.waitFor("the failure", () -> failures.get() > 0);
            there.handOver("LW");
            Screen.waitFor("what came after it", () -> has("LW", here));
            Screen.waitFor("it is told all the same", () -> failures.get() > 1);
        } finally {
            Technician.desk().remove(failing);
        }
    }

    private static boolean has(String technician, OpenTest test) {
        return Technician.desk().units().stream().anyMatch(unit -> unit.test().equals(test.id()) && unit.technician().equals(technician));
    }
}
