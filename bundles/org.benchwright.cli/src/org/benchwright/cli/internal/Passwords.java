package org.benchwright.cli.internal;

import java.util.Arrays;
import java.util.Optional;

import org.benchwright.present.EntryRefusedException;

/**
 * Asks for passwords: hidden where a person types them, else one line of standard input each. There is no other way to hand one over.
 *
 * @param screen where to ask
 */
record Passwords(Screen screen) {

    /** The password of somebody who signs. */
    char[] of(String person) throws EntryRefusedException {
        return ask(Message.ASK_PASSWORD.text(person));
    }

    /** A new password; whoever can't see what is typed types it twice. */
    char[] fresh(String person) throws EntryRefusedException {
        char[] password = ask(Message.ASK_NEW_PASSWORD.text(person));
        if (screen.hides() && !Arrays.equals(password, ask(Message.ASK_AGAIN.text()))) {
            throw new EntryRefusedException(Message.NOT_THE_SAME.text());
        }
        return password;
    }

    /** A PIN, or what a badge reader types, for as long as the station stays unlocked. */
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
