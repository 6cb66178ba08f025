package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.core.Role;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.Registrar;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IEditorPart;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** From a draft to an approved revision and its withdrawal, in the window: who may is decided by the workshop, what is refused is told. */
@ExtendWith(QuietLog.class)
class RevisionsWindowTest {

    private static final String FAMILIES = """
            family siskin "Siskin" { serial "S-###" lamp pwr green "Power" }
            family siskin_two "Siskin two" like siskin { serial "S2-###" }
            """;
    private static final String PROCEDURE = """
            procedure NAME "Siskin at a glance" revision 1 {
                applies to siskin
                instrument meter "Multimeter" reads V dc up to 60 V, uncertainty at most 0.05 V, coverage 2
                stage work "Work" {
                    step volts "Measure the rail." {
                        measure rail with meter, limits 23.5 .. 24.5 V, decide guarded both ways
                            when undecided measure again at most 1, decide by mean, or conclude undecided "Too close to call."
                        otherwise conclude rejected "The rail is off."
                    }
                }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;
    private static final String RIGHT = Approved.PASSWORD;

    @TempDir
    private Path folder;
    private Path file;
    private IEditorPart editor;

    @BeforeEach
    void people() throws Exception {
        Technician.register();
    }

    /** Each test has a procedure of its own, as all write into the window's one ledger. */
    private void open(String name) throws Exception {
        Files.writeString(folder.resolve("siskin.family"), FAMILIES);
        file = Files.writeString(folder.resolve(name + ".procedure"), PROCEDURE.replace("NAME", name));
        editor = Engineer.open(file);
        Signer.look();
        Signer.waitForRow("1 | draft");
    }

    @AfterEach
    void closeIt() throws Exception {
        Engineer.closeAll();
        Screen.page().showView(Ids.PRINTED_VIEW);
    }

    private void change(String passage, String other) {
        Engineer.replace(editor, passage, other);
        Screen.page().saveEditor(editor, false);
        Screen.settle();
    }

    private static void prepareAndApprove() throws Exception {
        Signer.signs("&Prepare", "Prepare a revision", "RB", RIGHT);
        Signer.signs("&Approve", "Approve a revision", "KM", RIGHT);
    }

    @Test
    void onePersonPreparesAndASecondApprovesAfterReadingWhatItChanges() throws Exception {
        open("siskin_flow");
        Screen.waitFor("what it changes", () -> Signer.told().contains("no revision of it is approved yet"));
        Signer.signs("&Prepare", "Prepare a revision", "RB", RIGHT);
        Signer.waitForRow("1 | prepared (this text) | siskin | prepared by RB, ");
        Signer.in("&Approve", "Approve a revision", dialog -> {
            assertTrue(words(dialog).contains("no revision of it is approved yet"), words(dialog));
            String refused = Signer.sign(dialog, "RB", RIGHT);
            assertTrue(refused.contains("RB prepared it, and approval takes a second person."), refused);
            assertEquals(0, Signer.password(dialog).getCharCount(), "the password has left its field");
            assertEquals("", Signer.sign(dialog, "KM", RIGHT));
        });
        Signer.waitForRow("1 | approved (this text) | siskin | prepared by RB, ");
        assertTrue(Signer.rows().stream().anyMatch(row -> row.contains("approved by KM, ")), Signer.rows().toString());

        change("23.5 .. 24.5 V", "23.5 .. 24.3 V");
        Signer.waitForRow("1 | draft, changed since it was approved");
        Signer.waitForRow("1 | approved | siskin");
        Signer.in("&Prepare", "Prepare a revision", dialog -> {
            String refused = Signer.sign(dialog, "RB", RIGHT);
            assertTrue(refused.contains("Give the changed text the next revision number."), refused);
            dialog.close();
        });
        change("revision 1", "revision 2");
        Signer.waitForRow("2 | draft (this text) | siskin");
        Signer.signs("&Prepare", "Prepare a revision", "RB", RIGHT);
        Signer.waitForRow("2 | prepared (this text)");
        Signer.in("&Approve", "Approve a revision", dialog -> {
            assertTrue(words(dialog).contains("what revision 2 changes against revision 1, which is approved:"), words(dialog));
            assertTrue(words(dialog).contains("upper limit 24.5 V became 24.3 V"), words(dialog));
            assertEquals(0, Signer.password(dialog).getCharCount());
            assertEquals("", Signer.sign(dialog, "KM", RIGHT));
        });
        Signer.waitForRow("2 | approved (this text)");
        Signer.waitForRow("1 | superseded | siskin");
        Signer.select("2 | approved");
        Screen.waitFor("what it changes: " + Signer.told(), () -> Signer.told().contains("upper limit 24.5 V became 24.3 V"));
    }

    @Test
    void aRevisionIsWithdrawnForAReason() throws Exception {
        open("siskin_back");
        prepareAndApprove();
        Signer.waitForRow("1 | approved (this text)");
        Signer.select("1 | approved");
        Signer.in("&Withdraw", "Withdraw a revision", dialog -> {
            String refused = Signer.sign(dialog, "KM", RIGHT);
            assertTrue(refused.contains("A reason is needed."), refused);
            reason(dialog).setText("limit is wrong");
            assertEquals("", Signer.sign(dialog, "KM", RIGHT));
        });
        Signer.waitForRow("1 | withdrawn (this text)");
        assertTrue(Signer.rows().toString().contains(": limit is wrong"), Signer.rows().toString());
    }

    @Test
    void aWrongPasswordIsToldAndFiveLockTheKey() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(Technician.desk().ledger())) {
            Registrar registrar = ledger.registrar(BenchTime.real(), 10);
            registrar.add(Approved.by("LW"), "HT", "engineer HT", List.of(Role.ENGINEER));
            registrar.enroll(Approved.by("LW"), "HT", RIGHT.toCharArray());
        }
        open("siskin_wrong");
        Signer.in("&Prepare", "Prepare a revision", dialog -> {
            for (int i = 0; i < 5; i++) {
                String refused = Signer.sign(dialog, "HT", "wrong guess");
                assertTrue(refused.contains("not the password of HT"), refused);
            }
            String locked = Signer.sign(dialog, "HT", RIGHT);
            assertTrue(locked.contains("5 wrong passwords were given. The next one is looked at in "), locked);
            dialog.close();
        });
        assertTrue(Signer.rows().get(0).startsWith("1 | draft (this text)"), "nothing was signed: " + Signer.rows());
    }

    @Test
    void nobodySignsWithoutAPersonAPasswordOrARight() throws Exception {
        open("siskin_right");
        Signer.in("&Prepare", "Prepare a revision", dialog -> {
            Dialogs.enter(dialog);
            assertTrue(Dialogs.message(dialog).contains("Choose who signs."), Dialogs.message(dialog));
            String nothing = Signer.sign(dialog, "RB", "");
            assertTrue(nothing.contains("Type the password."), nothing);
            String supervisor = Signer.sign(dialog, "KM", RIGHT);
            assertTrue(supervisor.contains("KM is no engineer. A revision is prepared by an engineer."), supervisor);
            dialog.close();
        });
        Signer.in("&Approve", "Approve a revision", dialog -> {
            String early = Signer.sign(dialog, "KM", RIGHT);
            assertTrue(early.contains("was not prepared. Somebody else signs it as prepared first."), early);
            dialog.close();
        });
    }

    @Test
    void everythingIsReachedByItsLetter() throws Exception {
        open("siskin_keys");
        for (String[] each : new String[][] {{"prepare", "Prepare a revision", "[s, d, p]"}, {"approve", "Approve a revision", "[s, d, a]"}}) {
            Dialogs.answered(each[1], () -> Screen.command("org.benchwright.ui." + each[0]), dialog -> {
                assertEquals(each[2], Signer.letters(dialog).toString());
                assertTrue(Signer.areDifferent(Signer.letters(dialog)));
                assertEquals("&" + each[1].split(" ")[0], dialog.getDefaultButton().getText(), "Enter signs");
                dialog.close();
            });
        }
    }

    @Test
    void aFamilyLikeTheNamedOneHasAnApprovalOfItsOwn() throws Exception {
        open("siskin_like");
        Signer.waitForRow("1 | draft (this text) | siskin_two");
        Signer.select("1 | draft (this text) | siskin_two");
        prepareAndApprove();
        Signer.waitForRow("1 | approved (this text) | siskin_two");
        Signer.waitForRow("1 | draft (this text) | siskin |");
        newTest("S-001", (draft, rehearsal) -> draft.contains("Siskin at a glance, revision 1, for siskin: draft.") && !rehearsal);
        newTest("S2-001", (draft, rehearsal) -> draft.isEmpty() && rehearsal);
    }

    @Test
    void aTestNamesTheRevisionThatItUsed() throws Exception {
        open("siskin_named");
        prepareAndApprove();
        Signer.waitForRow("1 | approved (this text)");
        OpenTest test = Technician.open(file.toString(), "S-300", false);
        assertTrue(test.shown().card().unit().contains("Siskin at a glance, revision 1"), test.shown().card().unit());
        Auditor.showSheet(test, "S-300");
        Screen.waitFor("the sheet", () -> sheet().contains("prepared by RB, approved by KM on "));
        assertTrue(sheet().contains("Siskin at a glance, revision 1"), sheet());
        Screen.perspective(Ids.AUTHOR);
    }

    @Test
    void allProceduresAreListedWithTheirNames() throws Exception {
        open("siskin_all");
        prepareAndApprove();
        Signer.waitForRow("1 | approved (this text)");
        Screen.tick("All procedures", true);
        Screen.waitFor("their names", () -> Signer.list().getColumn(0).getWidth() > 0);
        assertTrue(Stream.of(Signer.list().getItems()).anyMatch(item -> item.getText(0).startsWith("Siskin at a glance")));
        Screen.tick("All procedures", false);
        Screen.waitFor("the own ones", () -> Signer.list().getColumn(0).getWidth() == 0);
    }

    @Test
    void noPasswordIsFoundInTheLedgerOrTheLayout() throws Exception {
        open("siskin_secret");
        prepareAndApprove();
        Signer.waitForRow("1 | approved (this text)");
        try (Stream<Path> files = Files.walk(Technician.desk().ledger().getParent())) {
            for (Path each : files.filter(Files::isRegularFile).toList()) {
                assertFalse(new String(Files.readAllBytes(each), StandardCharsets.ISO_8859_1).contains(RIGHT), each.toString());
            }
        }
    }

    @FunctionalInterface
    private interface Locked {
        boolean is(String draft, boolean rehearsalIsFree);
    }

    /** Types a serial number into New test, and waits until it says what that unit may be tested by. */
    private void newTest(String serial, Locked expected) throws Exception {
        Dialogs.answered("New test", () -> Screen.command("org.benchwright.ui.newTest"), dialog -> {
            choose(dialog);
            Dialogs.fields(dialog).get(0).setText(serial);
            Screen.waitFor("what holds for " + serial + ": " + draft(dialog), () -> expected.is(draft(dialog), Dialogs.box(dialog).isEnabled()));
            dialog.close();
        });
    }

    private void choose(Shell dialog) {
        org.eclipse.swt.widgets.Combo procedures = Screen.all(dialog, org.eclipse.swt.widgets.Combo.class).get(0);
        assertTrue(procedures.getItemCount() > 0);
        int row = procedures.indexOf(String.valueOf(file.getFileName()));
        assertTrue(row >= 0, "the procedure of the editor is offered");
        procedures.select(row);
        procedures.notifyListeners(SWT.Selection, new Event());
    }

    private static String draft(Shell dialog) {
        return Screen.all(dialog, Label.class).stream().map(Label::getText).filter(text -> text.contains("only be rehearsed")).findFirst().orElse("");
    }

    private static Text reason(Shell dialog) {
        return Dialogs.fields(dialog).stream().filter(text -> (text.getStyle() & SWT.PASSWORD) == 0).findFirst().orElseThrow();
    }

    private static String words(Shell dialog) {
        return Screen.all(dialog, StyledText.class).stream().map(StyledText::getText).findFirst().orElse("");
    }

    private static String sheet() {
        return Screen.story("Unit S-300");
    }
}
