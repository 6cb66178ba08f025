package org.benchwright.cli.internal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.ProcedureSource;
import org.benchwright.cli.Surroundings;
import org.benchwright.language.FamilyChoice;
import org.benchwright.language.Reading;
import org.benchwright.present.BatchStart;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.present.WallTime;

/** Begins the tests of several units of one family one after the other, at a distance of time, and leaves them open. */
final class BatchCommand {

    /** The clock is looked at as often: it may be set, and the machine may have slept. */
    private static final Duration LOOK = Duration.ofSeconds(1);
    /** What tells something of one unit alone. */
    private static final List<String> ALONE = List.of("--answers", "--position", "--sign-in");

    private final Surroundings around;
    private final ProcedureSource procedures;

    BatchCommand(Surroundings around, ProcedureSource procedures) {
        this.around = around;
        this.procedures = procedures;
    }

    int run(Given given) throws CannotStoreException, InterruptedException {
        try (Screen screen = Screens.printing(around)) {
            try {
                return run(given, screen);
            } catch (EntryRefusedException e) {
                screen.remark(e.getMessage());
                return ExitStatus.BAD_INPUT;
            }
        }
    }

    private int run(Given given, Screen screen) throws EntryRefusedException, CannotStoreException, InterruptedException {
        Optional<String> alone = ALONE.stream().filter(given::has).findFirst();
        if (alone.isPresent()) {
            throw new EntryRefusedException(Message.BATCH_ALONE.text(alone.get()));
        }
        Duration apart = BatchStart.apart(given.text("--apart").orElseThrow(() -> new EntryRefusedException(Message.BATCH_NEEDS_APART.text())));
        String typed = String.join(",", given.texts("--serial"));
        Path file = given.file().orElseThrow();
        Reading whole = read(given, BatchStart.firstListed(typed));
        if (whole instanceof Reading.Refused refused) {
            return TestCommand.refused(refused, file, screen);
        }
        List<Unit> units = new ArrayList<>();
        for (String serial : BatchStart.serials(typed, ((Reading.Ready) whole).plan())) {
            Reading reading = read(given, serial);
            if (reading instanceof Reading.Refused refused) {
                return TestCommand.refused(refused, file, screen);
            }
            units.add(new Unit(serial, (Reading.Ready) reading));
            BatchStart.requireFits(serial, units.get(units.size() - 1).procedure().plan(), units.get(0).procedure().plan());
        }
        if (!given.has("--rehearse") && !Files.exists(given.ledger())) {
            return TestCommand.draft(units.get(0).procedure(), screen);
        }
        try (Bench bench = Bench.open(given.ledger(), around.clocks())) {
            for (Unit unit : units) {
                BatchStart.requireNotOpen(unit.serial(), given.has("--rehearse"), bench.units());
            }
            return new Course(bench, given, screen, units, apart).run();
        }
    }

    private Reading read(Given given, String serial) {
        return procedures.read(given.file().orElseThrow(), given.family(new FamilyChoice.Fitting(serial)));
    }

    private record Unit(String serial, Reading.Ready procedure) {
    }

    /** Begins what is due, and tells at whatever end what was not begun. */
    private final class Course {

        private final Bench bench;
        private final Given given;
        private final Screen screen;
        private final List<Unit> units;
        private final List<String> refused = new ArrayList<>();
        private BatchStart plan;
        private boolean ended;

        Course(Bench bench, Given given, Screen screen, List<Unit> units, Duration apart) {
            this.bench = bench;
            this.given = given;
            this.screen = screen;
            this.units = units;
            this.plan = BatchStart.of(units.stream().map(Unit::serial).toList(), apart, now());
        }

        private Instant now() {
            return around.clocks().clock().instant();
        }

        int run() throws CannotStoreException, InterruptedException {
            plan.starts().stream().skip(1).forEach(start -> say(Message.BATCH_WAITS, start.serial(), start.words(now(), around.zone())));
            // Whoever ends the process is told what it would still have begun.
            Thread atTheEnd = new Thread(this::end, "batch ends");
            Runtime.getRuntime().addShutdownHook(atTheEnd);
            try {
                while (beginOne()) {
                    around.clocks().pause().pause(untilNext());
                }
            } finally {
                end();
                unhook(atTheEnd);
            }
            screen.line(Message.BATCH_DONE.text(String.valueOf(units.size() - refused.size()), String.valueOf(units.size())));
            return refused.isEmpty() ? ExitStatus.LEFT_OPEN : ExitStatus.BAD_INPUT;
        }

        private synchronized Duration untilNext() {
            Duration left = Duration.between(now(), plan.starts().get(0).due());
            return left.isNegative() ? Duration.ZERO : left.compareTo(LOOK) < 0 ? left : LOOK;
        }

        /** Begins one if it is due; false once there is nothing more to begin. */
        private synchronized boolean beginOne() throws CannotStoreException {
            Optional<BatchStart.Start> due = ended ? Optional.empty() : plan.due(now());
            if (due.isPresent()) {
                String serial = due.get().serial();
                try {
                    String test = bench.beginAnew(unit(serial).procedure().plan(), unit(serial).procedure().text(), given.work(serial, given.has("--rehearse"))).test();
                    plan = plan.begun(serial, now());
                    say(Message.BATCH_OPENED, serial, test);
                } catch (EntryRefusedException | TakenElsewhereException e) {
                    plan = plan.without(serial);
                    refused.add(serial);
                    say(Message.BATCH_REFUSED, serial, e.getMessage());
                }
            }
            return !ended && !plan.starts().isEmpty();
        }

        private Unit unit(String serial) {
            return units.stream().filter(unit -> unit.serial().equals(serial)).findFirst().orElseThrow();
        }

        /** Nothing begins from here on, and what would have is told, once. */
        private synchronized void end() {
            if (!ended && (!plan.starts().isEmpty() || !refused.isEmpty())) {
                screen.remark(Message.BATCH_NOT_BEGUN.text(Stream.concat(refused.stream(), plan.starts().stream().map(BatchStart.Start::serial))
                        .collect(Collectors.joining(", "))));
            }
            ended = true;
        }

        private void say(Message message, String serial, String words) {
            screen.line(message.text(new WallTime(around.zone()).second(now()), serial, words));
        }

        private static void unhook(Thread hook) {
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException alreadyEnding) {
                // It has told everything.
            }
        }
    }
}
