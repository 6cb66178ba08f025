package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.benchwright.present.Bench;
import org.benchwright.present.Bench.Clocks;
import org.benchwright.present.Bench.Work;
import org.benchwright.present.TestDialogue;
import org.benchwright.ui.internal.bench.UnitsView;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Window and terminal at work on one bench folder: the terminal is another bench on the same ledger, as its process would have it. */
@ExtendWith(QuietLog.class)
class ElsewhereTest {

    private static final Work TERMINAL = new Work("C16-200001", "KM", "terminal", "another face", true);

    @Test
    void whoeverComesSecondIsToldAndNothingIsOverwritten() throws Exception {
        OpenTest here = Technician.open(Technician.C16, "C16-200001", true);
        try (var terminal = Bench.open(Technician.desk().ledger(), Clocks.system())) {
            TestDialogue there = terminal.takeUp(here.id(), TERMINAL);
            there.answer("yes, KG-2026-311", Path.of(""));
            int known = there.soFar().size();

            Screen.enter("yes, KG-2026-312");
            Screen.waitFor("the telling", () -> here.shown().elsewhere());
            assertTrue(here.shown().last().refused().isPresent());
            assertEquals(known, terminal.record(here.id()).get().story().size(), "nothing was written over it");

            there.answer("yes", Path.of(""));
            Technician.seen(here);
            Screen.enter("QN");
            Screen.waitFor("taken up again", () -> !here.shown().elsewhere());
            Shown again = here.shown();
            assertTrue(again.soFar().size() > known, "what was entered there is kept");
            assertTrue(again.soFar().stream().anyMatch(line -> line.who().equals("KM")));
        }
    }

    @Test
    void eachMayHaveATestOfItsOwn() throws Exception {
        OpenTest here = Technician.open(Technician.C16, "C16-200002", true);
        OpenTest other = Technician.open(Technician.C16, "C16-200004", true);
        try (var terminal = Bench.open(Technician.desk().ledger(), Clocks.system())) {
            Answers answers = Answers.of("rejected-at-power-up");
            Answers answersThere = Answers.of("rejected-at-power-up");
            TestDialogue there = terminal.takeUp(other.id(), TERMINAL);
            Technician.look(here);
            for (int i = 0; i < 4; i++) {
                there.answer(answersThere.to(there.key()), Path.of(""));
                Technician.answer(here, answers);
            }
            assertEquals(List.of(), here.shown().soFar().stream().filter(line -> line.who().equals("KM")).toList());
            assertEquals(5, there.soFar().stream().filter(line -> line.who().equals("KM")).count());
        }
    }

    @Test
    void whatWasOpenWhenTheWindowClosedIsTakenUpByTheNextOne() throws Exception {
        String test;
        Shown left;
        try (Desk first = new Desk(Technician.desk().ledger(), "window")) {
            var opening = first.open(new Desk.Request(Technician.procedures().resolve(Technician.C16), "C16-200003", "QN", "bench 1", true));
            OpenTest open = opening.get();
            test = open.id();
            open.answer(open.shown().version(), List.of("yes, KG-2026-311"));
            Screen.waitFor("the answer", () -> open.shown().version() == 2);
            left = open.shown();
        }
        try (Desk second = new Desk(Technician.desk().ledger(), "window")) {
            second.add((change, changed) -> { });
            Screen.waitFor("the list", () -> second.units().stream().anyMatch(unit -> unit.test().equals(test)));
            var unit = second.units().stream().filter(row -> row.test().equals(test)).findFirst().get();
            OpenTest again = second.takeUp(unit, "QN", "bench 1").get();
            assertEquals(left.card().question(), again.shown().card().question());
            assertEquals(left.soFar(), again.shown().soFar().subList(0, left.soFar().size()));
        }
    }

    @Test
    void whatWaitsToBeForwardedIsToldAboveTheUnits() throws Exception {
        OpenTest here = Technician.open(Technician.C16, "C16-200005", true);
        Path settings = Technician.desk().ledger().resolveSibling("shared.properties");
        Files.writeString(settings, "url = jdbc:postgresql://localhost:1/ledger\nuser = bench\n");
        try {
            Screen.enter("yes, KG-2026-311");
            Technician.seen(here);
            UnitsView units = (UnitsView) Screen.page().showView("org.benchwright.ui.units");
            Screen.waitFor("the telling", () -> units.getContentDescription().contains("events wait to be forwarded since"));
        } finally {
            Files.delete(settings);
        }
    }
}
