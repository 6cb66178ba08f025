package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;

import picocli.CommandLine.Model.CommandSpec;

import org.benchwright.cli.ProcedureSource;
import org.benchwright.cli.Surroundings;
import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Reading;
import org.benchwright.language.Revisions;
import org.benchwright.present.Approving;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.RevisionChange;
import org.benchwright.present.RevisionRow;
import org.benchwright.present.TakenElsewhereException;

/** Preparing, approving and withdrawing revisions at the terminal, and how they stand. */
final class RevisionCommands extends ScreenCommands {

    private static final int SHOWN_DIGITS = 16;

    private final ProcedureSource procedures;

    RevisionCommands(Surroundings around, ProcedureSource procedures, Function<Surroundings, Screen> screens) {
        super(around, screens);
        this.procedures = procedures;
    }

    static CommandSpec prepareSpec() {
        return signed("prepare", Message.HELP_PREPARE);
    }

    static CommandSpec approveSpec() {
        return signed("approve", Message.HELP_APPROVE);
    }

    static CommandSpec withdrawSpec() {
        return signed("withdraw", Message.HELP_WITHDRAW)
                .addOption(Specs.number("--revision", "N", Message.HELP_WITHDRAW_REVISION))
                .addOption(Specs.neededText("--reason", "WORDS", Message.HELP_REASON));
    }

    private static CommandSpec signed(String name, Message help) {
        return Specs.command(name, help).addPositional(Specs.neededFile("FILE", Message.HELP_TEST_FILE))
                .addOption(Specs.family(Message.HELP_REVISION_FAMILY)).addOption(Specs.neededText("--by", "ID", Message.HELP_BY))
                .addOption(Specs.ledger());
    }

    static CommandSpec revisionsSpec() {
        return Specs.command("revisions", Message.HELP_REVISIONS).addPositional(Specs.file("FILE", Message.HELP_REVISIONS_FILE))
                .addOption(Specs.family(Message.HELP_REVISION_FAMILY)).addOption(Specs.ledger());
    }

    int prepare(Given given) throws CannotStoreException {
        return withProcedure(given, ready -> answering(screen -> {
            Approving approving = approving(given);
            PeopleDesk.Signing by = signing(given, screen);
            print(approving.prepare(ready.plan(), ready.text(), by), screen);
            screen.line(Message.PREPARED_NEXT.text(given.fileAgain(), given.again("--family") + given.sameLedger()));
        }));
    }

    int approve(Given given) throws CannotStoreException {
        return withProcedure(given, ready -> answering(screen -> {
            Approving approving = approving(given);
            print(approving.change(ready.plan(), Revisions::differences), screen);
            PeopleDesk.Signing by = signing(given, screen);
            print(approving.approve(ready.plan(), ready.text(), by), screen);
        }));
    }

    int withdraw(Given given) throws CannotStoreException {
        return withProcedure(given, ready -> answering(screen -> {
            int revision = revision(given, ready.plan().revision());
            Approving approving = approving(given);
            PeopleDesk.Signing by = signing(given, screen);
            print(approving.withdraw(ready.plan(), revision, given.text("--reason").orElse(""), by), screen);
        }));
    }

    /** The number of the revision that was named, else {@code written}. */
    private static int revision(Given given, int written) throws EntryRefusedException {
        long number = given.number("--revision").orElse(written);
        if (number < 1 || number > Integer.MAX_VALUE) {
            throw new EntryRefusedException(Message.NO_REVISION.text(String.valueOf(number)));
        }
        return (int) number;
    }

    int revisions(Given given) throws CannotStoreException {
        if (given.file().isPresent()) {
            return withProcedure(given, ready -> printing(screen -> {
                print(approving(given).standing(ready.plan(), ready.text()), screen);
                screen.line("");
                list(approving(given).revisions(ready.plan()), screen);
            }));
        }
        return printing(screen -> list(approving(given).revisions(), screen));
    }

    private interface Work {
        int with(Reading.Ready ready) throws CannotStoreException;
    }

    private int withProcedure(Given given, Work work) throws CannotStoreException {
        Path file = given.file().orElseThrow();
        Reading reading = procedures.read(file, given.family(new FamilyChoice.AsWritten()));
        if (reading instanceof Reading.Ready ready) {
            return work.with(ready);
        }
        try (Screen screen = Screens.printing(around())) {
            return TestCommand.refused((Reading.Refused) reading, file, screen);
        }
    }

    private Approving approving(Given given) throws CannotStoreException {
        return new Approving(given.ledgerToRead(), around().clocks(), around().zone());
    }

    private PeopleDesk.Signing signing(Given given, Screen screen) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return new Passwords(screen).signing(given.text("--by").orElse(""), new PeopleDesk(given.ledgerToRead(), around().clocks()));
    }

    private static void print(RevisionChange change, Screen screen) {
        screen.line(change.words());
        change.differences().forEach(difference -> Wrap.lines(difference, screen.width(), "  * ", "    ").forEach(screen::line));
    }

    private static void list(List<RevisionRow> rows, Screen screen) {
        if (rows.isEmpty()) {
            screen.line(Message.REVISIONS_NONE.text());
        }
        rows.forEach(row -> print(row, screen));
    }

    private static void print(RevisionRow row, Screen screen) {
        screen.line(Message.REVISION_LINE.text(row.procedure(), row.number(), row.words()));
        row.history().forEach(line -> Wrap.lines(line, screen.width(), "    ", "      ").forEach(screen::line));
        screen.line("    " + Message.REVISION_DIGESTS.text(row.text().substring(0, SHOWN_DIGITS), row.plan().substring(0, SHOWN_DIGITS)));
    }
}
