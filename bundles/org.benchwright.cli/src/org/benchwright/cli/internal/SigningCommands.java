package org.benchwright.cli.internal;

import java.util.function.Function;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.TakenElsewhereException;

/** What commands have in common for which somebody gives a password. */
abstract class SigningCommands {

    private final Surroundings around;
    private final Function<Surroundings, Screen> screens;

    SigningCommands(Surroundings around, Function<Surroundings, Screen> screens) {
        this.around = around;
        this.screens = screens;
    }

    /** Something that is done at a screen. */
    @FunctionalInterface
    interface Deed {
        void at(Screen screen) throws EntryRefusedException, TakenElsewhereException, CannotStoreException;
    }

    /** Does it where somebody can type, and says in plain words why it was refused. */
    int signing(Deed deed) throws CannotStoreException {
        try (Screen screen = screens.apply(around)) {
            return done(deed, screen);
        }
    }

    /** Does it where nobody needs to type. */
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
