package org.benchwright.ledger.people;

import java.util.Locale;
import java.util.Optional;
import org.benchwright.ledger.internal.Messages;

/** What a password must be: long rather than curious, and not made of the person's own name. */
final class PasswordRules {

    private static final int SHORTEST = 10;
    private static final int LONGEST = 128;
    private static final int FEWEST_DIFFERENT = 5;
    private static final int SHORT_WORD = 4;

    private PasswordRules() {
    }

    /** What speaks against the password of that person; nothing if it will do. */
    static Optional<String> objection(char[] password, Person person) {
        if (password.length < SHORTEST || password.length > LONGEST) {
            return Optional.of(Messages.text("password.length", SHORTEST, LONGEST));
        }
        String text = new String(password).toLowerCase(Locale.ROOT);
        if (text.chars().distinct().count() < FEWEST_DIFFERENT) {
            return Optional.of(Messages.text("password.same", FEWEST_DIFFERENT));
        }
        for (String word : (person.id() + " " + person.name()).toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+")) {
            if (word.length() >= SHORT_WORD && text.contains(word)) {
                return Optional.of(Messages.text("password.name"));
            }
        }
        return Optional.empty();
    }
}
