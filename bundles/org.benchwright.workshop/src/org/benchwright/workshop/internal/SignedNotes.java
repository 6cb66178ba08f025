package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.ledger.EntrySignature;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.SignedNote;

/** What was signed after a test's seal. */
public final class SignedNotes {

    private final JsonText json = new JsonText();

    /** All of a test, in order. */
    public List<SignedNote> of(Ledger ledger, TestId test) throws LedgerException {
        List<LedgerEntry> entries = ledger.entries(test);
        List<SignedNote> notes = new ArrayList<>();
        for (EntrySignature signature : ledger.signatures(test)) {
            if (EventKinds.AFTER_SEAL.contains(signature.kind())) {
                notes.add(new SignedNote(signature.sequence(), signature.instant(), signature.kind(), signature.printedName(),
                        reason(entries.get((int) signature.sequence() - 1))));
            }
        }
        return List.copyOf(notes);
    }

    private String reason(LedgerEntry entry) {
        try {
            return json.read(entry.payload()).path("reason").asText("");
        } catch (UndecodableException e) {
            throw new IllegalStateException("the ledger keeps nothing but JSON", e);
        }
    }
}
