package org.benchwright.cli.internal;

import java.util.function.Function;

import org.benchwright.cli.Surroundings;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.FaultPage;

import picocli.CommandLine.Model.CommandSpec;

/** The codes of fault logs for the engineer. */
final class FaultsCommand extends ScreenCommands {

    FaultsCommand(Surroundings around, Function<Surroundings, Screen> screens) {
        super(around, screens);
    }

    static CommandSpec spec() {
        return Specs.command("faults", Message.HELP_FAULTS).addOption(Specs.flag("--all", Message.HELP_FAULTS_ALL)).addOption(Specs.ledger());
    }

    int run(Given given) throws CannotStoreException {
        return printing(screen -> {
            FaultPage page = FaultPage.of(given.ledgerToRead(), given.has("--all"), around().zone());
            Wrap.lines(page.sentence(), screen.width(), "", "").forEach(screen::line);
            if (!page.table().rows().isEmpty()) {
                new TextTable(page.table(), screen.width()).allLines().forEach(screen::line);
            }
        });
    }
}
