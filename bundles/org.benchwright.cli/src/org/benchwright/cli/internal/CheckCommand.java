package org.benchwright.cli.internal;

import java.nio.file.Path;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.Severity;
import org.benchwright.language.Checked;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.Remark;
import org.benchwright.present.CannotStoreException;

import picocli.CommandLine.Model.CommandSpec;

/** Checks families and procedures. */
final class CheckCommand {

    private final Surroundings around;

    CheckCommand(Surroundings around) {
        this.around = around;
    }

    static CommandSpec spec() {
        return Specs.command("check", Message.HELP_CHECK).addPositional(Specs.neededFiles("PATH", Message.HELP_CHECK_PATH))
                .addOption(Specs.file("--ledger", "FILE", Message.HELP_COMPARED_LEDGER));
    }

    int run(Given given) throws CannotStoreException {
        Checked checked = LanguageServices.create().check(given.files(), ApprovedInLedger.once(given, around));
        try (Screen screen = Screens.printing(around)) {
            checked.remarks().forEach(remark -> screen.line(line(remark, around)));
            screen.remark(Message.CHECKED.text(checked.files().size(), count(checked, Severity.ERROR),
                    count(checked, Severity.WARNING)));
        }
        if (checked.unreadable()) {
            return ExitStatus.CANNOT_STORE;
        }
        return checked.hasErrors() ? ExitStatus.BAD_INPUT : ExitStatus.OK;
    }

    /** A remark on one line, its file as it is called from the working folder. */
    static String line(Remark remark, Surroundings around) {
        Path folder = around.workingFolder().toAbsolutePath().normalize();
        Path file = remark.file().startsWith(folder) ? folder.relativize(remark.file()) : remark.file();
        return file + ":" + remark.line() + ":" + remark.column() + ": " + remark.severity().word() + ": " + remark.code().word() + ": "
                + remark.words();
    }

    private static long count(Checked checked, Severity severity) {
        return checked.remarks().stream().filter(remark -> remark.severity() == severity).count();
    }
}
