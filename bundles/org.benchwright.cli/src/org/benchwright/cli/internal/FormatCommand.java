package org.benchwright.cli.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.language.Checked;
import org.benchwright.language.CheckedFile;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.SourceText;

/** Lays families and procedures out, or says which are not laid out. */
final class FormatCommand {

    private final Surroundings around;

    FormatCommand(Surroundings around) {
        this.around = around;
    }

    int run(List<Path> paths, boolean onlySay) {
        LanguageServices language = LanguageServices.create();
        Checked checked = language.check(paths);
        int status = checked.unreadable() ? ExitStatus.CANNOT_STORE : ExitStatus.OK;
        try (Screen screen = Screens.printing(around)) {
            for (CheckedFile file : checked.files()) {
                Optional<String> formatted = language.format(new SourceText(file.path(), file.text()));
                if (formatted.isEmpty()) {
                    screen.line(Message.FORMAT_NOT.text(file.path()));
                    status = Math.max(status, ExitStatus.BAD_INPUT);
                } else if (!formatted.get().equals(file.text())) {
                    screen.line(Message.FORMAT_OTHER.text(file.path()));
                    status = onlySay ? Math.max(status, ExitStatus.BAD_INPUT) : Math.max(status, write(file.path(), formatted.get(), screen));
                }
            }
        }
        return status;
    }

    /** First beside the file, then in its place: what is there is never half of something. */
    private static int write(Path file, String text, Screen screen) {
        Path beside = file.resolveSibling(file.getFileName() + ".new");
        try {
            Files.writeString(beside, text);
            Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
            return ExitStatus.OK;
        } catch (IOException unwritable) {
            screen.line(Message.FORMAT_NOT_WRITTEN.text(file, String.valueOf(unwritable.getMessage())));
            return ExitStatus.CANNOT_STORE;
        }
    }
}
