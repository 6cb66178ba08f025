package org.benchwright.ledger;

import java.util.Optional;
import java.util.regex.Pattern;
import org.benchwright.core.Digest;

/**
 * How a payload names a kept document: the string {@code sha256:} and 64 small hexadecimal digits, anywhere in it. Verification finds the
 * document missing when the ledger does not hold it.
 */
public final class DocumentReference {

    private static final String PREFIX = "sha256:";
    private static final Pattern FORM = Pattern.compile(PREFIX + "[0-9a-f]{64}");

    private DocumentReference() {
    }

    /** The string for {@code digest}. */
    public static String of(Digest digest) {
        return PREFIX + digest.hex();
    }

    /** The digest in {@code text}, when it is such a string. */
    public static Optional<Digest> parse(String text) {
        return text.startsWith(PREFIX) && FORM.matcher(text).matches() ? Optional.of(Digest.parse(text.substring(PREFIX.length())))
                : Optional.empty();
    }
}
