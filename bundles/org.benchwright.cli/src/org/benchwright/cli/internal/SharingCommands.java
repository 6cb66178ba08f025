package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.Cancellation;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.SharedBench;

import org.benchwright.present.WallTime;
import picocli.CommandLine.Model.CommandSpec;

/** A ledger that benches share: set up by its owner, forwarded to by each bench. */
final class SharingCommands extends ScreenCommands {

    SharingCommands(Surroundings around, Function<Surroundings, Screen> screens) {
        super(around, screens);
    }

    static CommandSpec shareSpec() {
        return Specs.command("share", Message.HELP_SHARE).addOption(Specs.ledger())
                .addOption(Specs.flag("--install", Message.HELP_SHARE_INSTALL))
                .addOption(Specs.flag("--migrate", Message.HELP_SHARE_MIGRATE))
                .addOption(Specs.flag("--erase", Message.HELP_SHARE_ERASE))
                .addOption(Specs.text("--owner", "NAME", Message.HELP_SHARE_OWNER))
                .addOption(Specs.flag("--books", Message.HELP_SHARE_BOOKS))
                .addOption(Specs.file("--copy", "FILE", Message.HELP_SHARE_COPY));
    }

    static CommandSpec forwardSpec() {
        return Specs.command("forward", Message.HELP_FORWARD).addOption(Specs.ledger())
                .addOption(Specs.flag("--keep-on", Message.HELP_FORWARD_KEEP_ON));
    }

    /** The owner's deeds; without any, how things stand. */
    int share(Given given) throws CannotStoreException {
        long deeds = Stream.of("--install", "--migrate", "--erase", "--books", "--copy").filter(given::has).count();
        boolean owners = given.has("--install") || given.has("--migrate") || given.has("--erase");
        if (deeds > 1 || owners != given.has("--owner")) {
            return Screens.refused(around(), Message.SHARE_ONE.text());
        }
        Optional<SharedBench> shared = shared(given);
        if (shared.isEmpty()) {
            return Screens.refused(around(), Message.SHARE_NOT.text());
        }
        if (owners) {
            return answering(screen -> {
                char[] password = new Passwords(screen).of(given.text("--owner").orElseThrow());
                if (given.has("--erase")) {
                    screen.line(Message.SHARE_ERASED.text(shared.get().erase(given.text("--owner").orElseThrow(), password)));
                    return;
                }
                if (given.has("--install")) {
                    shared.get().install(given.text("--owner").orElseThrow(), password);
                } else {
                    shared.get().migrate(given.text("--owner").orElseThrow(), password);
                }
                screen.line((given.has("--install") ? Message.SHARE_INSTALLED : Message.SHARE_MIGRATED).text(shared.get().place()));
            });
        }
        return printing(screen -> carryOut(given, shared.get(), screen));
    }

    private void carryOut(Given given, SharedBench shared, Screen screen) throws EntryRefusedException, CannotStoreException {
        Optional<Path> copy = given.path("--copy");
        if (given.has("--books")) {
            screen.line(Message.SHARE_LENT.text(shared.lendBooks()));
        } else if (copy.isPresent()) {
            shared.copyTo(copy.get());
            screen.line(Message.WRITTEN.text(copy.get().toString()));
        } else {
            tell(shared.state(), screen);
        }
    }

    int forward(Given given) throws CannotStoreException, InterruptedException {
        Optional<SharedBench> shared = shared(given);
        if (shared.isEmpty()) {
            return Screens.refused(around(), Message.SHARE_NOT.text());
        }
        if (given.has("--keep-on")) {
            return keepOn(shared.get());
        }
        try (Screen screen = Screens.printing(around())) {
            screen.line(Message.FORWARDED.text(shared.get().forward()));
            SharedBench.State state = shared.get().state();
            tell(state, screen);
            return state.stops().isEmpty() ? ExitStatus.OK : ExitStatus.BAD_INPUT;
        } catch (EntryRefusedException e) {
            return Screens.refused(around(), e.getMessage());
        }
    }

    /** Tells only what is new, so that a service's log stays short. */
    private int keepOn(SharedBench shared) throws CannotStoreException, InterruptedException {
        try (Screen screen = Screens.printing(around())) {
            StringBuilder last = new StringBuilder();
            shared.keepOn(state -> {
                String trouble = state.trouble().orElse("") + state.stops();
                if (!trouble.contentEquals(last)) {
                    tell(state, screen);
                    last.setLength(0);
                    last.append(trouble);
                }
            }, Cancellation.never());
            return ExitStatus.OK;
        }
    }

    private Optional<SharedBench> shared(Given given) throws CannotStoreException {
        return SharedBench.of(given.ledger(), around().environment(), around().clocks());
    }

    private void tell(SharedBench.State state, Screen screen) {
        state.trouble().ifPresent(screen::line);
        state.stops().forEach(screen::line);
        screen.line(state.since().map(since -> Message.FORWARD_WAITING.text(state.waiting(), time(since)))
                .orElseGet(Message.FORWARD_NONE::text));
        state.reached().ifPresent(reached -> screen.line(Message.FORWARD_REACHED.text(time(reached))));
    }

    private String time(Instant instant) {
        return new WallTime(around().zone()).minute(instant);
    }
}
