package org.benchwright.ledger.internal;

import java.nio.charset.StandardCharsets;
import org.benchwright.core.Digest;

/** The chain over the list of kept documents: {@code SHA-256(previous link || digest, kind and size, each ended by a line feed)}. */
public final class DocumentLink {

    private DocumentLink() {
    }

    /** What stands before the first document. */
    public static Digest first() {
        return Sha256.of("benchwright.documents/1\n".getBytes(StandardCharsets.UTF_8));
    }

    /** The link of a document after the one with the link {@code previous}. */
    public static Digest next(Digest previous, Digest digest, String kind, long size) {
        String row = digest.hex() + "\n" + kind + "\n" + size + "\n";
        return Sha256.of(previous.bytes(), row.getBytes(StandardCharsets.UTF_8));
    }
}
