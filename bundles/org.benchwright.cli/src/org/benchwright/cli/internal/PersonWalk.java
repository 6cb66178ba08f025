package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.core.Ticker;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.Command;
import org.benchwright.present.Countdown;
import org.benchwright.present.Ending;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.StepCard;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.present.TestDialogue;

/** Carries a test out with a person who reads cards and types. */
final class PersonWalk {

    /** A key is heard this fast during a countdown, and a tone comes at most this late. */
    private static final Duration SLICE = Duration.ofMillis(100);

    private static final String PROMPT = "> ";
    private static final String TAP = "t";

    private final TestDialogue dialogue;
    private final Screen screen;
    private final CardPrinter cards;
    private final Path folder;
    private final Ticker ticker;

    /** What became of one line or key. */
    private enum Turn {
        GO_ON, LEAVE
    }

    PersonWalk(TestDialogue dialogue, Screen screen, CardPrinter cards, Path folder, Ticker ticker) {
        this.dialogue = dialogue;
        this.screen = screen;
        this.cards = cards;
        this.folder = folder;
        this.ticker = ticker;
    }

    /**
     * Goes on until the unit was looked at, or the test ends by it, or the person goes on to the next unit.
     *
     * @return whether the unit was looked at
     */
    boolean look() throws InterruptedException, CannotStoreException, TakenElsewhereException {
        long before = dialogue.looks();
        while (dialogue.ending().isEmpty() && dialogue.looks() == before) {
            StepCard card = dialogue.card();
            cards.card(card);
            if ((dialogue.waitsForTime() ? countDown() : askFor(card)) == Turn.LEAVE) {
                return false;
            }
        }
        return dialogue.looks() > before;
    }

    /** Carries the test to its end, or until the person leaves it open. */
    int run() throws InterruptedException, CannotStoreException, TakenElsewhereException {
        Optional<Ending> ending = dialogue.ending();
        while (ending.isEmpty()) {
            StepCard card = dialogue.card();
            cards.card(card);
            Turn turn = dialogue.waitsForTime() ? countDown() : askFor(card);
            if (turn == Turn.LEAVE) {
                dialogue.leavingWords().forEach(screen::line);
                return ExitStatus.LEFT_OPEN;
            }
            ending = dialogue.ending();
        }
        cards.ending(ending.get());
        if (dialogue.owesSignature()) {
            sign();
        }
        return ExitStatus.of(ending.get().outcome());
    }

    /** The signature of whoever carried it out; without one the bench seals. */
    private void sign() throws CannotStoreException, TakenElsewhereException {
        while (dialogue.owesSignature()) {
            Optional<String> pin = screen.secret(Message.ASK_PIN_TO_SIGN.text(dialogue.technician()));
            if (pin.filter(typed -> !typed.isEmpty()).isEmpty()) {
                break;
            }
            try {
                dialogue.sign(pin.get().toCharArray());
                screen.line(Message.SIGNED_BY.text(dialogue.technician()));
                return;
            } catch (EntryRefusedException e) {
                cards.wrapped(e.getMessage(), "!! ", "   ");
            }
        }
        dialogue.leaveUnsigned();
        screen.line(Message.SEALED_BY_BENCH.text());
    }

    // ---- waiting

    private Turn countDown() throws InterruptedException, CannotStoreException, TakenElsewhereException {
        Optional<Countdown> countdown = dialogue.countdown();
        while (countdown.isPresent() && !countdown.get().due()) {
            Message status = dialogue.canMakeSafe() ? Message.COUNT_STATUS : Message.COUNT_STATUS_SAFE;
            screen.status(status.text(CardPrinter.shown(countdown.get()), countdown.get().what()));
            Optional<String> typed = screen.listen(slice(countdown.get().left()), dialogue::pause);
            if (typed.isPresent()) {
                return command(Command.parse(typed.get()).orElseThrow());
            }
            countdown = dialogue.countdown();
        }
        return told(dialogue::timeHasCome, true);
    }

    private Duration slice(Duration left) {
        return dialogue.skipsTime() || left.compareTo(SLICE) < 0 ? left : SLICE;
    }

    // ---- asking

    private Turn askFor(StepCard card) throws InterruptedException, CannotStoreException, TakenElsewhereException {
        if (dialogue.skipsTime() && card.countdown().isPresent()) {
            dialogue.pause(card.countdown().get().left());
            screen.line(Message.TIME_SKIPPED.text(CardPrinter.shown(card.countdown().get())));
        }
        cards.keyLine(card);
        List<String> entry = new ArrayList<>();
        for (String part : card.parts()) {
            cards.wrapped(part, "  ", "  ");
            Optional<String> typed = screen.ask(PROMPT);
            if (typed.isEmpty()) {
                return Turn.LEAVE;
            }
            Optional<Command> command = Command.parse(typed.get());
            if (command.isPresent()) {
                return command(command.get());
            }
            entry.add(typed.get());
        }
        return card.lines() ? moreLines(entry) : answer(entry);
    }

    /** Lines up to an empty one; one that stands alone may be the whole answer. */
    private Turn moreLines(List<String> entry) throws CannotStoreException, TakenElsewhereException {
        List<String> lines = new ArrayList<>(entry);
        while (!lines.get(lines.size() - 1).isBlank()) {
            Optional<String> more = screen.ask(PROMPT);
            if (more.isEmpty()) {
                return Turn.LEAVE;
            }
            Optional<Command> command = Command.parse(more.get());
            if (command.isPresent()) {
                screen.line(Message.ENTRY_DROPPED.text());
                return command(command.get());
            }
            lines.add(more.get());
        }
        lines.remove(lines.size() - 1);
        return answer(List.of(String.join("\n", lines)));
    }

    private Turn answer(List<String> entry) throws CannotStoreException, TakenElsewhereException {
        if (dialogue.tapsAlong() && entry.get(0).strip().equalsIgnoreCase(TAP)) {
            return tap();
        }
        try {
            Optional<String> signs = dialogue.passwordFor(entry);
            if (signs.isPresent()) {
                char[] password = new Passwords(screen).of(signs.get());
                return told(() -> dialogue.release(entry, password), false);
            }
        } catch (EntryRefusedException e) {
            cards.wrapped(e.getMessage(), "!! ", "   ");
            return Turn.GO_ON;
        }
        return told(() -> dialogue.answer(entry, folder), false);
    }

    /** Enter each time the lamp lights up; anything else ends it. */
    private Turn tap() throws CannotStoreException, TakenElsewhereException {
        screen.line(Message.TAP_HOW.text());
        List<Long> taps = new ArrayList<>();
        Optional<String> typed = screen.ask("");
        while (typed.filter(String::isEmpty).isPresent()) {
            taps.add(ticker.elapsed().toNanos());
            typed = screen.ask("");
        }
        return told(() -> dialogue.answerTaps(taps), false);
    }

    // ---- commands

    private Turn command(Command command) throws CannotStoreException, TakenElsewhereException {
        if (command instanceof Command.MakeSafe c) {
            return makeSafe(c);
        } else if (command instanceof Command.Strike) {
            return told(dialogue::strike, false);
        } else if (command instanceof Command.Note c) {
            return told(() -> dialogue.note(c.text()), false);
        } else if (command instanceof Command.Place c) {
            return told(() -> dialogue.place(c.position()), false);
        } else if (command instanceof Command.HandOver c) {
            return told(() -> dialogue.handOver(c.to()), false);
        } else if (command instanceof Command.SoFar) {
            cards.soFar(dialogue.soFar());
            return Turn.GO_ON;
        } else if (command instanceof Command.Help) {
            cards.keys(dialogue.card());
            return Turn.GO_ON;
        }
        return Turn.LEAVE;
    }

    private Turn makeSafe(Command.MakeSafe command) throws CannotStoreException, TakenElsewhereException {
        String reason = command.reason();
        while (reason.isBlank()) {
            screen.line(Message.ASK_ABANDON.text());
            Optional<String> typed = screen.ask(PROMPT);
            if (typed.isEmpty()) {
                return Turn.LEAVE;
            }
            if (typed.get().strip().equals("-")) {
                return Turn.GO_ON;
            }
            reason = typed.get();
        }
        String why = reason;
        return told(() -> dialogue.makeSafe(why), false);
    }

    /** Something that is recorded. */
    @FunctionalInterface
    private interface Recording {
        TestDialogue.Told record() throws EntryRefusedException, TakenElsewhereException, CannotStoreException;
    }

    private Turn told(Recording recording, boolean tone) throws CannotStoreException, TakenElsewhereException {
        try {
            TestDialogue.Told told = recording.record();
            if (tone) {
                screen.tone();
            }
            screen.line(Message.RECORDED.text(String.valueOf(told.event())));
            cards.told(told);
        } catch (EntryRefusedException e) {
            cards.wrapped(e.getMessage(), "!! ", "   ");
        }
        return Turn.GO_ON;
    }
}
