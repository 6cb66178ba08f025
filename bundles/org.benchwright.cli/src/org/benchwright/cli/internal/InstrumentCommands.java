package org.benchwright.cli.internal;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

import org.benchwright.cli.Surroundings;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.InstrumentDesk;
import org.benchwright.present.InstrumentRow;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.TakenElsewhereException;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The register of instruments at the terminal. */
final class InstrumentCommands extends ScreenCommands {

    InstrumentCommands(Surroundings around, Function<Surroundings, Screen> screens) {
        super(around, screens);
    }

    static CommandSpec spec() {
        CommandSpec all = Specs.command("instruments", Message.HELP_INSTRUMENTS).addOption(Specs.ledger());
        all.addSubcommand("add", one("add", Message.HELP_INSTRUMENTS_ADD).addOption(Specs.neededText("--title", "TITLE", Message.HELP_INSTRUMENTS_TITLE))
                .addOption(Specs.text("--serial", "SERIAL", Message.HELP_INSTRUMENTS_SERIAL)).addOption(ranges())
                .addOption(Specs.text("--custody", "WHERE", Message.HELP_INSTRUMENTS_CUSTODY)));
        all.addSubcommand("calibrated", one("calibrated", Message.HELP_INSTRUMENTS_CALIBRATED)
                .addOption(Specs.neededText("--certificate", "NUMBER", Message.HELP_INSTRUMENTS_CERTIFICATE))
                .addOption(Specs.neededText("--on", "DATE", Message.HELP_INSTRUMENTS_ON)).addOption(Specs.text("--due", "DATE", Message.HELP_INSTRUMENTS_DUE))
                .addOption(ranges()));
        all.addSubcommand("moved", one("moved", Message.HELP_INSTRUMENTS_MOVED).addOption(Specs.neededText("--custody", "WHERE", Message.HELP_INSTRUMENTS_CUSTODY)));
        all.addSubcommand("retire", one("retire", Message.HELP_INSTRUMENTS_RETIRE).addOption(Specs.neededText("--reason", "WORDS", Message.HELP_REASON)));
        all.addSubcommand("reinstate", one("reinstate", Message.HELP_INSTRUMENTS_REINSTATE).addOption(Specs.neededText("--reason", "WORDS", Message.HELP_REASON)));
        all.addSubcommand("import", Specs.command("import", Message.HELP_INSTRUMENTS_IMPORT).addPositional(Specs.neededFile("FILE", Message.HELP_INSTRUMENTS_FILE))
                .addOption(by()).addOption(Specs.ledger()));
        return all;
    }

    private static CommandSpec one(String name, Message help) {
        return Specs.command(name, help).addPositional(Specs.word("ASSET", true, Message.HELP_INSTRUMENTS_ASSET)).addOption(by()).addOption(Specs.ledger());
    }

    private static OptionSpec by() {
        return Specs.text("--by", "ID", Message.HELP_INSTRUMENTS_BY);
    }

    private static OptionSpec ranges() {
        return Specs.texts("--range", "RANGE", Message.HELP_INSTRUMENTS_RANGE);
    }

    int run(Given given) throws CannotStoreException {
        if (!given.parsed().hasSubcommand()) {
            return printing(screen -> list(desk(given).instruments(), screen));
        }
        Given sub = new Given(around(), given.parsed().subcommand());
        return answering(screen -> enter(sub.parsed().commandSpec().name(), sub, screen));
    }

    private InstrumentDesk desk(Given given) throws CannotStoreException {
        return new InstrumentDesk(given.ledgerToRead(), around().clocks(), around().zone());
    }

    private void enter(String what, Given given, Screen screen) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        InstrumentDesk desk = desk(given);
        // What was given is read before anybody types a password.
        if (what.equals("import")) {
            String list = InstrumentDesk.list(given.file().orElseThrow());
            screen.line(Message.INSTRUMENTS_IMPORTED.text(desk.importList(list, signing(given, screen))));
            return;
        }
        Optional<LocalDate> on = given.day("--on");
        Optional<LocalDate> due = given.day("--due");
        Optional<PeopleDesk.Signing> by = signing(given, screen);
        String asset = given.word().orElseThrow();
        InstrumentRow row = switch (what) {
            case "add" -> desk.add(new InstrumentDesk.NewInstrument(asset, given.text("--title").orElse(""), given.text("--serial").orElse(""),
                    given.texts("--range"), given.text("--custody").orElse("")), by);
            case "calibrated" -> desk.calibrated(asset, given.text("--certificate").orElse(""), on.orElseThrow(), due,
                    given.texts("--range"), by);
            case "moved" -> desk.moved(asset, given.text("--custody").orElse(""), by);
            case "retire" -> desk.retired(asset, given.text("--reason").orElse(""), by);
            default -> desk.reinstated(asset, given.text("--reason").orElse(""), by);
        };
        print(row, screen);
    }

    private Optional<PeopleDesk.Signing> signing(Given given, Screen screen) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Optional<String> by = given.text("--by");
        return by.isEmpty() ? Optional.empty()
                : Optional.of(new Passwords(screen).signing(by.get(), new PeopleDesk(given.ledgerToRead(), around().clocks())));
    }

    private static void list(List<InstrumentRow> rows, Screen screen) {
        if (rows.isEmpty()) {
            screen.line(Message.INSTRUMENTS_NONE.text());
        }
        rows.forEach(row -> print(row, screen));
    }

    private static void print(InstrumentRow row, Screen screen) {
        Wrap.lines(row.asset() + "  " + row.title() + "  (" + row.state() + ")", screen.width(), "", "    ").forEach(screen::line);
        String calibrated = row.calibrated().map(on -> Message.INSTRUMENTS_CALIBRATED.text(row.certificate(), on.toString(),
                row.due().map(Object::toString).orElse("-"))).orElse("");
        for (String line : List.of(calibrated, row.custody().isEmpty() ? "" : Message.INSTRUMENTS_CUSTODY.text(row.custody()))) {
            if (!line.isEmpty()) {
                Wrap.lines(line, screen.width(), "    ", "      ").forEach(screen::line);
            }
        }
        row.ranges().forEach(range -> Wrap.lines(range, screen.width(), "    ", "      ").forEach(screen::line));
    }
}
