package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.benchwright.present.Bench;
import org.benchwright.present.HelpPage;
import org.benchwright.present.InstrumentDesk;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.ReceivedRow;
import org.benchwright.present.Receiving;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.bench.Notice;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.ui.internal.help.PageView;
import org.benchwright.ui.internal.house.House;
import org.benchwright.ui.internal.look.Theme;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.jface.text.ITextOperationTarget;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Pictures of the window for the manual, taken in the build so that they never show what is no more. */
@ExtendWith(QuietLog.class)
class ScreensTest {

    private static final Path FOLDER = Path.of(System.getProperty("benchwright.screens", "target/screens"));

    /** A short look at a unit as it comes in, so that its picture needs no soak. */
    private static final String INCOMING = """
            family tarn_c16 "Tarn C16 modular controller" {
                serial "C16-######"
                lamp pwr green "Power"
                keeps fault_log "Processor fault log" by cell
                fault W01 "Watchdog expired" { next "Soak again warm." }
            }
            procedure incoming "Incoming look" revision 1 {
                applies to tarn_c16
                stage work "Work" { step log "Read the log." { enter fault_log } step look "Look." { confirm "It is whole." or conclude rejected "It is broken." } }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;
    private static final Point SMALL = new Point(1280, 800);

    @Test
    void startPage() throws Exception {
        Screen.perspective(Ids.START);
        take("start");
    }

    @Test
    void stepCard() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-004711", true);
        Answers answers = Answers.of("dropped-out-of-soak");
        Technician.answerUntil(test, answers, "precondition.earth_bond");
        take("precondition");
        Technician.answerUntil(test, answers, "hazard.mains");
        take("hazard");
        Technician.answerUntil(test, answers, "supply.supply_volts");
        take("measurement");
        Technician.answer(test, answers);
        take("decided");
        Technician.answerUntil(test, answers, "lamps.on");
        take("mark");
        Technician.answer(test, answers);
        take("countdown");
        Technician.answerUntil(test, answers, "lamps.ok");
        take("question");
        Technician.answerUntil(test, answers, "blank_log.erase.owner_program");
        take("protected");
        Technician.answerUntil(test, answers, "start.started");
        take("mode");
        Technician.answerUntil(test, answers, "endurance.look");
        take("look");
        Technician.answerUntil(test, answers, "stop_log.fault_log");
        Screen.entryFields().get(0).setText("W01 02:14, second night\nZ99 odd\nS03");
        Screen.settle();
        takeLargeAndSmall("fault-log");
        Screen.entryFields().forEach(field -> field.setText(""));
        Technician.answer(test, answers);
        take("fault-explained");
        Screen.key(Screen.entryFields().get(0), '1', '!');
        Screen.settle();
        take("make-safe");
        Screen.key(Screen.entryFields().get(0), SWT.ESC, SWT.ESC);
        Technician.finish(test, answers);
        take("end");
    }

    /** A rack of units on soak: a round, a reminder, and who works there. */
    @Test
    void rack(@TempDir Path temporary) throws Exception {
        Path procedure = Rack.procedure(temporary, "10 min");
        OpenTest last = Rack.onSoak(procedure, "K-004733", "B 1");
        List<OpenTest> rack = List.of(last, Rack.onSoak(procedure, "K-004731", "A 1"), Rack.onSoak(procedure, "K-004732", "A 2"));
        Screen.command("org.benchwright.ui.rounds");
        Table rounds = Screen.one(Table.class, table -> table.getColumnCount() == 4 && table.getColumn(0).getText().equals("Position"));
        rounds.setSelection(0);
        Screen.key(rounds, ' ', ' ');
        Screen.waitFor("on record", () -> Screen.all(Label.class).anyMatch(label -> label.getText().endsWith("as expected, on record")));
        Screen.waitFor("the notice", () -> Stream.of(Display.getCurrent().getShells()).anyMatch(shell -> shell.getData(Notice.DATUM) != null));
        take("rounds");
        Dialogs.answered("Sign in", () -> Screen.command("org.benchwright.ui.signIn"), dialog -> {
            taken(dialog, "sign-in");
            dialog.close();
        });
        Desk desk = Technician.desk();
        desk.station().signIn(desk.ledger(), "RB", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
        try {
            Screen.page().showView(Ids.CARD_VIEW);
            Technician.look(last);
            desk.station().lock();
            desk.stationChanged();
            take("locked");
            Screen.command("org.benchwright.ui.rounds");
            Theme.use(PlatformUI.getWorkbench(), true);
            take("dark-rounds");
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
            Screen.page().hideView(Screen.page().findView(Ids.ROUNDS_VIEW));
            desk.station().signOut();
            desk.stationChanged();
            rack.forEach(test -> test.makeSafe("the pictures are taken"));
            Screen.waitFor("no looks", () -> desk.units().stream().noneMatch(unit -> unit.serial().startsWith("K-0047") && unit.nextLook().isPresent()));
        }
    }

    @Test
    void darkStepCard() throws Exception {
        Theme.use(PlatformUI.getWorkbench(), true);
        try {
            OpenTest test = Technician.open(Technician.C16, "C16-004712", true);
            Answers answers = Answers.of("accepted");
            Technician.answerUntil(test, answers, "hazard.charge");
            take("dark-hazard");
            Technician.answerUntil(test, answers, "lamps.flt");
            take("dark-question");
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
        }
    }

    @Test
    void author(@TempDir Path temporary) throws Exception {
        IEditorPart editor = Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        Screen.waitFor("a clean folder", () -> Engineer.remarksSay().contains("no remarks"));
        try {
            writeAndTake(editor, "author", "author-meaning", "author-proposals");
            Theme.use(PlatformUI.getWorkbench(), true);
            take("dark-author");
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
            Engineer.closeAll();
        }
    }

    @Test
    void asPrinted(@TempDir Path temporary) throws Exception {
        IEditorPart editor = Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        Screen.waitFor("the sheet", () -> Screen.all(StyledText.class).anyMatch(text -> Engineer.isSheet(text)));
        try {
            Engineer.goBehind(editor, "step lamps \"");
            Screen.waitFor("the step", () -> Engineer.inSight("PWR (Power) green steady within"));
            take("as-printed");
            Theme.use(PlatformUI.getWorkbench(), true);
            take("dark-as-printed");
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
            Engineer.closeAll();
        }
    }

    @Test
    void manual() throws Exception {
        Screen.perspective(Ids.BENCH);
        PageView.show(Screen.page(), HelpPage.TECHNICIAN);
        Screen.waitFor("the page", () -> !Screen.story("The technician").isEmpty());
        StyledText page = Screen.one(StyledText.class, text -> PageView.SHEET.equals(text.getData()));
        try {
            page.setTopIndex(page.getLineAtOffset(page.getText().indexOf("Receive it")));
            take("manual");
            Color light = page.getStyleRangeAtOffset(0).foreground;
            Theme.use(PlatformUI.getWorkbench(), true);
            Screen.waitFor("the dark look", () -> !light.equals(page.getStyleRangeAtOffset(0).foreground));
            take("dark-manual");
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
            Screen.page().hideView(Screen.page().findView(Ids.PAGE_VIEW));
        }
    }

    private static void writeAndTake(IEditorPart editor, String withRemarks, String withMeaning, String withProposals) throws Exception {
        Engineer.replace(editor, "expect pwr steady within 2 s of on", "expect pwm steady within 500 ms of on");
        Screen.waitFor("two remarks", () -> Engineer.marks(editor).size() == 2 && Engineer.remarkRows().size() == 2);
        Engineer.openRemark(0);
        take(withRemarks);
        Engineer.press("F1");
        Screen.waitFor("the page", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().startsWith("unknown-lamp")));
        take(withMeaning);
        Screen.page().hideView(Screen.page().findView(Ids.PAGE_VIEW));
        Engineer.goBehind(editor, "Press as you close the switch.\"\n            ");
        ((ITextOperationTarget) Engineer.viewer(editor)).doOperation(ISourceViewer.CONTENTASSIST_PROPOSALS);
        Screen.waitFor("the list", () -> Engineer.proposals().stream().anyMatch(text -> text.startsWith("expect")));
        Engineer.selectProposal(1);
        take(withProposals);
        Engineer.closeProposals();
    }

    @Test
    void whatItProves(@TempDir Path temporary) throws Exception {
        Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        try {
            Prover.waitForFlow("lamps");
            Prover.select("lamps");
            take("what-it-proves");
            Prover.turnTo("Soak");
            Prover.waitForPlot();
            take("what-it-proves-soak");
            Prover.turnTo("Risks");
            take("what-it-proves-risks");
            Prover.turnTo("Times");
            take("what-it-proves-times");
            Theme.use(PlatformUI.getWorkbench(), true);
            Prover.turnTo("Flow");
            take("dark-what-it-proves");
            Prover.turnTo("Soak");
            Prover.waitForPlot();
            take("dark-what-it-proves-soak");
        } finally {
            Prover.lookAway();
            Theme.use(PlatformUI.getWorkbench(), false);
            Engineer.closeAll();
        }
    }

    @Test
    void audit() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-004713", true);
        Technician.finish(test, Answers.of("rejected-at-power-up"));
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.RECORDS_VIEW);
        Screen.press("Read again");
        Screen.waitFor("records", () -> records().getItemCount() > 0);
        Screen.selectRecord(records().getItem(0).getData());
        Screen.press("Check the ledger");
        Screen.waitFor("the verdict", () -> Screen.all(StyledText.class).anyMatch(t -> t.getText().contains("SOUND")));
        take("audit");
    }

    @Test
    void afterTheSeal(@TempDir Path temporary) throws Exception {
        OpenTest amended = Auditor.test(temporary, "F-320001", true);
        Auditor.test(temporary, "F-320002", false);
        Auditor.givenUp(temporary, "F-320003");
        try {
            Table departures = Auditor.list(Ids.DEPARTURES_VIEW);
            Screen.waitFor("the departure", () -> Auditor.rows(departures, "F-320003").size() == 1);
            Auditor.select(Ids.DEPARTURES_VIEW, Auditor.rows(departures, "F-320003").get(0));
            Screen.waitFor("its sheet", () -> Auditor.sheet("F-320003").contains("waiting for a decision"));
            take("departures");
            CompletableFuture<String> answered = Dialogs.when("Decide on a departure", shell -> {
                Auditor.fields(shell).get(0).setText("nothing was begun");
                Auditor.password(shell, "MJ", "secret");
                taken(shell, "decide");
                Auditor.press(shell, "Cancel");
            });
            Screen.press("Decide");
            Screen.waitFor("the dialog", answered::isDone);
            answered.get();
            Auditor.showSheet(amended, "F-320001");
            Screen.waitFor("the buttons", () -> Auditor.enabled("Amend"));
            Auditor.sign("Amend", "Amend an entry", shell -> {
                Auditor.fields(shell).get(0).setText("no");
                Auditor.fields(shell).get(1).setText("a foot is broken");
            }, "QN");
            Screen.waitFor("the amendment", () -> Auditor.sheet("F-320001").contains("it would have been rejected"));
            take("record-amended");
            Theme.use(PlatformUI.getWorkbench(), true);
            take("dark-record-amended");
            Table broken = Auditor.list(Ids.NONCONFORMITIES_VIEW);
            Screen.waitFor("the nonconformity", () -> Auditor.rows(broken, "F-320002").size() == 1);
            Auditor.select(Ids.NONCONFORMITIES_VIEW, Auditor.rows(broken, "F-320002").get(0));
            Screen.waitFor("its sheet", () -> Auditor.sheet("F-320002").contains("waiting for a decision"));
            take("dark-nonconformities");
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
        }
    }

    @Test
    void besideEachOther(@TempDir Path temporary) throws Exception {
        Auditor.measured(temporary, "F-320004", "24,02");
        OpenTest again = Auditor.measured(temporary, "F-320004", "24,45");
        Auditor.measured(temporary, "F-320005", "23,9");
        Auditor.showSheet(again, "F-320004");
        Screen.waitFor("the button", () -> Auditor.enabled("Compare"));
        shown("Compare", "Compare with an earlier test", true, shell -> { }, "compare");
        shown("Impact", "Impact of an instrument that read wrong", false, shell -> {
            Auditor.fields(shell).get(0).setText("M-23");
            Auditor.fields(shell).get(1).setText("0.3 % low");
            Auditor.press(shell, "Look");
            Screen.waitFor("the list", () -> Auditor.rows(Screen.all(shell, Table.class).get(0), "F-320005").size() == 1);
            Dialogs.select(shell, 0);
        }, "impact");
    }

    private static void shown(String button, String title, boolean filled, Consumer<Shell> filling, String name) throws Exception {
        CompletableFuture<String> answered = Dialogs.when(title, filled, shell -> {
            filling.accept(shell);
            taken(shell, name);
            Auditor.press(shell, "Close");
        });
        Screen.press(button);
        Screen.waitFor("the dialog", answered::isDone);
        answered.get();
    }

    private static void taken(Shell dialog, String name) {
        try {
            Screen.waitForDrawing();
            save(Screen.picture(dialog.getBounds()), name);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void received() throws Exception {
        House house = PlatformUI.getWorkbench().getService(House.class);
        Receiving.Arriving first = new Receiving.Arriving("O-2207", "Quarry pumps", "C16-004721", "read", true, true, "", "stops after an hour, FLT comes up",
                "cover dented at one corner", "the owner's program", List.of());
        receive(house, first);
        receive(house, new Receiving.Arriving("O-2207", "Quarry pumps", "C16-004722", "read", true, true, "", "", "", "", List.of()));
        receive(house, new Receiving.Arriving("O-2210", "Mill race", "W-31", "unreadable", true, true, "tarn_p24", "hums", "", "", List.of()));
        Screen.perspective(Ids.BENCH);
        OpenTest test = Technician.open(Technician.C16, "C16-004722", false);
        Screen.page().showView(Ids.RECEIVED_VIEW);
        Table units = Screen.one(Table.class, table -> table.getColumnCount() == 7);
        Screen.waitFor("the units", () -> units.getItemCount() >= 3);
        units.setSelection(units.getItemCount() - 3);
        Event picked = new Event();
        picked.item = units.getItem(units.getItemCount() - 3);
        units.notifyListeners(SWT.Selection, picked);
        Screen.waitFor("the story", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().startsWith("C16-004721")));
        takeLargeAndSmall("received");
        Dialogs.answered("Correct a receipt", () -> Screen.press("Correct ..."), dialog -> {
            taken(dialog, "correct");
            dialog.close();
        });
        CompletableFuture<String> taken = Dialogs.when("Receive units", dialog -> {
            try {
                Screen.all(dialog, Text.class).stream().filter(Text::getEditable).skip(2).findFirst().orElseThrow().setText("C16-004721");
                Screen.waitFor("the story", () -> Screen.all(dialog, StyledText.class).stream().anyMatch(text -> text.getText().contains("R-")));
                take("receive");
            } catch (IOException failed) {
                throw new UncheckedIOException(failed);
            } finally {
                dialog.close();
            }
        });
        Screen.press("Receive ...");
        Screen.waitFor("the dialog", taken::isDone);
        taken.join();
        Dialogs.answered("Tag of C16-004721", () -> Screen.press("Tag ..."), dialog -> {
            taken(dialog, "tag");
            dialog.close();
        });
        instrument("M-17", "Multimeter, 5 digits", "2027-05-31", "reads 0 V to 60 V dc, 0.05 % + 2 digits of 0.01 V", "reads 0 A to 10 A dc, 1 % + 1 digit of 1 mA");
        instrument("M-22", "Loop calibrator", "2026-06-30", "gives 0 mA to 24 mA dc, 0.02 % + 1 digit of 0.001 mA");
        Screen.page().showView(Ids.INSTRUMENTS_VIEW);
        Table instruments = Screen.one(Table.class, table -> table.getColumnCount() == 6);
        Screen.press("Read again");
        Screen.waitFor("the instruments", () -> instruments.getItemCount() >= 2);
        instruments.setSelection(0);
        Event chosen = new Event();
        chosen.item = instruments.getItem(0);
        instruments.notifyListeners(SWT.Selection, chosen);
        take("instruments");
        Screen.page().showView(Ids.CARD_VIEW);
        Technician.look(test);
    }

    @Test
    void repairAndFaultCodes(@TempDir Path temporary) throws Exception {
        House house = PlatformUI.getWorkbench().getService(House.class);
        receive(house, new Receiving.Arriving("O-2211", "Quarry pumps", "C16-004731", "read", true, true, "", "stops when warm", "", "", List.of()));
        OpenTest test = Technician.open(Files.writeString(temporary.resolve("incoming.procedure"), INCOMING).toString(), "C16-004731", false);
        carriedOut(test, () -> Technician.lines("W01 02:14\nX17 after a restart\nZ99 odd"));
        carriedOut(test, () -> Screen.enter("no"));
        carriedOut(test, () -> Screen.enter("done"));
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.RECEIVED_VIEW);
        Table units = Screen.one(Table.class, table -> table.getColumnCount() == 7);
        Screen.waitFor("the unit", () -> row(units, "C16-004731") >= 0 && units.getItem(row(units, "C16-004731")).getText(1).contains("rejected"));
        units.setSelection(row(units, "C16-004731"));
        Event picked = new Event();
        picked.item = units.getItem(row(units, "C16-004731"));
        units.notifyListeners(SWT.Selection, picked);
        Path photo = Files.write(temporary.resolve("board.jpg"), new byte[] {1});
        Dialogs.answered("Repaired", () -> Screen.press("Repaired ..."), dialog -> {
            Auditor.fields(dialog).get(0).setText("power stage");
            Auditor.fields(dialog).get(1).setText("C12, L-7\nQ3");
            Drops.on(Drops.target(dialog), photo);
            taken(dialog, "repair");
            dialog.close();
        });
        Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        try {
            Screen.page().showView(Ids.FAULT_CODES_VIEW);
            Table codes = Screen.one(Table.class, table -> table.getColumnCount() == 8);
            Screen.press("Read again");
            Screen.waitFor("the codes", () -> row(codes, "X17") >= 0);
            codes.setSelection(row(codes, "X17"));
            Event chosen = new Event();
            chosen.item = codes.getItem(row(codes, "X17"));
            codes.notifyListeners(SWT.Selection, chosen);
            takeLargeAndSmall("fault-codes");
            Theme.use(PlatformUI.getWorkbench(), true);
            take("dark-fault-codes");
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
            Screen.page().showView(Ids.REMARKS_VIEW);
            Engineer.closeAll();
        }
    }

    private static void carriedOut(OpenTest test, Runnable entered) {
        Shown before = Technician.seen(test);
        entered.run();
        Screen.waitFor("after " + before.key(), () -> test.shown().version() > before.version());
        Technician.seen(test);
    }

    private static int row(Table table, String first) {
        for (int i = 0; i < table.getItemCount(); i++) {
            if (table.getItem(i).getText(0).equals(first)) {
                return i;
            }
        }
        return -1;
    }

    private static void instrument(String asset, String title, String due, String... ranges) throws Exception {
        InstrumentDesk desk = new InstrumentDesk(Technician.desk().ledger(), Bench.Clocks.system(), ZoneId.systemDefault());
        if (desk.instruments().stream().noneMatch(row -> row.asset().equals(asset))) {
            desk.add(new InstrumentDesk.NewInstrument(asset, title, "", List.of(ranges), "drawer 2"), engineer());
            desk.calibrated(asset, "C-" + asset, LocalDate.parse("2026-05-31"), Optional.of(LocalDate.parse(due)), List.of(), engineer());
        }
    }

    private static Optional<PeopleDesk.Signing> engineer() {
        return Optional.of(new PeopleDesk.Signing("RB", Approved.PASSWORD.toCharArray()));
    }

    private static void receive(House house, Receiving.Arriving arriving) {
        CompletableFuture<ReceivedRow> received = house.enter(receiving -> receiving.receive(arriving, "QN"));
        Screen.waitFor("a receipt", received::isDone);
        received.join();
    }

    @Test
    void revisions(@TempDir Path temporary) throws Exception {
        Technician.approve(Technician.C16);
        IEditorPart editor = Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        try {
            Engineer.replace(editor, "limits 23.5 .. 24.5 V, decide guarded both ways", "limits 23.5 .. 24.3 V, decide guarded both ways");
            Screen.page().saveEditor(editor, false);
            Signer.look();
            Signer.waitForRow("2 | draft (this text)");
            Signer.signs("&Prepare", "Prepare a revision", "RB", Approved.PASSWORD);
            Signer.waitForRow("2 | prepared (this text)");
            Signer.select("2 | prepared");
            Screen.waitFor("what it changes", () -> Signer.told().contains("24.5 V became 24.3 V"));
            revisions("");
            Theme.use(PlatformUI.getWorkbench(), true);
            revisions("dark-");
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
            Screen.page().showView(Ids.PRINTED_VIEW);
            Engineer.closeAll();
        }
    }

    private static void revisions(String look) throws Exception {
        takeLargeAndSmall(look + "revisions");
        Signer.in("&Approve", "Approve a revision", dialog -> {
            taken(look + "revision-approve");
            Signer.sign(dialog, "RB", Approved.PASSWORD);
            taken(look + "revision-approve-refused");
            dialog.close();
        });
        Signer.in("&Withdraw", "Withdraw a revision", dialog -> {
            taken(look + "revision-withdraw");
            dialog.close();
        });
        Dialogs.answered("New test", () -> Screen.command("org.benchwright.ui.newTest"), dialog -> {
            Screen.waitFor("why it is a rehearsal", () -> Screen.all(dialog, Label.class).stream().anyMatch(label -> label.getText().contains("rehearsed")));
            taken(look + "new-test-draft");
            dialog.close();
        });
    }

    @Test
    void people() throws Exception {
        Technician.register();
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.PEOPLE_VIEW);
        Screen.waitFor("them", () -> Screen.all(Table.class).anyMatch(table -> table.getItemCount() > 2 && table.getItem(0).getText(0).equals("LW")));
        try {
            takeLargeAndSmall("people");
            Theme.use(PlatformUI.getWorkbench(), true);
            take("dark-people");
            Theme.use(PlatformUI.getWorkbench(), false);
            Dialogs.answered("Authorise somebody", () -> Screen.press("Authorise"), dialog -> {
                taken(dialog, "authorise");
                dialog.close();
            });
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
            Screen.page().showView(Ids.SHEET_VIEW);
        }
    }

    private static void taken(String name) {
        try {
            take(name);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** As on a large screen, and as on a small one. */
    private static void takeLargeAndSmall(String name) throws IOException {
        take(name);
        Shell shell = Screen.window().getShell();
        Rectangle large = shell.getBounds();
        shell.setMaximized(false);
        shell.setBounds(large.x, large.y, SMALL.x, SMALL.y);
        Screen.waitFor("a small window", () -> shell.getSize().equals(SMALL));
        take(name + "-small");
        shell.setBounds(large);
        shell.setMaximized(true);
        Screen.waitFor("the large window", () -> shell.getSize().x == large.width);
    }

    private static Table records() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 5);
    }

    /** Takes a picture of the whole window; fails if it is blank. */
    private static void take(String name) throws IOException {
        Shell shell = Screen.window().getShell();
        Screen.waitForDrawing();
        Rectangle bounds = shell.getBounds();
        Rectangle client = Display.getCurrent().map(shell, null, shell.getClientArea());
        // Without a window manager there is no trim, though the shell reckons with one.
        bounds = new Rectangle(client.x, Math.min(bounds.y, client.y), client.width, client.y + client.height - Math.min(bounds.y, client.y));
        save(Screen.picture(bounds), name);
    }

    private static void save(ImageData data, String name) throws IOException {
        assertTrue(colours(data) > 20, name + " is blank");
        ImageLoader loader = new ImageLoader();
        loader.data = new ImageData[] {data};
        Files.createDirectories(FOLDER);
        loader.save(FOLDER.resolve(name + ".png").toString(), SWT.IMAGE_PNG);
    }

    private static int colours(ImageData data) {
        Set<Integer> colours = new HashSet<>();
        for (int y = 0; y < data.height; y += 3) {
            for (int x = 0; x < data.width; x += 3) {
                colours.add(data.getPixel(x, y));
            }
        }
        return colours.size();
    }
}
