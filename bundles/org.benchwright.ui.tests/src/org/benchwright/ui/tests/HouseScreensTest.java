package org.benchwright.ui.tests;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.benchwright.present.InstrumentDesk;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.ReceivedRow;
import org.benchwright.present.Receiving;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.ui.internal.house.House;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Table;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Pictures of units that come in, are repaired, and of what the bench measures with. */
@ExtendWith(QuietLog.class)
class HouseScreensTest {

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
        Screen.select(units, units.getItemCount() - 3);
        Screen.waitFor("the story", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().startsWith("C16-004721")));
        Pictures.largeAndSmall("received");
        Dialogs.answered("Correct a receipt", () -> Screen.press("Correct ..."), dialog -> {
            Pictures.take(dialog, "correct");
            dialog.close();
        });
        Dialogs.answered("Receive units", () -> Screen.press("Receive ..."), dialog -> {
            Dialogs.fields(dialog).get(2).setText("C16-004721");
            Screen.waitFor("the story", () -> Screen.all(dialog, StyledText.class).stream().anyMatch(text -> text.getText().contains("R-")));
            Pictures.take("receive");
            dialog.close();
        });
        tag();
        instrument("M-17", "Multimeter, 5 digits", "2027-05-31", "reads 0 V to 60 V dc, 0.05 % + 2 digits of 0.01 V", "reads 0 A to 10 A dc, 1 % + 1 digit of 1 mA");
        instrument("M-22", "Loop calibrator", "2026-06-30", "gives 0 mA to 24 mA dc, 0.02 % + 1 digit of 0.001 mA");
        Screen.page().showView(Ids.INSTRUMENTS_VIEW);
        Table instruments = Screen.one(Table.class, table -> table.getColumnCount() == 6);
        Screen.press("Read again");
        Screen.waitFor("the instruments", () -> instruments.getItemCount() >= 2);
        Screen.select(instruments, 0);
        Pictures.take("instruments");
        Screen.page().showView(Ids.CARD_VIEW);
        Technician.look(test);
    }

    private static void instrument(String asset, String title, String due, String... ranges) throws Exception {
        InstrumentDesk desk = InstrumentDesk.here(Technician.desk().ledger());
        if (desk.instruments().stream().noneMatch(row -> row.asset().equals(asset))) {
            desk.add(new InstrumentDesk.NewInstrument(asset, title, "", List.of(ranges), "drawer 2"), engineer());
            desk.calibrated(asset, "C-" + asset, LocalDate.parse("2026-05-31"), Optional.of(LocalDate.parse(due)), List.of(), engineer());
        }
    }

    private static Optional<PeopleDesk.Signing> engineer() {
        return Optional.of(new PeopleDesk.Signing("RB", Approved.PASSWORD.toCharArray()));
    }

    /** The picture shows nobody's own folder. */
    private static void tag() throws Exception {
        String home = System.setProperty("user.home", "/home/bench");
        try {
            Dialogs.answered("Tag of C16-004721", () -> Screen.press("Tag ..."), dialog -> {
                Pictures.take(dialog, "tag");
                dialog.close();
            });
        } finally {
            System.setProperty("user.home", home);
        }
    }

    private static void receive(House house, Receiving.Arriving arriving) {
        CompletableFuture<ReceivedRow> received = house.enter(receiving -> receiving.receive(arriving, "QN"));
        Screen.waitFor("a receipt", received::isDone);
        received.join();
    }

    @Test
    void repairAndFaultCodes(@TempDir Path temporary) throws Exception {
        House house = PlatformUI.getWorkbench().getService(House.class);
        receive(house, new Receiving.Arriving("O-2211", "Quarry pumps", "C16-004731", "read", true, true, "", "stops when warm", "", "", List.of()));
        OpenTest test = Technician.open(Files.writeString(temporary.resolve("incoming.procedure"), INCOMING).toString(), "C16-004731", false);
        Shown before = Technician.seen(test);
        Technician.lines("W01 02:14\nX17 after a restart\nZ99 odd");
        Technician.after(test, before);
        Technician.entered(test, "no");
        Technician.entered(test, "done");
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.RECEIVED_VIEW);
        Table units = Screen.one(Table.class, table -> table.getColumnCount() == 7);
        Screen.waitFor("the unit", () -> row(units, "C16-004731") >= 0 && units.getItem(row(units, "C16-004731")).getText(1).contains("rejected"));
        Screen.select(units, row(units, "C16-004731"));
        Path photo = Files.write(temporary.resolve("board.jpg"), new byte[] {1});
        Dialogs.answered("Repaired", () -> Screen.press("Repaired ..."), dialog -> {
            Dialogs.fields(dialog).get(0).setText("power stage");
            Dialogs.fields(dialog).get(1).setText("C12, L-7\nQ3");
            Drops.on(Drops.target(dialog), photo);
            Pictures.take(dialog, "repair");
            dialog.close();
        });
        Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        try {
            Screen.page().showView(Ids.FAULT_CODES_VIEW);
            Table codes = Screen.one(Table.class, table -> table.getColumnCount() == 8);
            Screen.press("Read again");
            Screen.waitFor("the codes", () -> row(codes, "X17") >= 0);
            Screen.select(codes, row(codes, "X17"));
            Pictures.largeAndSmall("fault-codes");
            Pictures.dark(() -> Pictures.take("dark-fault-codes"));
        } finally {
            Screen.page().showView(Ids.REMARKS_VIEW);
            Engineer.closeAll();
        }
    }

    private static int row(Table table, String first) {
        for (int i = 0; i < table.getItemCount(); i++) {
            if (table.getItem(i).getText(0).equals(first)) {
                return i;
            }
        }
        return -1;
    }
}
