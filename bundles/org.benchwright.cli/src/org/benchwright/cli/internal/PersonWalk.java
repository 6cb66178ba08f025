package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
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

    private final TestDialogue dialogue;
    private final Screen screen;
    private final CardPrinter cards;
    private final Path folder;

    /** What became of one line or key. */
    private enum Turn {
        GO_ON, LEAVE
    }

    PersonWalk(TestDialogue dialogue, Screen screen, CardPrinter cards, Path folder) {
        this.dialogue = dialogue;
        this.screen = screen;
        this.cards = cards;
        this.folder = folder;
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
        return ExitStatus.of(ending.get().outcome());
    }

    // ---- waiting

    private Turn countDown() throws InterruptedException, CannotStoreException, TakenElsewhereException {
        Optional<Countdown> countdown = dialogue.countdown();
        while (countdown.isPresent() && !countdown.get().due()) {
            screen.status(Message.COUNT_STATUS.text(CardPrinter.shown(countdown.get()), countdown.get().what()));
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
        return told(() -> dialogue.answer(entry, folder), false);
    }

    // ---- commands

    private Turn command(Command command) throws CannotStoreException, TakenElsewhereException {
        if (command instanceof Command.MakeSafe c) {
            return makeSafe(c);
        } else if (command instanceof Command.Strike) {
            return told(dialogue::strike, false);
        } else if (command instanceof Command.Note c) {
            return told(() -> dialogue.note(c.text()), false);
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
