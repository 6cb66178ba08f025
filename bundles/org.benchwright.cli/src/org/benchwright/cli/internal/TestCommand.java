package org.benchwright.cli.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.ProcedureSource;
import org.benchwright.cli.Surroundings;
import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Reading;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.StationSignIn;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.present.TestDialogue;

import picocli.CommandLine.Model.CommandSpec;

/** Carries a procedure out on a unit. */
final class TestCommand {

    private final Surroundings around;
    private final ProcedureSource procedures;
    private final Function<Surroundings, Screen> screens;

    TestCommand(Surroundings around, ProcedureSource procedures, Function<Surroundings, Screen> screens) {
        this.around = around;
        this.procedures = procedures;
        this.screens = screens;
    }

    /**
     * What to carry out.
     *
     * @param procedure  the procedure's file
     * @param family     for which of its families
     * @param answers    the answers' file, for a rehearsal that nobody answers
     * @param ledger     the ledger's file
     * @param serial     the unit's serial number
     * @param technician the technician's initials
     * @param station    the bench's name
     * @param rehearse   true for a rehearsal
     * @param signIn     true if the technician signs what is carried out
     * @param position   where the unit stands in the rack; blank if nobody says so
     */
    record Request(Path procedure, FamilyChoice family, Optional<Path> answers, Path ledger, String serial, String technician, String station,
            boolean rehearse, boolean signIn, String position) {

        /** Nobody signs in, and the position is not said. */
        Request(Path procedure, FamilyChoice family, Optional<Path> answers, Path ledger, String serial, String technician, String station,
                boolean rehearse) {
            this(procedure, family, answers, ledger, serial, technician, station, rehearse, false, "");
        }
    }

    static CommandSpec spec() {
        CommandSpec test = Specs.command("test", Message.HELP_TEST).addPositional(Specs.neededFile("FILE", Message.HELP_TEST_FILE))
                .addOption(Specs.neededTexts("--serial", "SERIAL", Message.HELP_TEST_SERIAL))
                .addOption(Specs.text("--apart", "TIME", Message.HELP_APART))
                .addOption(Specs.family(Message.HELP_TEST_FAMILY))
                .addOption(Specs.file("--answers", "FILE", Message.HELP_ANSWERS)).addOption(Specs.ledger())
                .addOption(Specs.flag("--rehearse", Message.HELP_REHEARSE))
                .addOption(Specs.text("--technician", "INITIALS", Message.HELP_TECHNICIAN))
                .addOption(Specs.text("--station", "NAME", Message.HELP_STATION))
                .addOption(Specs.text("--position", "TEXT", Message.HELP_POSITION))
                .addOption(Specs.flag("--sign-in", Message.HELP_SIGN_IN));
        test.usageMessage().footer(Message.HELP_TEST_STATUS.text().split("\\R"));
        return test;
    }

    int run(Given given) throws InterruptedException, CannotStoreException {
        if (given.has("--apart") || given.texts("--serial").size() > 1) {
            return new BatchCommand(around, procedures).run(given);
        }
        String serial = given.texts("--serial").get(0);
        return run(new Request(given.file().orElseThrow(), given.family(new FamilyChoice.Fitting(serial)), given.path("--answers"), given.ledger(), serial,
                given.technician(), given.station(), given.has("--rehearse"), given.has("--sign-in"), given.text("--position").orElse("")));
    }

    int run(Request request) throws InterruptedException, CannotStoreException {
        Screen printing = Screens.printing(around);
        if (request.answers().isPresent() && !request.rehearse()) {
            printing.remark(Message.ANSWERS_NEED_REHEARSAL.text());
            return ExitStatus.BAD_INPUT;
        }
        Reading reading = procedures.read(request.procedure(), request.family());
        if (reading instanceof Reading.Refused refused) {
            return refused(refused, request.procedure(), printing);
        }
        if (!request.rehearse() && !Files.exists(request.ledger())) {
            return draft((Reading.Ready) reading, printing);
        }
        Optional<AnswersFile> answers = Optional.empty();
        if (request.answers().isPresent()) {
            try {
                answers = Optional.of(AnswersFile.read(request.answers().get()));
            } catch (AnswersFile.MalformedException e) {
                printing.remark(e.getMessage());
                return ExitStatus.BAD_INPUT;
            } catch (IOException e) {
                printing.remark(Message.ANSWERS_UNREADABLE.text(request.answers().get().toString(), reason(e)));
                return ExitStatus.CANNOT_STORE;
            }
        }
        try (Screen screen = answers.isPresent() ? printing : screens.apply(around);
                Bench bench = Bench.open(request.ledger(), around.clocks())) {
            return carryOut(bench, (Reading.Ready) reading, request, answers, screen);
        }
    }

    /** Where there is no ledger nothing was approved: it is said, and none is made. */
    static int draft(Reading.Ready procedure, Screen screen) {
        try {
            Bench.refuseDraft(procedure.plan(), procedure.text());
        } catch (EntryRefusedException e) {
            screen.remark(e.getMessage());
        }
        return ExitStatus.BAD_INPUT;
    }

    private int carryOut(Bench bench, Reading.Ready procedure, Request request, Optional<AnswersFile> answers, Screen screen)
            throws InterruptedException, CannotStoreException {
        Bench.Work work = new Bench.Work(request.serial(), request.technician(), request.station(), around.software(),
                request.rehearse());
        CardPrinter cards = new CardPrinter(screen, around.zone());
        Optional<StationSignIn> station = Optional.empty();
        while (true) {
            try {
                if (request.signIn() && station.isEmpty()) {
                    station = Optional.of(signIn(request, screen));
                }
                TestDialogue dialogue = station.map(bench::at).orElse(bench).begin(procedure.plan(), procedure.text(), work);
                announce(dialogue, screen);
                begun(bench, dialogue, request, screen);
                return answers.isPresent() ? new ScriptedWalk(dialogue, answers.get(), screen, cards).run()
                        : new PersonWalk(dialogue, screen, cards, around.workingFolder(), around.clocks().ticker()).run();
            } catch (EntryRefusedException e) {
                screen.remark(e.getMessage());
                return ExitStatus.BAD_INPUT;
            } catch (TakenElsewhereException e) {
                screen.remark(e.getMessage());
                if (answers.isPresent() || leaves(screen)) {
                    return ExitStatus.LEFT_OPEN;
                }
            }
        }
    }

    private StationSignIn signIn(Request request, Screen screen) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        // Asked before the password is, so that nobody types one in vain.
        new PeopleDesk(request.ledger(), around.clocks()).requireSigner(request.technician());
        Passwords passwords = new Passwords(screen);
        StationSignIn station = new StationSignIn(around.clocks());
        char[] password = passwords.of(request.technician());
        char[] pin = Passwords.with(password, () -> passwords.pin(request.technician()));
        station.signIn(request.ledger(), request.technician(), password, pin);
        return station;
    }

    /** Says where the unit stands, if that was given. Where several units are in hand, the one before the technician is identified first. */
    private static void begun(Bench bench, TestDialogue dialogue, Request request, Screen screen) throws TakenElsewhereException, CannotStoreException {
        if (!request.position().isBlank()) {
            try {
                dialogue.place(request.position());
            } catch (EntryRefusedException e) {
                // The test is open: it goes on, and the position can be said at any card.
                screen.remark(e.getMessage());
            }
        }
        if (!request.rehearse() && bench.units().stream().filter(unit -> !unit.rehearsal()).count() > 1) {
            dialogue.arrive();
        }
    }

    private static boolean leaves(Screen screen) {
        screen.line(Message.ASK_TAKE_UP.text());
        return screen.ask("> ").map(typed -> typed.strip().equalsIgnoreCase("q")).orElse(true);
    }

    private static void announce(TestDialogue dialogue, Screen screen) {
        screen.line((dialogue.resumed() ? Message.TEST_RESUMED : Message.TEST_OPENED).text(dialogue.test()));
        if (dialogue.otherProcedure()) {
            screen.remark(Message.PROCEDURE_CHANGED.text());
        }
    }

    /** Says why a procedure can't be carried out. */
    static int refused(Reading.Refused refused, Path file, Screen screen) {
        refused.remarks().forEach(remark -> screen.remark(remark.toString()));
        if (refused.remarks().isEmpty()) {
            screen.remark(Message.NOT_ONE_PROCEDURE.text(file.toString(), refused.found()));
        }
        return refused.unreadable() ? ExitStatus.CANNOT_STORE : ExitStatus.BAD_INPUT;
    }

    private static String reason(IOException e) {
        return e instanceof java.nio.file.NoSuchFileException ? Message.NO_SUCH_FILE.text() : String.valueOf(e.getMessage());
    }
}
