package org.benchwright.cli.internal;

import java.util.Arrays;
import java.util.Optional;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.TakenElsewhereException;

/**
 * Asks for passwords: hidden where a person types them, else one line of standard input each. There is no other way to hand one over.
 *
 * @param screen where to ask
 */
record Passwords(Screen screen) {

    /**
     * The password of somebody who signs.
     *
     * @throws EntryRefusedException if none is given
     */
    char[] of(String person) throws EntryRefusedException {
        return ask(Message.ASK_PASSWORD.text(person));
    }

    /**
     * Somebody who signs with a key of their own; whoever can't is told so before the password is asked for.
     *
     * @throws EntryRefusedException if there is nobody of that id, no key of theirs is in use, or no password is given
     */
    PeopleDesk.Signing signing(String by, PeopleDesk desk) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        desk.requireSigner(by);
        return new PeopleDesk.Signing(by, of(by));
    }

    /** Looks at a new password, whatever speaks against it. */
    @FunctionalInterface
    interface Look {
        void at(char[] password) throws EntryRefusedException, TakenElsewhereException, CannotStoreException;
    }

    /**
     * A new password; whoever can't see what is typed types it twice, once it is known that it will do.
     *
     * @throws EntryRefusedException if none is given, it will not do, or it is not the same one twice
     */
    char[] fresh(String person, Look look) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        char[] password = ask(Message.ASK_NEW_PASSWORD.text(person));
        return with(password, () -> {
            look.at(password);
            return screen.hides() ? sameAgain(password) : password;
        });
    }

    private char[] sameAgain(char[] password) throws EntryRefusedException {
        char[] again = ask(Message.ASK_AGAIN.text());
        try {
            if (!Arrays.equals(password, again)) {
                throw new EntryRefusedException(Message.NOT_THE_SAME.text());
            }
            return password;
        } finally {
            Arrays.fill(again, ' ');
        }
    }

    /** Something that is asked while a password is at hand. */
    @FunctionalInterface
    interface Asking {
        char[] asked() throws EntryRefusedException, TakenElsewhereException, CannotStoreException;
    }

    /**
     * Asks for more while a password is at hand, which is blanked out if the rest is refused.
     *
     * @throws EntryRefusedException as {@code more} does
     */
    static char[] with(char[] password, Asking more) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            return more.asked();
        } catch (EntryRefusedException | TakenElsewhereException | CannotStoreException refused) {
            Arrays.fill(password, ' ');
            throw refused;
        }
    }

    /**
     * A PIN, or what a badge reader types, for as long as the station stays unlocked.
     *
     * @throws EntryRefusedException if none is given
     */
    char[] pin(String person) throws EntryRefusedException {
        return ask(Message.ASK_NEW_PIN.text(person));
    }

    private char[] ask(String prompt) throws EntryRefusedException {
        Optional<String> typed = screen.secret(prompt);
        if (typed.filter(text -> !text.isEmpty()).isEmpty()) {
            throw new EntryRefusedException(Message.NO_PASSWORD.text());
        }
        return typed.get().toCharArray();
    }
}
