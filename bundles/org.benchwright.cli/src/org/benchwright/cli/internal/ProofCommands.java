package org.benchwright.cli.internal;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.Proving;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** Commands for people who trust nothing but what they can check: verify, checkpoint, prove. */
final class ProofCommands {

    private final Surroundings around;

    ProofCommands(Surroundings around) {
        this.around = around;
    }

    static CommandSpec verify() {
        return Specs.command("verify", Message.HELP_VERIFY).addPositional(Specs.word("LEDGER", false, Message.HELP_VERIFY_LEDGER))
                .addOption(Specs.file("--ledger", "FILE", Message.HELP_LEDGER))
                .addOption(Specs.files("--checkpoint", "KEPT", Message.HELP_KEPT));
    }

    static CommandSpec checkpoint() {
        return Specs.command("checkpoint", Message.HELP_CHECKPOINT).addOption(Specs.file("--ledger", "FILE", Message.HELP_LEDGER))
                .addOption(Specs.file("--out", "FILE", Message.HELP_OUT));
    }

    static CommandSpec prove() {
        return Specs.command("prove", Message.HELP_PROVE).addPositional(Specs.word("TEST", false, Message.HELP_PROVE_TEST))
                .addOption(Specs.file("--since", "KEPT", Message.HELP_SINCE))
                .addOption(OptionSpec.builder("--event").paramLabel("N").type(Long.class).description(Message.HELP_EVENT.text()).build())
                .addOption(Specs.flag("--with-events", Message.HELP_WITH_EVENTS))
                .addOption(Specs.file("--ledger", "FILE", Message.HELP_LEDGER)).addOption(Specs.file("--out", "FILE", Message.HELP_OUT));
    }

    int verify(ParseResult given) throws CannotStoreException {
        try {
            List<String> kept = new ArrayList<>();
            for (Path file : Specs.paths(given, "--checkpoint", around)) {
                kept.add(read(file));
            }
            Path ledger = Specs.word(given).map(text -> around.workingFolder().resolve(text)).orElseGet(() -> ledger(given));
            return new LedgerCommands(around).verify(ledger, kept);
        } catch (EntryRefusedException e) {
            return refused(e.getMessage());
        }
    }

    int checkpoint(ParseResult given) throws CannotStoreException {
        try {
            return give(given, Proving.checkpoint(ledger(given)));
        } catch (EntryRefusedException e) {
            return refused(e.getMessage());
        }
    }

    int prove(ParseResult given) throws CannotStoreException {
        Optional<String> test = Specs.word(given);
        Optional<Path> since = Specs.path(given, "--since", around);
        if (test.isPresent() == since.isPresent()) {
            return refused(Message.PROVE_WHAT.text());
        }
        try {
            return give(given, since.isPresent() ? Proving.consistency(ledger(given), read(since.get()))
                    : Proving.inclusion(ledger(given), test.get(), event(given), given.hasMatchedOption("--with-events")));
        } catch (EntryRefusedException e) {
            return refused(e.getMessage());
        }
    }

    private static OptionalLong event(ParseResult given) {
        return given.hasMatchedOption("--event") ? OptionalLong.of(given.<Long>matchedOptionValue("--event", 0L)) : OptionalLong.empty();
    }

    private Path ledger(ParseResult given) {
        return Specs.path(given, "--ledger", around).orElseGet(Bench::standardLedger);
    }

    private static String read(Path file) throws EntryRefusedException, CannotStoreException {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (CharacterCodingException e) {
            throw new EntryRefusedException(Message.KEPT_NOT_TEXT.text(file.toString()), e);
        } catch (IOException e) {
            throw new CannotStoreException(Message.KEPT_UNREADABLE.text(file.toString()), e);
        }
    }

    /** Prints the text, or writes it to a file. */
    private int give(ParseResult given, String text) throws CannotStoreException {
        Optional<Path> out = Specs.path(given, "--out", around);
        try (Screen screen = Screens.printing(around)) {
            if (out.isEmpty()) {
                text.lines().forEach(screen::line);
                return ExitStatus.OK;
            }
            new Output(around).write(out.get(), text.getBytes(StandardCharsets.UTF_8), screen);
            return ExitStatus.OK;
        }
    }

    private int refused(String words) {
        try (Screen screen = Screens.printing(around)) {
            screen.remark(words);
            return ExitStatus.BAD_INPUT;
        }
    }
}
