package org.benchwright.ledger;

import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.Sha256;

/**
 * Ties an event to all events before it in its test: {@code SHA-256(previous link || canonical bytes)}. Before the first event stands
 * the digest of a domain tag, the format version and the test id, so that no event can be moved to another test.
 *
 * @param digest the value
 */
public record Link(Digest digest) {

    /** Tag and version of the format, hashed into the start of each chain. */
    static final String DOMAIN = "benchwright.link/1";

    public Link {
        Objects.requireNonNull(digest);
    }

    /** What stands before the first event of {@code test}. */
    public static Link before(TestId test) {
        String tag = DOMAIN + "\n" + test.value() + "\n";
        return new Link(Sha256.of(tag.getBytes(StandardCharsets.UTF_8)));
    }

    /** The link of an event with the bytes {@code canonical} that comes right after this one. */
    public Link next(byte[] canonical) {
        return new Link(Sha256.of(digest.bytes(), canonical));
    }

    /** Sixty-four small hexadecimal digits. */
    public String hex() {
        return digest.hex();
    }
}
