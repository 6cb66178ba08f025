package org.benchwright.ledger;

import java.util.Objects;

/**
 * How an event is signed.
 *
 * @param signer      who signs the event
 * @param meaning     what the signer does by it
 * @param printedName who, in print; not blank
 * @param bench       signs the checkpoint after it: people sign with their own keys, and whoever compares checkpoints needs to know the
 *                    bench's key alone
 */
public record Signing(Signer signer, Meaning meaning, String printedName, Signer bench) {

    public Signing {
        Objects.requireNonNull(signer);
        Objects.requireNonNull(meaning);
        Objects.requireNonNull(printedName);
        Objects.requireNonNull(bench);
    }

    /** The bench, or whoever else signs event and checkpoint alike. */
    public Signing(Signer signer, Meaning meaning, String printedName) {
        this(signer, meaning, printedName, signer);
    }
}
