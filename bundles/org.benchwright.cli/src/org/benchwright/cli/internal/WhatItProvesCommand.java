package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.Cancellation;
import org.benchwright.core.DurationFormatException;
import org.benchwright.core.Durations;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.proof.ProcedureProof;
import org.benchwright.language.proof.Telling;

import picocli.CommandLine.Model.CommandSpec;

/** Says what a procedure proves, without a unit. */
final class WhatItProvesCommand {

    private static final String SOAK = "--soak";
    private static final String JSON = "--json";
    private static final Duration LONGEST = Duration.ofDays(365);

    private final Surroundings around;

    WhatItProvesCommand(Surroundings around) {
        this.around = around;
    }

    static CommandSpec spec() {
        return Specs.command("what-it-proves", Message.HELP_WHAT_IT_PROVES)
                .addPositional(Specs.neededFile("PROCEDURE", Message.HELP_WHAT_IT_PROVES_FILE))
                .addOption(Specs.text(SOAK, "HOURS", Message.HELP_WHAT_IT_PROVES_SOAK))
                .addOption(Specs.flag(JSON, Message.HELP_WHAT_IT_PROVES_JSON));
    }

    int run(Given given) {
        Path file = given.file().orElseThrow();
        Optional<Duration> length = given.text(SOAK).flatMap(WhatItProvesCommand::hours);
        if (given.has(SOAK) && length.isEmpty()) {
            return Screens.refused(around, Message.PROVES_NO_LENGTH.text(given.text(SOAK).orElse("")));
        }
        try (Screen screen = Screens.printing(around)) {
            Telling telling = new ProcedureReader(LanguageServices.create()).telling(file);
            if (telling instanceof Telling.NotYet notYet) {
                return refused(notYet.errors(), screen);
            }
            List<ProcedureProof> proofs = ((Telling.Told) telling).procedures().stream().map(each -> each.prove(Cancellation.never())).toList();
            if (proofs.isEmpty()) {
                screen.remark(Message.PROVES_NO_PROCEDURE.text(file.getFileName().toString()));
                return ExitStatus.BAD_INPUT;
            }
            if (given.has(JSON)) {
                screen.line(ProofJson.of(proofs, length));
            } else {
                proofs.forEach(proof -> print(proof, length, screen));
            }
            return ExitStatus.OK;
        }
    }

    /** A number of hours, or a time as procedures write it. */
    private static Optional<Duration> hours(String text) {
        try {
            return Optional.of(Durations.parse(text.strip().matches("[0-9]+([.,][0-9]+)?") ? text.strip() + " h" : text))
                    .filter(time -> time.compareTo(Duration.ofMinutes(1)) >= 0 && time.compareTo(LONGEST) <= 0);
        } catch (DurationFormatException notATime) {
            return Optional.empty();
        }
    }

    private int refused(List<Remark> errors, Screen screen) {
        errors.forEach(remark -> screen.line(CheckCommand.line(remark, around)));
        screen.remark(Message.PROVES_NOT_YET.text(errors.size()));
        boolean unreadable = errors.stream().anyMatch(remark -> remark.code() == RemarkCode.CANNOT_READ);
        return unreadable ? ExitStatus.CANNOT_STORE : ExitStatus.BAD_INPUT;
    }

    private static void print(ProcedureProof proof, Optional<Duration> length, Screen screen) {
        screen.line(Message.PROVES_TITLE.text(proof.title(), proof.revision()));
        SheetPrinter printer = new SheetPrinter(screen, Message.PROVES_ROWS);
        proof.sections(length).forEach(section -> {
            printer.print(section.title(), section.sentences(), section.tables());
            section.assumptions().forEach(assumption -> Wrap.lines(assumption, screen.width(), "  - ", "    ").forEach(screen::line));
        });
    }
}
