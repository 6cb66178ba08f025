package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.util.List;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.language.Revisions;

import picocli.CommandLine.Model.CommandSpec;

/** Says what one revision changes against another. */
final class DiffCommand {

    private final Surroundings around;

    DiffCommand(Surroundings around) {
        this.around = around;
    }

    static CommandSpec spec() {
        return Specs.command("diff", Message.HELP_DIFF).addPositional(Specs.neededFiles("OLD NEW", Message.HELP_DIFF_FILES));
    }

    int run(Given given) {
        List<Path> files = given.files();
        try (Screen screen = Screens.printing(around)) {
            if (files.size() != 2) {
                screen.remark(Message.DIFF_TWO.text());
                return ExitStatus.BAD_INPUT;
            }
            ProcedureReader reader = new ProcedureReader(LanguageServices.create());
            return compare(files.get(0), reader.read(files.get(0)), files.get(1), reader.read(files.get(1)), screen);
        }
    }

    private static int compare(Path oldFile, Reading before, Path newFile, Reading after, Screen screen) {
        if (before instanceof Reading.Ready one && after instanceof Reading.Ready other) {
            List<String> differences = Revisions.differences(one.plan(), other.plan());
            differences.forEach(screen::line);
            if (differences.isEmpty()) {
                screen.line(Message.DIFF_NONE.text());
            }
            return differences.isEmpty() ? ExitStatus.OK : ExitStatus.BAD_INPUT;
        }
        Path wrong = before instanceof Reading.Refused ? oldFile : newFile;
        screen.remark(Message.DIFF_NO_PLAN.text(wrong));
        Reading.Refused refused = (Reading.Refused) (before instanceof Reading.Refused ? before : after);
        return refused.unreadable() ? ExitStatus.CANNOT_STORE : ExitStatus.BAD_INPUT;
    }
}
