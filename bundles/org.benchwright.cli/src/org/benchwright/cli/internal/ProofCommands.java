package org.benchwright.cli.internal;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.Proving;

import picocli.CommandLine.Model.CommandSpec;

/** Commands for people who trust nothing but what they can check: verify, checkpoint, prove. */
final class ProofCommands {

    private final Surroundings around;

    ProofCommands(Surroundings around) {
        this.around = around;
    }

    static CommandSpec verifySpec() {
        return Specs.command("verify", Message.HELP_VERIFY).addPositional(Specs.word("LEDGER", false, Message.HELP_VERIFY_LEDGER))
                .addOption(Specs.ledger())
                .addOption(Specs.files("--checkpoint", "KEPT", Message.HELP_KEPT));
    }

    static CommandSpec checkpointSpec() {
        return Specs.command("checkpoint", Message.HELP_CHECKPOINT).addOption(Specs.ledger())
                .addOption(Specs.file("--out", "FILE", Message.HELP_OUT));
    }

    static CommandSpec proveSpec() {
        return Specs.command("prove", Message.HELP_PROVE).addPositional(Specs.word("TEST", false, Message.HELP_PROVE_TEST))
                .addOption(Specs.file("--since", "KEPT", Message.HELP_SINCE))
                .addOption(Specs.number("--event", "N", Message.HELP_EVENT))
                .addOption(Specs.flag("--with-events", Message.HELP_WITH_EVENTS))
                .addOption(Specs.ledger()).addOption(Specs.file("--out", "FILE", Message.HELP_OUT));
    }

    int verify(Given given) throws CannotStoreException {
        if (given.word().isPresent() && given.has("--ledger")) {
            return Screens.refused(around, Message.VERIFY_ONE.text());
        }
        try {
            List<String> kept = KeptCheckpoints.read(given.paths("--checkpoint"));
            Path ledger = given.word().map(text -> Bench.itself(around.workingFolder().resolve(text))).orElseGet(given::ledger);
            return new LedgerCommands(around).verify(ledger, kept);
        } catch (EntryRefusedException e) {
            return Screens.refused(around, e.getMessage());
        }
    }

    int checkpoint(Given given) throws CannotStoreException {
        try {
            return give(given, Proving.checkpoint(given.ledger()));
        } catch (EntryRefusedException e) {
            return Screens.refused(around, e.getMessage());
        }
    }

    int prove(Given given) throws CannotStoreException {
        Optional<String> test = given.word();
        Optional<Path> since = given.path("--since");
        if (test.isPresent() == since.isPresent()) {
            return Screens.refused(around, Message.PROVE_WHAT.text());
        }
        try {
            return give(given, since.isPresent() ? Proving.consistency(given.ledger(), KeptCheckpoints.read(since.get()))
                    : Proving.inclusion(given.ledger(), test.get(), given.number("--event"), given.has("--with-events")));
        } catch (EntryRefusedException e) {
            return Screens.refused(around, e.getMessage());
        }
    }

    /** Prints the text, or writes it to a file. */
    private int give(Given given, String text) throws CannotStoreException {
        Optional<Path> out = given.path("--out");
        try (Screen screen = Screens.printing(around)) {
            if (out.isEmpty()) {
                text.lines().forEach(screen::line);
                return ExitStatus.OK;
            }
            new Output(screen).write(out.get(), text.getBytes(StandardCharsets.UTF_8));
            return ExitStatus.OK;
        }
    }
}
