package org.benchwright.cli.internal;

import java.util.function.Function;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.TakenElsewhereException;

/** What commands have in common that do something at a screen: whatever is refused is said there in plain words, and ends them. */
abstract class ScreenCommands {

    private final Surroundings around;
    private final Function<Surroundings, Screen> screens;

    ScreenCommands(Surroundings around, Function<Surroundings, Screen> screens) {
        this.around = around;
        this.screens = screens;
    }

    /** Something that is done at a screen. */
    @FunctionalInterface
    interface Deed {
        /**
         * Does it.
         *
         * @throws EntryRefusedException   if what was given is not taken
         * @throws TakenElsewhereException if somebody else was faster
         * @throws CannotStoreException    if something can't be read or written
         */
        void at(Screen screen) throws EntryRefusedException, TakenElsewhereException, CannotStoreException;
    }

    /**
     * Does it where somebody can type: a password, or what is scanned.
     *
     * @return the exit status
     * @throws CannotStoreException if something can't be read or written
     */
    int answering(Deed deed) throws CannotStoreException {
        try (Screen screen = screens.apply(around)) {
            return done(deed, screen);
        }
    }

    /**
     * Does it where nobody needs to type.
     *
     * @return the exit status
     * @throws CannotStoreException if something can't be read or written
     */
    int printing(Deed deed) throws CannotStoreException {
        try (Screen screen = Screens.printing(around)) {
            return done(deed, screen);
        }
    }

    private static int done(Deed deed, Screen screen) throws CannotStoreException {
        try {
            deed.at(screen);
            return ExitStatus.OK;
        } catch (EntryRefusedException | TakenElsewhereException e) {
            screen.remark(e.getMessage());
            return ExitStatus.BAD_INPUT;
        }
    }

    Surroundings around() {
        return around;
    }
}
