package org.benchwright.workshop;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;

import org.benchwright.ledger.BenchFolder;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.PublishedValues;
import org.benchwright.ledger.Signer;
import org.benchwright.workshop.internal.LedgerWork;

/** Sheets of plain text that the bench key signs, and what they can say of the installed copy. */
public final class SignedSheet {

    private SignedSheet() {
    }

    /**
     * A published value that was reckoned again.
     *
     * @param name  what it is
     * @param holds whether this copy comes to it
     */
    public record Value(String name, boolean holds) {
    }

    /** Published values of hashes, signatures, canonical form and trees, reckoned again. */
    public static List<Value> publishedValues() {
        return PublishedValues.check().stream().map(checked -> new Value(checked.name(), checked.holds())).toList();
    }

    /**
     * The text, and after it the bench's key and its signature over the text's UTF-8 bytes. The key is made if there is none.
     *
     * @param ledger the bench's ledger, beside which the key lies
     * @param text   its first line should be a domain of its own, so that the signature can't pass for one over something else
     * @throws StoreException if the key can't be had
     */
    public static String sign(Path ledger, String text) throws StoreException {
        return LedgerWork.of(() -> {
            Signer key = BenchKeyStore.openOrCreate(BenchFolder.of(ledger).path());
            String signature = Base64.getEncoder().encodeToString(key.sign(text.getBytes(StandardCharsets.UTF_8)));
            return text + "key " + key.key().fingerprint().hex() + "\nsignature " + signature + "\n";
        });
    }
}
