package org.benchwright.cli.internal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.language.Checked;
import org.benchwright.language.CheckedFile;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.SourceText;

import picocli.CommandLine.Model.CommandSpec;

/** Lays families and procedures out, or says which are not laid out. */
final class FormatCommand {

    private final Surroundings around;

    FormatCommand(Surroundings around) {
        this.around = around;
    }

    static CommandSpec spec() {
        return Specs.command("format", Message.HELP_FORMAT).addPositional(Specs.neededFiles("PATH", Message.HELP_FORMAT_PATH))
                .addOption(Specs.flag("--check", Message.HELP_FORMAT_CHECK));
    }

    int run(Given given) {
        boolean onlySay = given.has("--check");
        LanguageServices language = LanguageServices.create();
        Checked checked = language.check(given.files());
        int status = checked.unreadable() ? ExitStatus.CANNOT_STORE : ExitStatus.OK;
        try (Screen screen = Screens.printing(around)) {
            for (CheckedFile file : checked.files()) {
                Optional<String> formatted = language.format(new SourceText(file.path(), file.text()));
                if (formatted.isEmpty()) {
                    screen.remark(Message.FORMAT_NOT.text(file.path()));
                    status = Math.max(status, ExitStatus.BAD_INPUT);
                } else if (!formatted.get().equals(file.text())) {
                    screen.line(Message.FORMAT_OTHER.text(file.path()));
                    status = onlySay ? Math.max(status, ExitStatus.BAD_INPUT) : Math.max(status, write(file.path(), formatted.get(), screen));
                }
            }
        }
        return status;
    }

    private static int write(Path file, String text, Screen screen) {
        try {
            Output.replace(file, text.getBytes(StandardCharsets.UTF_8));
            return ExitStatus.OK;
        } catch (IOException unwritable) {
            screen.remark(Message.FORMAT_NOT_WRITTEN.text(file, String.valueOf(unwritable.getMessage())));
            return ExitStatus.CANNOT_STORE;
        }
    }
}
