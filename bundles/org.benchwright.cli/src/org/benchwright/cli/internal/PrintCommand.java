package org.benchwright.cli.internal;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.ProcedureSource;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.PrintedText;
import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Reading;
import org.benchwright.present.AsPrinted;
import org.benchwright.present.CannotStoreException;
import org.benchwright.report.ProcedurePaper;

import picocli.CommandLine.Model.CommandSpec;

/** Shows a procedure as the technician will read it. */
final class PrintCommand {

    private final Surroundings around;
    private final ProcedureSource procedures;

    PrintCommand(Surroundings around, ProcedureSource procedures) {
        this.around = around;
        this.procedures = procedures;
    }

    static CommandSpec spec() {
        return Specs.command("print", Message.HELP_PRINT).addPositional(Specs.neededFile("PROCEDURE", Message.HELP_TEST_FILE))
                .addOption(Specs.file("--pdf", "FILE", Message.HELP_PRINT_PDF)).addOption(Specs.file("--html", "FILE", Message.HELP_PRINT_HTML));
    }

    int run(Given given) throws CannotStoreException {
        Path file = given.file().orElseThrow();
        try (Screen screen = Screens.printing(around)) {
            Reading reading = procedures.read(file, new FamilyChoice.AsWritten());
            if (reading instanceof Reading.Ready ready) {
                print(AsPrinted.of(ready.plan()), given, screen);
                return ExitStatus.OK;
            }
            return TestCommand.refused((Reading.Refused) reading, file, screen);
        }
    }

    private void print(PrintedText text, Given given, Screen screen) throws CannotStoreException {
        Optional<Path> pdf = given.path("--pdf");
        Optional<Path> html = given.path("--html");
        ProcedurePaper paper = new ProcedurePaper(text, around.clocks().clock().instant());
        if (pdf.isPresent()) {
            new Output(screen).write(pdf.get(), paper.pdf());
        }
        if (html.isPresent()) {
            new Output(screen).write(html.get(), paper.html().getBytes(StandardCharsets.UTF_8));
        }
        if (pdf.isEmpty() && html.isEmpty()) {
            new PrintedLines(screen.width()).of(text).forEach(screen::line);
        }
    }
}
