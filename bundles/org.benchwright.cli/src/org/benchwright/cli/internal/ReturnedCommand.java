package org.benchwright.cli.internal;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.Returning;
import org.benchwright.present.TakenElsewhereException;

import picocli.CommandLine.Model.CommandSpec;

/** Writes down that a unit came back. */
final class ReturnedCommand {

    private final Surroundings around;

    ReturnedCommand(Surroundings around) {
        this.around = around;
    }

    static CommandSpec spec() {
        return Specs.command("returned", Message.HELP_RETURNED).addPositional(Specs.word("TEST", true, Message.HELP_RETURNED_TEST))
                .addOption(Specs.neededText("--on", "DATE", Message.HELP_RETURNED_ON))
                .addOption(Specs.neededText("--complaint", "TEXT", Message.HELP_RETURNED_COMPLAINT))
                .addOption(Specs.text("--fault", "WORDS", Message.HELP_RETURNED_FAULT))
                .addOption(Specs.text("--technician", "INITIALS", Message.HELP_TECHNICIAN))
                .addOption(Specs.text("--station", "NAME", Message.HELP_STATION)).addOption(Specs.ledger());
    }

    int run(Given given) throws CannotStoreException {
        try (Screen screen = Screens.printing(around)) {
            Returning.Entry entry = new Returning.Entry(given.word().orElseThrow(), given.day("--on").orElseThrow(),
                    given.text("--complaint").orElseThrow(), given.text("--fault").orElse(Returning.faults().get(0)),
                    given.technician(), given.station(), around.software());
            Returning.record(given.ledger(), entry, around.clocks());
            screen.line(Message.RETURNED.text(entry.test(), entry.on().toString()));
            return ExitStatus.OK;
        } catch (EntryRefusedException | TakenElsewhereException e) {
            return Screens.refused(around, e.getMessage());
        }
    }
}
