package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.Durations;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.LookReminder;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.PersonRow;
import org.benchwright.present.Proving;
import org.benchwright.present.RecordRow;
import org.benchwright.present.UnitRow;
import org.benchwright.present.VerificationReport;

import org.benchwright.present.WallTime;
import picocli.CommandLine.Model.CommandSpec;

/** Commands that only read a ledger. */
final class LedgerCommands {

    private final Surroundings around;

    LedgerCommands(Surroundings around) {
        this.around = around;
    }

    static CommandSpec unitsSpec() {
        return Specs.command("units", Message.HELP_UNITS).addOption(Specs.ledger());
    }

    /** Lists the open tests. */
    int units(Given given) throws CannotStoreException {
        try (Screen screen = Screens.printing(around); Bench bench = Bench.read(given.ledger(), around.clocks())) {
            List<UnitRow> rows = bench.units();
            if (rows.isEmpty()) {
                screen.line(Message.UNITS_NONE.text());
            }
            remind(rows, screen);
            rows.forEach(row -> print(row, screen));
            return ExitStatus.OK;
        }
    }

    static CommandSpec recordsSpec() {
        return Specs.command("records", Message.HELP_RECORDS).addPositional(Specs.words("WORD", Message.HELP_RECORDS_WORDS)).addOption(Specs.ledger());
    }

    /** Lists the tests that all the words are found in, the latest first. */
    int records(Given given) throws CannotStoreException {
        String search = String.join(" ", given.words());
        try (Screen screen = Screens.printing(around); Bench bench = Bench.read(given.ledger(), around.clocks())) {
            List<String> tests = bench.records();
            int found = 0;
            for (int i = tests.size() - 1; i >= 0; i--) {
                Optional<RecordRow> row = row(bench, tests.get(i), screen).filter(each -> each.matches(search));
                row.ifPresent(each -> screen.line(Message.RECORD_ROW.text(each.test(), each.serial(), each.state(), each.procedure(), each.technician(),
                        new WallTime(around.zone()).day(each.opened()))));
                found += row.isPresent() ? 1 : 0;
            }
            screen.line(Message.RECORDS_FOUND.text(found, tests.size()));
            return ExitStatus.OK;
        }
    }

    /** One bad record must not hide the others; verification tells all about it. */
    private static Optional<RecordRow> row(Bench bench, String test, Screen screen) {
        try {
            return bench.row(test);
        } catch (CannotStoreException faulty) {
            screen.remark(faulty.getMessage());
            return Optional.empty();
        }
    }

    /** Looks that are missed, due or coming, before anything else. */
    private void remind(List<UnitRow> rows, Screen screen) {
        Instant now = around.clocks().clock().instant();
        List<LookReminder> looks = LookReminder.of(rows, now);
        LookReminder.summary(looks).ifPresent(screen::line);
        looks.forEach(look -> screen.line("  " + look.words(now, around.zone())));
    }

    /** Whose each key is: a person's, as the register has it, or a bench's. Nothing is told of a ledger that isn't sound. */
    private static Map<String, String> owners(VerificationReport report, Path ledger) {
        Map<String, String> owners = new HashMap<>();
        if (report.sound()) {
            try {
                List<PersonRow> people = PeopleDesk.people(ledger);
                report.signers().forEach(key -> owners.put(key, Message.SIGNER_BENCH.text()));
                people.forEach(person -> person.keys().forEach(key -> owners.put(key.fingerprint(), person.id())));
            } catch (CannotStoreException e) {
                // Names are a help to the reader; what was verified stands without them.
                return Map.of();
            }
        }
        return owners;
    }

    /** Verifies a ledger, and compares it with checkpoints kept elsewhere. */
    int verify(Path ledger, List<String> kept) throws CannotStoreException, EntryRefusedException {
        VerificationReport report = Proving.verify(ledger, around.clocks(), kept);
        try (Screen screen = Screens.printing(around)) {
            for (VerificationReport.Line line : report.lines()) {
                screen.line(line.words());
                line.faults().forEach(fault -> screen.line("  " + fault));
            }
            Map<String, String> owners = owners(report, ledger);
            report.signers().forEach(key -> screen.line(Message.SIGNER.text(key, owners.getOrDefault(key, "")).stripTrailing()));
            report.whose().ifPresent(screen::line);
            if (!report.open().isEmpty()) {
                screen.line(Message.OPEN_TESTS.text(String.valueOf(report.open().size())));
                report.open().forEach(row -> print(row, screen));
            }
            if (!report.late().isEmpty()) {
                screen.line(Message.LATE.text(report.late().size()));
                report.late().forEach(words -> screen.line("  " + words));
            }
            report.withdrawn().forEach(words -> screen.line(words));
            if (!report.reviews().isEmpty()) {
                screen.line(Message.REVIEWS_DUE.text(report.reviews().size()));
                report.reviews().forEach(test -> screen.line("  " + test));
            }
            if (!kept.isEmpty()) {
                screen.line(Message.KEPT_COMPARED.text(kept.size()));
            }
            screen.line((report.sound() ? Message.SOUND : Message.NOT_SOUND).text());
        }
        return report.sound() ? ExitStatus.OK : ExitStatus.BAD_INPUT;
    }

    private void print(UnitRow row, Screen screen) {
        StringBuilder state = new StringBuilder(row.stage()).append(", ").append(row.state());
        row.soakLeft().ifPresent(left -> state.append(", ").append(Message.UNIT_LEFT.text(Durations.words(Durations.wholeSeconds(left)))));
        row.nextLook().ifPresent(at -> state.append(", ").append((row.overdue() ? Message.UNIT_OVERDUE : Message.UNIT_NEXT_LOOK)
                .text(new WallTime(around.zone()).minute(at))));
        if (!row.watch().isEmpty()) {
            state.append(", ").append((row.alarm() ? Message.UNIT_WATCH_ALARM : Message.UNIT_WATCH).text(row.watch()));
        }
        row.reminder().ifPresent(words -> state.append(". ").append(words));
        String head = String.format(Locale.ROOT, "  %-14s ", row.serial());
        String rest = " ".repeat(head.length());
        Wrap.lines(state.toString(), screen.width(), head, rest).forEach(screen::line);
        String second = row.test() + "  " + row.procedure() + row.position().map(at -> ", " + Message.UNIT_POSITION.text(at)).orElse("")
                + (row.technician().isEmpty() ? "" : ", " + Message.UNIT_TECHNICIAN.text(row.technician()));
        Wrap.lines(row.rehearsal() ? Message.UNIT_REHEARSAL.text(second) : second, screen.width(), rest, rest).forEach(screen::line);
    }
}
