package org.benchwright.cli.internal;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.WallTime;
import org.benchwright.present.WatchCalls;
import org.benchwright.present.Watching;

import picocli.CommandLine.Model.CommandSpec;

/** Watches all units on soak of one ledger until it is ended: a service, which needs no window. */
final class WatchCommand {

    private static final Duration ROUND = Duration.ofSeconds(2);
    /** A service manager ends a process that takes longer. */
    private static final long PATIENCE_S = 25;
    /** A century: longer than any machine runs. */
    private static final long ENDLESS_S = 36_500L * 24 * 60 * 60;

    private final Surroundings around;

    WatchCommand(Surroundings around) {
        this.around = around;
    }

    static CommandSpec spec() {
        return Specs.command("watch", Message.HELP_WATCH).addOption(Specs.ledger())
                .addOption(Specs.texts("--unit", "SERIAL", Message.HELP_WATCH_UNIT)).addOption(Specs.texts("--at", "ENDPOINT", Message.HELP_WATCH_AT))
                .addOption(Specs.flag("--notify", Message.HELP_WATCH_NOTIFY)).addOption(Specs.text("--command", "FILE", Message.HELP_WATCH_COMMAND))
                .addOption(Specs.number("--for", "SECONDS", Message.HELP_WATCH_FOR));
    }

    int run(Given given) throws CannotStoreException, InterruptedException {
        List<String> units = given.texts("--unit");
        List<String> places = given.texts("--at");
        try (Screen screen = Screens.printing(around); WatchCalls calls = new WatchCalls(words -> print(screen, "", words))) {
            if (units.size() != places.size()) {
                screen.remark(Message.WATCH_PAIRS.text());
                return ExitStatus.BAD_INPUT;
            }
            if (given.number("--for").orElse(0) < 0) {
                screen.remark(Message.WATCH_LENGTH.text());
                return ExitStatus.BAD_INPUT;
            }
            if (given.has("--notify")) {
                calls.byDesktop();
            }
            given.text("--command").ifPresent(calls::byCommand);
            Map<String, String> more = new LinkedHashMap<>();
            for (int i = 0; i < units.size(); i++) {
                more.put(units.get(i), places.get(i));
            }
            Wrap.lines(Message.WATCH_CAUTION.text(), screen.width(), "", "").forEach(screen::line);
            Duration length = Duration.ofSeconds(Math.min(given.number("--for").orElse(ENDLESS_S), ENDLESS_S));
            return watch(given, more, screen, calls, length);
        }
    }

    private int watch(Given given, Map<String, String> more, Screen screen, WatchCalls calls, Duration length)
            throws CannotStoreException, InterruptedException {
        CountDownLatch asked = new CountDownLatch(1);
        CountDownLatch ended = new CountDownLatch(1);
        Thread atTheEnd = new Thread(() -> {
            // The process is asked to end: what was seen so far has to be written first.
            asked.countDown();
            try {
                ended.await(PATIENCE_S, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }, "watch ends");
        Runtime.getRuntime().addShutdownHook(atTheEnd);
        try (Watching watching = Watching.begin(given.ledgerToRead(), around.clocks(), more, (kind, urgent, test, serial, words) -> {
            print(screen, serial, kind + ": " + words);
            if (urgent) {
                calls.call(kind, test, serial, words);
            }
        })) {
            rounds(watching, screen, asked, length);
            print(screen, "", Message.WATCH_ENDING.text());
            return ExitStatus.OK;
        } catch (EntryRefusedException e) {
            screen.remark(e.getMessage());
            return ExitStatus.BAD_INPUT;
        } finally {
            ended.countDown();
            unhook(atTheEnd);
        }
    }

    private void rounds(Watching watching, Screen screen, CountDownLatch asked, Duration length) throws InterruptedException {
        Duration until = around.clocks().ticker().elapsed().plus(length);
        List<String> before = List.of("");
        boolean end = false;
        while (!end) {
            try {
                List<String> now = watching.look();
                if (!now.equals(before)) {
                    print(screen, "", now.isEmpty() ? Message.WATCH_NONE.text() : Message.WATCH_UNITS.text(now.size(), String.join(", ", now)));
                    before = now;
                }
            } catch (CannotStoreException e) {
                print(screen, "", e.getMessage());
            }
            Duration left = until.minus(around.clocks().ticker().elapsed());
            end = left.isNegative() || left.isZero()
                    || asked.await(Math.min(ROUND.toMillis(), left.toMillis()), TimeUnit.MILLISECONDS);
        }
    }

    private static void unhook(Thread hook) {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException alreadyEnding) {
            // It has done its work.
        }
    }

    private void print(Screen screen, String serial, String words) {
        synchronized (screen) {
            screen.line(new WallTime(around.zone()).second(around.clocks().clock().instant()) + "  " + (serial.isEmpty() ? "" : serial + "  ") + words);
        }
    }
}
