package org.benchwright.ui.internal.bench;

import java.util.List;
import java.util.Optional;

import org.benchwright.present.Command;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;

/** What is typed into the step card goes to the test from here, each answer with the version of the card that it answers. */
final class CardWork implements EntryBar.Listener {

    private final Desk desk;
    private final Settings settings;
    private final Card card;

    /** The card that is typed into. */
    interface Card {

        /** What it shows. */
        Face face();

        /** What its entry is for. */
        Purpose purpose();

        /** Has its entry ask for something else. */
        void begin(Purpose purpose);

        /** Shows another part of it, up for -1 and down for 1. */
        void scroll(int pages);

        /** Goes to what happened so far. */
        void showSoFar();

        /** Tells why a test could not be taken up. */
        void failed(Throwable failure);
    }

    CardWork(Desk desk, Settings settings, Card card) {
        this.desk = desk;
        this.settings = settings;
        this.card = card;
    }

    @Override
    public void entered(List<String> parts) {
        if (card.face() instanceof Face.NotHere not) {
            takeUp(not, parts.get(0));
        } else if (card.face() instanceof Face.Here here) {
            entered(here, parts);
        }
    }

    private void entered(Face.Here here, List<String> parts) {
        if (here.takenUpFirst()) {
            here.open().takeUp(parts.get(0));
            return;
        }
        Purpose entered = card.purpose();
        if (entered != Purpose.ANSWER) {
            card.begin(Purpose.ANSWER);
        }
        switch (entered) {
            case MAKE_SAFE -> here.open().makeSafe(parts.get(0));
            case NOTE -> here.open().note(parts.get(0));
            case ANSWER -> here.open().answer(here.shown().version(), parts);
        }
    }

    private void takeUp(Face.NotHere not, String typed) {
        String initials = typed.isBlank() ? settings.technician() : typed;
        desk.takeUp(not.unit(), initials, settings.station()).whenComplete((test, failure) -> {
            if (failure != null) {
                card.failed(failure);
            }
        });
    }

    @Override
    public void secret(char[] typed) {
        if (card.face() instanceof Face.Here here) {
            here.open().secret(here.shown().version(), typed);
        }
    }

    @Override
    public void tapped(List<Long> taps) {
        if (card.face() instanceof Face.Here here && card.purpose() == Purpose.ANSWER) {
            here.open().taps(here.shown().version(), taps);
        }
    }

    @Override
    public void command(Command command) {
        if (command instanceof Command.MakeSafe makeSafe && !makeSafe.reason().isBlank() && test().isPresent()) {
            test().get().makeSafe(makeSafe.reason());
        } else if (command instanceof Command.MakeSafe) {
            card.begin(Purpose.MAKE_SAFE);
        } else if (command instanceof Command.Strike) {
            strike();
        } else if (command instanceof Command.Note note) {
            test().ifPresent(test -> test.note(note.text()));
        } else if (command instanceof Command.Place place) {
            test().ifPresent(test -> test.place(place.position()));
        } else if (command instanceof Command.HandOver over) {
            test().ifPresent(test -> test.handOver(over.to()));
        } else if (command instanceof Command.SoFar) {
            card.showSoFar();
        } else if (command instanceof Command.Leave) {
            desk.select("");
        }
    }

    /** Strikes the last entry. */
    void strike() {
        if (card.face() instanceof Face.Here here) {
            here.open().strike(here.shown().version());
        }
    }

    private Optional<OpenTest> test() {
        return card.face() instanceof Face.Here here && !here.takenUpFirst() ? Optional.of(here.open()) : Optional.empty();
    }

    @Override
    public void escaped() {
        card.begin(Purpose.ANSWER);
    }

    @Override
    public void paged(int pages) {
        card.scroll(pages);
    }
}
