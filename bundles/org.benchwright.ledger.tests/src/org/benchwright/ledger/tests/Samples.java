package org.benchwright.ledger.tests;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import org.benchwright.ledger.ConsistencyProof;
import org.benchwright.ledger.InclusionProof;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerProofs;
import org.benchwright.ledger.ProofFormatException;
import org.benchwright.ledger.SignedCheckpoint;
import org.benchwright.ledger.SqliteLedger;

/** Proof files of a ledger, and how somebody would change them. */
final class Samples {

    /** Where something stands in a file (a pattern), and what says the same to a reader who is not strict. */
    static final List<String[]> OTHER_FORMS = List.of(new String[] {"(\"(sequence|position|size|number|documents)\" : \")", "$1+"},
            new String[] {"(\"(sequence|position|size|number|documents)\" : \")", "$10"},
            new String[] {"(\"instant\" : \"[^\"]+)Z\"", "$1+00:00\""}, new String[] {"(\"(previous|root)\" : \")([0-9a-f]*?)a", "$1$3A"},
            new String[] {"(\"path\" : \\[\\s*\"[0-9a-f]*?)b", "$1B"});

    private Samples() {
    }

    /** A checkpoint, an inclusion proof with and one without the earlier events, and a consistency proof. */
    static List<String> of(Path ledger) throws Exception {
        try (Ledger open = SqliteLedger.openReadOnly(ledger)) {
            LedgerProofs proofs = new LedgerProofs(open);
            SignedCheckpoint first = new SignedCheckpoint(open.checkpoints().get(0), open.signers().get(0).key());
            return List.of(proofs.latest().text(), proofs.inclusion(open.tests().get(1), OptionalLong.empty(), false).text(),
                    proofs.inclusion(open.tests().get(0), OptionalLong.of(5), true).text(), proofs.consistency(first).text());
        }
    }

    /** The text with another letter or digit at {@code index}. */
    static String changed(String text, int index) {
        char old = text.charAt(index);
        char other = old == '1' ? '2' : '1';
        return text.substring(0, index) + other + text.substring(index + 1);
    }

    /** Whether the text is a checkpoint or proof that holds. */
    static boolean holds(String text) {
        try {
            if (text.contains("inclusion-proof")) {
                return InclusionProof.read(text).holds();
            }
            return text.contains("consistency-proof") ? ConsistencyProof.read(text).holds() : SignedCheckpoint.read(text).holds();
        } catch (ProofFormatException refused) {
            return false;
        }
    }
}
