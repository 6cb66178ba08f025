package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.time.Year;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.Copies;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.VerificationReport;

import picocli.CommandLine.Model.CommandSpec;

/** Backups, what is made of them again, and archives of a year. */
final class CopyCommands {

    private final Surroundings around;

    CopyCommands(Surroundings around) {
        this.around = around;
    }

    static CommandSpec backupSpec() {
        return Specs.command("backup", Message.HELP_BACKUP).addPositional(Specs.neededFile("FOLDER", Message.HELP_BACKUP_FOLDER))
                .addOption(Specs.flag("--with-keys", Message.HELP_BACKUP_KEYS)).addOption(Specs.ledger());
    }

    static CommandSpec restoreSpec() {
        return Specs.command("restore", Message.HELP_RESTORE).addPositional(Specs.neededFile("FOLDER", Message.HELP_RESTORE_FOLDER))
                .addOption(Specs.ledger()).addOption(Specs.files("--checkpoint", "KEPT", Message.HELP_RESTORE_KEPT));
    }

    static CommandSpec archiveSpec() {
        return Specs.command("archive", Message.HELP_ARCHIVE).addOption(Specs.number("--year", "YEAR", Message.HELP_ARCHIVE_YEAR))
                .addOption(Specs.file("--out", "FILE", Message.HELP_ARCHIVE_OUT))
                .addOption(Specs.file("--check", "FILE", Message.HELP_ARCHIVE_CHECK)).addOption(Specs.ledger());
    }

    int backup(Given given) throws CannotStoreException {
        Path folder = given.file().orElseThrow();
        Optional<String> hint = given.has("--with-keys") ? Optional.empty() : Optional.of(Message.BACKUP_NO_KEYS.text());
        return told(() -> Copies.backup(given.ledger(), folder, given.has("--with-keys"), around.clocks()), folder, hint);
    }

    int restore(Given given) throws CannotStoreException {
        List<Path> files = given.paths("--checkpoint");
        Optional<String> hint = files.isEmpty() ? Optional.of(Message.COPY_KEEP.text()) : Optional.empty();
        return told(() -> Copies.restore(given.file().orElseThrow(), given.ledger(), KeptCheckpoints.read(files), around.clocks()), given.ledger(), hint);
    }

    private interface Work {
        VerificationReport done() throws EntryRefusedException, CannotStoreException;
    }

    private int told(Work work, Path written, Optional<String> hint) throws CannotStoreException {
        try (Screen screen = Screens.printing(around)) {
            VerificationReport report = work.done();
            screen.line(Message.WRITTEN.text(written.toString()));
            for (VerificationReport.Line line : report.lines()) {
                screen.line(line.words());
                line.faults().forEach(fault -> screen.line("  " + fault));
            }
            hint.ifPresent(screen::line);
            screen.line((report.sound() ? Message.COPY_SOUND : Message.COPY_NOT_SOUND).text());
            return report.sound() ? ExitStatus.OK : ExitStatus.BAD_INPUT;
        } catch (EntryRefusedException e) {
            return Screens.refused(around, e.getMessage());
        }
    }

    int archive(Given given) throws CannotStoreException {
        OptionalLong year = given.number("--year");
        Optional<Path> out = given.path("--out");
        Optional<Path> check = given.path("--check");
        boolean writes = year.isPresent() && out.isPresent() && check.isEmpty();
        if (!writes && (check.isEmpty() || year.isPresent() || out.isPresent())) {
            return Screens.refused(around, Message.ARCHIVE_WHAT.text());
        }
        if (writes && (year.getAsLong() < Year.MIN_VALUE || year.getAsLong() > Year.MAX_VALUE)) {
            return Screens.refused(around, Message.ARCHIVE_WHAT.text());
        }
        try (Screen screen = Screens.printing(around)) {
            Copies.Archive archive = writes ? Copies.archive(given.ledger(), Year.of((int) year.getAsLong()), out.get()) : Copies.check(check.get());
            screen.line(Message.ARCHIVE_HOLDS.text(archive.tests(), archive.events(), archive.documents()));
            screen.line(Message.ARCHIVE_UNDER.text(archive.checkpoint(), archive.fingerprint()));
            archive.faults().forEach(screen::line);
            screen.line((archive.faults().isEmpty() ? Message.ARCHIVE_SOUND : Message.ARCHIVE_NOT_SOUND).text());
            return archive.faults().isEmpty() ? ExitStatus.OK : ExitStatus.BAD_INPUT;
        } catch (EntryRefusedException e) {
            return Screens.refused(around, e.getMessage());
        }
    }
}
