package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.CompletableFuture;

import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.present.EntryKind;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.workshop.Approvals;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;

/** A technician at the Bench perspective. */
final class Technician {

    static final String C16 = "tarn-c16-acceptance.procedure";

    private Technician() {
    }

    static Path procedures() {
        return Path.of(System.getProperty("benchwright.procedures")).toAbsolutePath().normalize();
    }

    static Desk desk() {
        return PlatformUI.getWorkbench().getService(Desk.class);
    }

    /** Opens a test of a procedure and waits until its card is there. */
    static OpenTest open(String procedure, String serial, boolean rehearsal) throws Exception {
        if (!rehearsal) {
            approve(procedure);
        }
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.CARD_VIEW);
        CompletableFuture<OpenTest> opening = desk().open(
                new Desk.Request(procedures().resolve(procedure), serial, "QN", "bench 1", rehearsal));
        Screen.waitFor("test of " + serial, opening::isDone);
        OpenTest test = opening.get();
        look(test);
        return test;
    }

    /** Has the three people of {@link Approved} in the register of the desk's ledger. */
    static void register() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(desk().ledger())) {
            if (ledger.people().isEmpty()) {
                Approved.people(ledger, BenchTime.real());
            }
        }
    }

    /** Has two people approve the procedure in the desk's ledger, unless they have. */
    static void approve(String procedure) throws Exception {
        Reading.Ready ready = (Reading.Ready) new ProcedureReader(LanguageServices.create()).read(procedures().resolve(procedure));
        register();
        try (BenchLedger ledger = BenchLedger.open(desk().ledger())) {
            if (ledger.revisions().current(Approvals.key(ready.plan())).isEmpty()) {
                Approved.approve(ledger, BenchTime.real(), ready.plan(), ready.text());
            }
        }
    }

    /** Selects a test and waits until its card is the one that is entered into. */
    static void look(OpenTest test) {
        if (!desk().selected().equals(test.id())) {
            desk().select(test.id());
        }
        seen(test);
    }

    /** Answers what is asked now through the step card's field, and waits for what comes of it. */
    static void answer(OpenTest test, Answers answers) {
        scanIfAsked(test);
        Shown asked = seen(test);
        if (asked.kind() != EntryKind.TIME) {
            type(asked, answers.to(asked.key()), answers);
        }
        after(test, asked);
    }

    /** Types into the card of a test, Enter behind each part, once the card shows the test as it stands. */
    static void enter(OpenTest test, String... parts) {
        seen(test);
        Screen.enter(parts);
    }

    /** Types into the card of a test, as {@link #enter}, and waits for what comes of it; the test as it stands then. */
    static Shown entered(OpenTest test, String... parts) {
        Shown asked = seen(test);
        Screen.enter(parts);
        return after(test, asked);
    }

    /** The test as it stands once it has changed, and its card shows that. */
    static Shown after(OpenTest test, Shown before) {
        Screen.waitFor("after " + before.key() + ": " + before.card().question() + " " + test.shown().last(), () -> test.shown().version() > before.version());
        return seen(test);
    }

    /** Does something that must come to nothing. A note is written behind it, so that whatever came of it would stand before that. */
    static void nothingComesOf(OpenTest test, Runnable deed) {
        Shown before = seen(test);
        deed.run();
        Screen.settle();
        test.note("nothing came of it");
        assertEquals(before.version() + 1, after(test, before).version(), "something came of it: " + test.shown().soFar());
    }

    /** Presses a key in the entry of a test, once the card shows the test as it stands. */
    static void key(OpenTest test, int keyCode, char character) {
        seen(test);
        Screen.key(Screen.entryFields().get(0), keyCode, character);
    }

    /** Whoever comes back to a unit of several says first which one it is. */
    private static void scanIfAsked(OpenTest test) {
        Shown locked = seen(test);
        if (locked.card().question().startsWith("Scan or type the serial number")) {
            entered(test, locked.serial());
        }
    }

    /** The test as it stands, once the card shows it so. */
    static Shown seen(OpenTest test) {
        // The one that was compared, as the next may come at any moment.
        Shown[] seen = new Shown[1];
        Screen.waitFor("the card of " + test.id(), () -> {
            seen[0] = test.shown();
            return (test.id() + " " + seen[0].version()).equals(Screen.asksFor());
        });
        return seen[0];
    }

    private static void type(Shown asked, String answer, Answers answers) {
        if (asked.kind() == EntryKind.MARK) {
            Screen.key(Screen.entryFields().get(0), ' ', ' ');
        } else if (asked.kind() == EntryKind.LINES) {
            lines(answer);
        } else if (asked.kind() == EntryKind.FILE) {
            Screen.enter(answers.file(answer));
        } else if (asked.card().parts().size() > 1) {
            Screen.enter(Arrays.stream(answer.split(";")).map(String::strip).toArray(String[]::new));
        } else {
            Screen.enter(answer);
        }
    }

    /** A fault log: what is pasted into its first cell, and Enter on the empty row behind the last. */
    static void lines(String answer) {
        Screen.entryFields().get(0).setText(answer);
        Screen.settle();
        if (!lastCode().getText().isEmpty()) {
            Screen.key(lastCode(), SWT.CR, '\r');
        }
        Screen.key(lastCode(), SWT.CR, '\r');
        Screen.settle();
    }

    /** Where the code of the next line of a fault log is typed. */
    static Text lastCode() {
        return Screen.entryFields().get(Screen.entryFields().size() - 2);
    }

    /** Answers until the test stands at that key. */
    static void answerUntil(OpenTest test, Answers answers, String key) {
        while (!test.shown().key().equals(key)) {
            answer(test, answers);
        }
    }

    /** Answers to the end. */
    static void finish(OpenTest test, Answers answers) {
        while (test.shown().ending().isEmpty()) {
            answer(test, answers);
        }
    }
}
