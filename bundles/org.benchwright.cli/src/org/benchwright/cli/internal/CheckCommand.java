package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.util.List;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.Severity;
import org.benchwright.language.Checked;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.Remark;

/** Checks families and procedures. */
final class CheckCommand {

    private final Surroundings around;

    CheckCommand(Surroundings around) {
        this.around = around;
    }

    int run(List<Path> paths) {
        Checked checked = LanguageServices.create().check(paths);
        try (Screen screen = Screens.printing(around)) {
            checked.remarks().forEach(remark -> screen.line(line(remark)));
            screen.remark(Message.CHECKED.text(checked.files().size(), count(checked, Severity.ERROR),
                    count(checked, Severity.WARNING)));
        }
        if (checked.unreadable()) {
            return ExitStatus.CANNOT_STORE;
        }
        return checked.hasErrors() ? ExitStatus.BAD_INPUT : ExitStatus.OK;
    }

    private String line(Remark remark) {
        Path folder = around.workingFolder().toAbsolutePath().normalize();
        Path file = remark.file().startsWith(folder) ? folder.relativize(remark.file()) : remark.file();
        return file + ":" + remark.line() + ":" + remark.column() + ": " + remark.severity().word() + ": " + remark.code().word() + ": "
                + remark.words();
    }

    private static long count(Checked checked, Severity severity) {
        return checked.remarks().stream().filter(remark -> remark.severity() == severity).count();
    }
}
