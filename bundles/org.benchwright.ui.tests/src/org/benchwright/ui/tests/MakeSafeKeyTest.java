package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Set;

import org.benchwright.present.Bench;
import org.benchwright.present.Bench.Clocks;
import org.benchwright.present.Bench.Work;
import org.benchwright.present.EntryKind;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Label;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Make safe is one key away, whatever the card shows. */
@ExtendWith(QuietLog.class)
class MakeSafeKeyTest {

    @Test
    void itIsOneKeyAwayWhateverIsAsked() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-500001", true);
        Answers answers = Answers.of("dropped-out-of-soak");
        Set<EntryKind> met = EnumSet.noneOf(EntryKind.class);
        while (test.shown().ending().isEmpty()) {
            Shown asked = Technician.seen(test);
            boolean first = asked.canMakeSafe() && met.add(asked.kind());
            if (first) {
                Screen.key(Screen.entryFields().get(0), '1', '!');
                assertTrue(asksForTheReason(), "at " + asked.key());
                Screen.key(Screen.entryFields().get(0), SWT.ESC, SWT.ESC);
                assertFalse(asksForTheReason(), "at " + asked.key());
                assertTrue(asked.kind() == EntryKind.TIME || asked.version() == test.shown().version(), "at " + asked.key());
            }
            Technician.answer(test, answers);
        }
        // In a rehearsal a waiting time may be over before anybody can press a key; BenchWindowTest does so in a real one.
        met.add(EntryKind.TIME);
        // Nor is a password asked in one, before which an exclamation mark is a letter like others.
        assertEquals(EnumSet.complementOf(EnumSet.of(EntryKind.NOTHING, EntryKind.SECRET)), met);
    }

    @Test
    void itWorksFromAnywhereInTheWindow() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-500002", true);
        Technician.seen(test);
        Screen.perspective(Ids.AUDIT);
        Screen.command("org.benchwright.ui.makeSafe");
        assertTrue(asksForTheReason());
        Screen.enter("smoke");
        Screen.waitFor("make safe", () -> test.shown().card().place().startsWith("Make safe"));
    }

    @Test
    void aTestThatIsHeldElsewhereIsTakenUpFirst() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-500003", true);
        try (Bench terminal = Bench.open(Technician.desk().ledger(), Clocks.system())) {
            terminal.takeUp(test.id(), new Work("C16-500003", "KM", "terminal", "another face", true))
                    .answer("yes, KG-2026-311", Path.of(""));
        }
        Screen.enter("yes, KG-2026-312");
        Screen.waitFor("the telling", () -> test.shown().elsewhere());
        Technician.seen(test);
        Screen.key(Screen.entryFields().get(0), '1', '!');
        assertFalse(asksForTheReason(), "first who takes it up");
        Screen.enter("LW");
        Screen.waitFor("taken up", () -> !test.shown().elsewhere());
        Technician.seen(test);
        assertTrue(asksForTheReason());
        Screen.enter("smoke");
        Screen.waitFor("make safe", () -> test.shown().card().place().startsWith("Make safe"));
        assertTrue(test.shown().soFar().stream().anyMatch(line -> line.who().equals("LW") && line.words().contains("smoke")));
    }

    private static boolean asksForTheReason() {
        return Screen.all(Label.class).anyMatch(label -> label.getText().startsWith("reason, then Enter"));
    }
}
