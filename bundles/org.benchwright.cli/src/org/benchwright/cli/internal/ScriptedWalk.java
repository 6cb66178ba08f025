package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.Countdown;
import org.benchwright.present.Ending;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.StepCard;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.present.TestDialogue;

/** Carries a rehearsal out by the answers of a file. */
final class ScriptedWalk {

    private final TestDialogue dialogue;
    private final AnswersFile file;
    private final AnswerScript script;
    private final Screen screen;
    private final CardPrinter cards;

    ScriptedWalk(TestDialogue dialogue, AnswersFile file, Screen screen, CardPrinter cards) {
        this.dialogue = dialogue;
        this.file = file;
        this.script = new AnswerScript(file, dialogue.answered());
        this.screen = screen;
        this.cards = cards;
    }

    /** Carries the rehearsal to its end, or to where the file has no answer that is taken. */
    int run() throws InterruptedException, CannotStoreException, TakenElsewhereException {
        Optional<Ending> ending = dialogue.ending();
        while (ending.isEmpty()) {
            Optional<String> trouble = step();
            if (trouble.isPresent()) {
                screen.remark(trouble.get());
                return ExitStatus.BAD_INPUT;
            }
            ending = dialogue.ending();
        }
        script.unused().forEach(screen::remark);
        cards.ending(ending.get());
        return ExitStatus.of(ending.get().outcome());
    }

    /** Takes one step; tells what is wrong with the file if it can't. */
    private Optional<String> step() throws InterruptedException, CannotStoreException, TakenElsewhereException {
        StepCard card = dialogue.card();
        cards.card(card);
        letTimePass(card.countdown());
        if (dialogue.waitsForTime()) {
            return timeHasCome(card);
        }
        String key = dialogue.key();
        Optional<AnswersFile.Line> answer = script.next(key);
        if (answer.isEmpty()) {
            return Optional.of(Message.ANSWERS_MISSING.text(file.file().toString(), key, card.place(), card.question(),
                    String.join(" | ", card.parts())));
        }
        try {
            Path folder = file.file().toAbsolutePath().getParent();
            TestDialogue.Told told = dialogue.answer(answer.get().text(), folder);
            screen.line(Message.ANSWERED.text(String.valueOf(told.event()), key, answer.get().text()));
            cards.told(told);
            return Optional.empty();
        } catch (EntryRefusedException e) {
            return Optional.of(Message.ANSWERS_REFUSED.text(file.file().toString(), String.valueOf(answer.get().number()), key,
                    answer.get().text(), e.getMessage()));
        }
    }

    private void letTimePass(Optional<Countdown> countdown) throws InterruptedException {
        Optional<Countdown> left = countdown;
        while (left.isPresent() && !left.get().due()) {
            dialogue.pause(left.get().left());
            left = dialogue.countdown();
        }
    }

    private Optional<String> timeHasCome(StepCard card) throws CannotStoreException, TakenElsewhereException {
        try {
            TestDialogue.Told told = dialogue.timeHasCome();
            screen.tone();
            screen.line(Message.TIME_CAME.text(String.valueOf(told.event())));
            cards.told(told);
            return Optional.empty();
        } catch (EntryRefusedException e) {
            return Optional.of(Message.TIME_REFUSED.text(card.place(), e.getMessage()));
        }
    }
}
