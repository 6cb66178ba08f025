package org.benchwright.cli.internal;

import java.util.List;
import java.util.function.Function;

import picocli.CommandLine.Model.CommandSpec;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.RoundStop;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.present.TestDialogue;

/** What is done along the rack, from unit to unit: a round, and making all of them safe. */
final class RackCommands {

    private final Surroundings around;
    private final Function<Surroundings, Screen> screens;

    RackCommands(Surroundings around, Function<Surroundings, Screen> screens) {
        this.around = around;
        this.screens = screens;
    }

    static CommandSpec roundSpec() {
        return who(Specs.command("round", Message.HELP_ROUND), Message.HELP_ROUND_STATUS);
    }

    static CommandSpec makeSafeSpec() {
        return who(Specs.command("make-safe", Message.HELP_MAKE_SAFE_ALL).addOption(Specs.neededText("--reason", "WORDS", Message.HELP_MAKE_SAFE_REASON)),
                Message.HELP_MAKE_SAFE_STATUS);
    }

    private static CommandSpec who(CommandSpec command, Message status) {
        command.usageMessage().footer(status.text().split("\\R"));
        return command.addOption(Specs.ledger()).addOption(Specs.text("--technician", "INITIALS", Message.HELP_TECHNICIAN))
                .addOption(Specs.text("--station", "NAME", Message.HELP_STATION));
    }

    /** One visit to every unit on soak, position by position. */
    int round(Given given) throws CannotStoreException, InterruptedException {
        if (given.onFreshBench()) {
            return nothing(Message.ROUND_NOTHING);
        }
        try (Screen screen = screens.apply(around); Bench bench = Bench.open(given.ledgerToRead(), around.clocks())) {
            List<RoundStop> stops = RoundStop.of(bench.units().stream().filter(unit -> !unit.rehearsal()).toList());
            if (stops.isEmpty()) {
                screen.line(Message.ROUND_NOTHING.text());
            }
            int looked = 0;
            for (RoundStop stop : stops) {
                screen.line(Message.ROUND_STOP.text(stop.position().orElse(Message.ROUND_NO_POSITION.text()), stop.serial()));
                looked += lookedAt(bench, given.work(stop.serial(), false), stop, screen) ? 1 : 0;
            }
            screen.line(Message.ROUND_DONE.text(looked, stops.size()));
            return looked == stops.size() ? ExitStatus.OK : ExitStatus.LEFT_OPEN;
        }
    }

    /** Where the bench has no ledger yet there is no unit, and none is made to say so. */
    private int nothing(Message said) {
        try (Screen screen = Screens.printing(around)) {
            screen.line(said.text());
            return ExitStatus.OK;
        }
    }

    private boolean lookedAt(Bench bench, Bench.Work work, RoundStop stop, Screen screen) throws CannotStoreException, InterruptedException {
        try {
            TestDialogue dialogue = bench.takeUp(stop.test(), work);
            if (!stop.placeTells()) {
                dialogue.arrive();
            }
            return new PersonWalk(dialogue, screen, new CardPrinter(screen, around.zone()), around.workingFolder(), around.clocks().ticker()).look();
        } catch (EntryRefusedException | TakenElsewhereException e) {
            screen.remark(e.getMessage());
            return false;
        }
    }

    /** Every open test begins to be made safe, whatever else is open. */
    int makeSafe(Given given) throws CannotStoreException {
        String reason = given.text("--reason").orElse("");
        if (reason.isBlank()) {
            return Screens.refused(around, Message.MAKE_SAFE_NO_REASON.text());
        }
        if (given.onFreshBench()) {
            return nothing(Message.UNITS_NONE);
        }
        try (Screen screen = Screens.printing(around); Bench bench = Bench.open(given.ledgerToRead(), around.clocks())) {
            List<Bench.UnitTold> told = bench.makeAllSafe(reason, given.work("", false));
            told.forEach(unit -> screen.line(unit.words()));
            long done = told.stream().filter(Bench.UnitTold::done).count();
            screen.line(told.isEmpty() ? Message.UNITS_NONE.text() : done == 0 ? Message.MAKE_SAFE_NONE.text() : Message.MAKE_SAFE_NEXT.text(done));
            return told.stream().allMatch(Bench.UnitTold::done) ? ExitStatus.OK : ExitStatus.BAD_INPUT;
        }
    }
}
